// Unsaved work, kept in the user's state folder while it is unsaved, and found again after the program ended without
// saving. The event's own file is never touched.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/disk/file_lock.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// An event as it was when it was kept.
struct RecoveryEntry {
  Event event;
  std::filesystem::path file;  ///< of its own; empty: it was never saved
  std::string base;            ///< mark_of the file's bytes that the work began from; empty where there is no file
  std::string changed;         ///< local time for people, "2027-06-19 14:05"
  bool operator==(const RecoveryEntry&) const = default;
};

/// A short mark that differs where the bytes do, but for mischief: their number and a sum (FNV-1a, 64 bits, by Fowler,
/// Noll and Vo).
std::string mark_of(std::string_view bytes);

/// The bytes of a journal: what is known of the event, line by line, then the event as in its file, with its mark.
std::string write_recovery(const RecoveryEntry& entry);
/// Reads them. `name` stands for the file in messages. Fails with a sentence where it is no journal, is one of a newer
/// version, was cut off, or holds an event that cannot be read.
Result<RecoveryEntry> read_recovery(std::string_view bytes, std::string_view name);

/// `recovery` in the user's state folder; empty where there is none.
std::filesystem::path recovery_folder();

/// The journal of one open event. It is held by a lock as long as this lives, so that no other window or process takes
/// it for one that was left behind.
class RecoveryJournal {
 public:
  /// Nothing is written yet. An empty folder: nothing is ever kept.
  explicit RecoveryJournal(std::filesystem::path folder) : folder_(std::move(folder)) {}
  /// Leaves what was kept, unless it was forgotten.
  ~RecoveryJournal() = default;

  /// Keeps the entry in place of the one before. A sentence where that failed; the one before is then still there.
  std::optional<std::string> keep(const RecoveryEntry& entry);
  /// Removes what was kept.
  void forget();
  /// Where it is kept; empty before the first time.
  const std::filesystem::path& file() const { return file_; }

 private:
  bool begin();

  std::filesystem::path folder_, file_;
  std::unique_ptr<FileLock> lock_;
};

/// A journal that nobody holds any more: its program ended without saving.
struct LeftBehind {
  std::unique_ptr<FileLock> lock;  ///< ours now, so that a second window does not offer it as well
  std::filesystem::path file;
  Result<RecoveryEntry> entry;

  /// Removes the journal for good.
  void discard();
};

/// All of them in the folder, the newest first; but those that are about another file than `only`, where that is given.
std::vector<LeftBehind> left_behind(const std::filesystem::path& folder, const std::filesystem::path& only = {});

}  // namespace quadrille
