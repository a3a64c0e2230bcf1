#include "studio/files/house_file.hpp"

#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/files/clean_house.hpp"
#include "studio/files/lost_of_kept.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

/// Reads what is about to be written and compares, as for events; returns a sentence where it would not come back.
std::optional<std::string> self_check(const House& house, const std::string& bytes, const std::string& name) {
  const auto again = read_house(bytes, "the new file");
  const std::string refused = name + " is not saved, since it would not open again as it is";
  const std::string as_it_was = ". The file on the disk is as it was.";
  if (!again) return refused + ": " + again.error;
  const House known = without_kept(again->house);
  if (known != without_kept(house) && known != without_kept(with_clean_texts(house))) return refused + as_it_was;
  if (const auto lost = lost_of_kept(house, bytes)) return refused + ": " + shown(*lost) + " would be lost" + as_it_was;
  if (write_house(again->house) != bytes)
    return refused + ": what was kept of the file would change each time it is saved" + as_it_was;
  return std::nullopt;
}

/// Makes the folders above `path` that are missing, for their owner alone. What fails shows when the file is written.
/// Source: XDG Base Directory Specification 0.8, "Referencing this specification".
void make_folders(const fs::path& folder) {
  std::error_code error;
  if (folder.empty() || fs::exists(folder, error)) return;
  make_folders(folder.parent_path());
  if (fs::create_directory(folder, error)) fs::permissions(folder, fs::perms::owner_all, error);
}

}  // namespace

Result<OpenedHouse> open_house(const fs::path& path) {
  auto bytes = read_bytes(path);
  if (!bytes) return Result<OpenedHouse>::bad(bytes.error);
  return read_house(std::move(*bytes.value), path.string());
}

std::optional<std::string> save_house(const fs::path& path, const House& house, const OpenedHouse* opened) {
  const auto write = [&](const std::string& bytes) {
    make_folders(path.parent_path());
    return safe_write(path, bytes, Backup::keep_previous);
  };
  if (opened != nullptr && house == opened->house) return write(opened->bytes);
  if (opened != nullptr && opened->read_only)
    return path.string() +
           " is not saved: the house was written by a newer version and may only be used as it is. "
           "Change it with that version.";
  std::error_code unknown;
  if (opened == nullptr && fs::is_regular_file(path, unknown) && fs::file_size(path, unknown) > 0)
    if (const auto there = open_house(path); !there)
      return path.string() + " is not saved, since what stands there cannot be read and would be lost: " + there.error +
             " Mend it, or move it away.";
  const std::string bytes = write_house(house);
  if (auto refused = self_check(house, bytes, path.string())) return refused;
  return write(bytes);
}

}  // namespace quadrille
