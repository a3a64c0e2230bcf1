// Reads a whole file.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>

#include "sdk/result.hpp"

namespace quadrille {

/// No file of ours is larger.
inline constexpr std::size_t largest_file = std::size_t{256} << 20;

/// The bytes of the file at `path`. Errors, with the path: no such file, a folder, no permission, more than `most`
/// bytes, a fault while reading.
Result<std::string> read_bytes(const std::filesystem::path& path, std::size_t most = largest_file);

}  // namespace quadrille
