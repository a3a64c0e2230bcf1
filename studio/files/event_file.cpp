#include "studio/files/event_file.hpp"

#include <utility>

#include "studio/files/clean_event.hpp"
#include "studio/files/file_bytes.hpp"
#include "studio/files/safe_write.hpp"

namespace quadrille {
namespace {

/// Reads what is about to be written and compares; returns a sentence where it would not come back as it is.
std::optional<std::string> self_check(const Event& event, const std::string& bytes, const std::string& name) {
  const auto again = read_event(bytes, "the new file");
  const std::string refused = name + " is not saved, since it would not open again as it is";
  if (!again) return refused + ": " + again.error;
  if (again->event != event && again->event != with_clean_texts(event))
    return refused + ". The file on the disk is as it was.";
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
