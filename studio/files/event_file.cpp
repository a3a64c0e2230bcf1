#include "studio/files/event_file.hpp"

#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/files/clean_event.hpp"
#include "studio/files/lost_of_kept.hpp"
#include "studio/xml/unreadable.hpp"

namespace quadrille {
namespace {

/// Reads what is about to be written and compares; returns a sentence where it would not come back as it is. What was
/// kept is compared apart: an edit may move it, and may take it away with the element that bore it.
std::optional<std::string> self_check(const Event& event, const std::string& bytes, const std::string& name) {
  const auto again = read_event(bytes, "the new file");
  const std::string refused = name + " is not saved, since it would not open again as it is";
  const std::string as_it_was = ". The file on the disk is as it was.";
  if (!again) return refused + ": " + again.error;
  const Event known = without_kept(again->event);
  if (known != without_kept(event) && known != without_kept(with_clean_texts(event))) return refused + as_it_was;
  if (const auto lost = lost_of_kept(event, bytes)) return refused + ": " + shown(*lost) + " would be lost" + as_it_was;
  if (write_event(again->event) != bytes)
    return refused + ": what was kept of the file would change each time it is saved" + as_it_was;
  return std::nullopt;
}

}  // namespace

Result<OpenedEvent> open_event(const std::filesystem::path& path) {
  auto bytes = read_bytes(path);
  if (!bytes) return Result<OpenedEvent>::bad(bytes.error);
  return read_event(std::move(*bytes.value), path.string());
}

std::optional<std::string> save_event(const std::filesystem::path& path, const Event& event,
                                      const OpenedEvent* opened) {
  if (opened != nullptr && event == opened->event) return safe_write(path, opened->bytes, Backup::keep_previous);
  if (opened != nullptr && opened->read_only)
    return path.string() +
           " is not saved: the event was written by a newer version and is open for looking only. "
           "Change it with that version.";
  const std::string bytes = write_event(event);
  if (auto refused = self_check(event, bytes, path.string())) return refused;
  return safe_write(path, bytes, Backup::keep_previous);
}

}  // namespace quadrille
