// The open event: its file, its history, and what stands on the disk. Knows no toolkit.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "sdk/result.hpp"
#include "studio/files/event_file.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/files/recovery.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/history.hpp"

namespace quadrille {

class Document {
 public:
  /// Opens the event at `file` with the palettes it can draw from. `executable` is where the palettes that come with
  /// the studio are looked for. Errors as open_event.
  static Result<Document> open(const std::filesystem::path& file, const std::filesystem::path& executable);

  /// An event that has no file yet; save_as gives it one. `executable` as above.
  static Document fresh(Event event, const std::filesystem::path& executable);

  /// What was kept of unsaved work. Where its file is still as it was when that work began, the document is that file's,
  /// with one step: undoing it leads to what is on the disk. Otherwise it has no file, so that saving replaces none.
  static Document restored(RecoveryEntry kept, const std::filesystem::path& executable);
  /// What restored() takes, at this moment of the user's clock.
  RecoveryEntry to_keep(std::string changed) const;

  const Event& event() const { return history_.event(); }
  /// Empty while it has none.
  const std::filesystem::path& file() const { return file_; }
  bool has_file() const { return !file_.empty(); }
  /// True where closing it would lose something.
  bool has_changes() const { return !has_file() || history_.has_changes(); }
  /// Written by a newer major version: it is only looked at.
  bool read_only() const { return opened_.read_only; }
  /// What was not understood, and which photos cannot be shown, when it was opened.
  const Findings& opened_findings() const { return opened_.findings; }
  const std::shared_ptr<const LoadedPalettes>& palettes() const { return palettes_; }
  const History& history() const { return history_; }
  /// For edits: commit, amend, settle, undo, redo.
  History& edit() { return history_; }

  /// True where the file on the disk is no longer what was read or written last: somebody else changed it.
  bool changed_on_disk() const;
  /// Saves to its own file, which it has; where nothing was changed since opening, the bytes are those that were read, else with the
  /// counts and measures of `built`, the pieces of the present event, so that they are known where a type is missing.
  /// Returns a sentence where it failed; file and document are then as they were. A read-only event is refused.
  std::optional<std::string> save(const BuiltEvent& built = {});
  /// Saves to `file`, which is the document's own from then on; errors as save. A read-only event may be copied to
  /// another file, byte for byte, and stays read-only.
  std::optional<std::string> save_as(const std::filesystem::path& file, const BuiltEvent& built = {});

 private:
  Document(std::filesystem::path file, OpenedEvent opened);
  std::optional<std::string> write_to(const std::filesystem::path& file, const BuiltEvent& built);

  std::filesystem::path file_;
  OpenedEvent opened_;
  std::string on_disk_;  ///< bytes of the file as last read or written
  std::shared_ptr<const LoadedPalettes> palettes_;
  History history_;
};

}  // namespace quadrille
