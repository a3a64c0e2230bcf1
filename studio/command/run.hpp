// The command line as a function.
#pragma once

#include <filesystem>
#include <iosfwd>
#include <span>
#include <string>

namespace quadrille {

/// Does what `arguments` (without the program's name) ask: data to `out`, messages to `err`. Returns the exit status:
/// 0 done, 1 done with findings of weight problem, 2 bad usage, 3 the input could not be read or used (or fills the
/// memory), 4 the output could not be written, 5 the program itself failed. Throws nothing. `executable` is where plugins and palettes are looked for beside; a link is followed.
int run(std::span<const std::string> arguments, std::ostream& out, std::ostream& err,
        const std::filesystem::path& executable);

}  // namespace quadrille
