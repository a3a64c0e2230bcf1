// Keeps drawings and tables from replacing events: outputs are written without a backup.
#pragma once

#include <filesystem>
#include <optional>
#include <span>
#include <string>

namespace quadrille {

/// A sentence where writing one of `outputs` would destroy `event` (reached under any name; empty = there is none), or
/// another file that holds an event, a house or a palette; nothing where all of them may be written. What cannot be read is left
/// to the writing itself.
std::optional<std::string> would_replace(const std::filesystem::path& event,
                                         std::span<const std::filesystem::path> outputs);

}  // namespace quadrille
