// Opening and saving through studio/files; `opened_` is kept for ever, so that undoing everything saves its bytes.
#include "studio/window/job/document.hpp"

#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/drawing/backdrop_findings.hpp"
#include "studio/takeoff/last_built.hpp"

namespace quadrille {
namespace {

std::filesystem::path full_path(const std::filesystem::path& file) {
  std::error_code unknown;
  const auto full = std::filesystem::absolute(file, unknown);
  return unknown ? file : full.lexically_normal();
}

}  // namespace

Document::Document(std::filesystem::path file, OpenedEvent opened)
    : file_(std::move(file)), opened_(std::move(opened)), on_disk_(opened_.bytes), history_(opened_.event) {}

Result<Document> Document::open(const std::filesystem::path& file, const std::filesystem::path& executable) {
  auto opened = open_event(file);
  if (!opened) return Result<Document>::bad(opened.error);
  for (Finding& finding : check_backdrops(opened->event)) opened.value->findings.push_back(std::move(finding));
  Document document(full_path(file), std::move(*opened.value));
  document.palettes_ =
      std::make_shared<LoadedPalettes>(load_palettes(standard_palette_folders(executable, document.file_)));
  return Result<Document>::good(std::move(document));
}

Document Document::fresh(Event event, const std::filesystem::path& executable) {
  OpenedEvent opened;
  opened.bytes = write_event(event);
  opened.event = std::move(event);
  Document document({}, std::move(opened));
  document.palettes_ = std::make_shared<LoadedPalettes>(load_palettes(standard_palette_folders(executable, {})));
  return document;
}

Document Document::restored(RecoveryEntry kept, const std::filesystem::path& executable) {
  if (!kept.file.empty()) {
    auto opened = open(kept.file, executable);
    if (opened && !opened->read_only() && mark_of(opened->on_disk_) == kept.base) {
      opened.value->edit().commit("Restore", std::move(kept.event));
      return std::move(*opened.value);
    }
  }
  return fresh(std::move(kept.event), executable);
}

RecoveryEntry Document::to_keep(std::string changed) const {
  return {event(), file_, has_file() ? mark_of(on_disk_) : std::string(), std::move(changed)};
}

bool Document::changed_on_disk() const {
  if (!has_file()) return false;
  const auto now = read_bytes(file_);
  return now && *now != on_disk_;
}

std::optional<std::string> Document::save(const BuiltEvent& built) {
  if (!has_file()) return "The event has no file yet; save it under a name.";
  if (read_only())
    return file_.string() +
           " was written by a newer version of the studio. It is not saved over, because what this "
           "version does not know would be lost.";
  return write_to(file_, built);
}

std::optional<std::string> Document::save_as(const std::filesystem::path& file, const BuiltEvent& built) {
  const auto target = full_path(file);
  std::error_code not_there;
  if (read_only() && (target == file_ || std::filesystem::equivalent(target, file_, not_there))) return save();
  if (auto fault = write_to(target, built)) return fault;
  file_ = target;
  return std::nullopt;
}

std::optional<std::string> Document::write_to(const std::filesystem::path& file, const BuiltEvent& built) {
  history_.settle();
  // What was built goes into the file alone: with it, undoing everything would not lead back to what was opened.
  const bool changed = event() != opened_.event;
  if (auto fault = save_event(file, changed ? with_last_built(event(), built) : event(), &opened_)) return fault;
  history_.mark_saved();
  if (auto written = read_bytes(file)) on_disk_ = std::move(*written.value);
  return std::nullopt;
}

}  // namespace quadrille
