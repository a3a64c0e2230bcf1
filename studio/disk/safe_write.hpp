// The one routine that writes files: the old file stays whole until the new one is whole on the disk.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille {

enum class Backup { none, keep_previous };

/// Writes `bytes` to `path`: a temporary file in the same folder, checked write, fsync, rename, fsync of the folder.
/// Symbolic links are followed, the mode of an existing file is kept; a device or pipe is written into as it is.
/// `keep_previous` leaves what stood there before as `path~` (of a name as long as a name can be, as much as leaves room
/// for the mark), unless it was the same bytes. Returns a sentence where it failed; what stood at `path` then still does.
std::optional<std::string> safe_write(const std::filesystem::path& path, std::string_view bytes, Backup backup);

}  // namespace quadrille
