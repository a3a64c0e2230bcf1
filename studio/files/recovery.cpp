#include "studio/files/recovery.hpp"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <map>
#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/disk/user_folders.hpp"
#include "studio/files/event_file.hpp"

namespace quadrille {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view head = "quadrille recovery 1\n", head_of_any = "quadrille recovery ";
constexpr const char* journal_ending = ".journal";
constexpr const char* lock_ending = ".lock";
constexpr std::string_view hexadecimal = "0123456789abcdef";
constexpr int most_names = 1000;

/// A path may hold any byte but 0: blanks, what steers, and % itself are written as %0a, %20, %25.
std::string escaped(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte > 0x20 && byte != '%' && byte != 0x7F)
      line += c;
    else
      (line += '%') += {hexadecimal[byte >> 4], hexadecimal[byte & 15]};
  }
  return line;
}

std::optional<std::string> plain(std::string_view line) {
  std::string text;
  while (!line.empty()) {
    if (line.front() != '%') {
      text += line.front();
      line.remove_prefix(1);
      continue;
    }
    unsigned byte = 0;
    const bool whole = line.size() >= 3;
    if (!whole || std::from_chars(line.data() + 1, line.data() + 3, byte, 16).ptr != line.data() + 3)
      return std::nullopt;
    text += static_cast<char>(byte);
    line.remove_prefix(3);
  }
  return text;
}

Result<RecoveryEntry> broken(std::string_view name, const char* what) {
  return Result<RecoveryEntry>::bad(std::string(name) + ": " + what);
}

fs::path beside(const fs::path& folder, const std::string& stem, const char* ending) {
  return folder / (stem + ending);
}

}  // namespace

std::string mark_of(std::string_view bytes) {
  std::uint64_t sum = 14'695'981'039'346'656'037u;
  for (const char c : bytes) sum = (sum ^ static_cast<unsigned char>(c)) * 1'099'511'628'211u;
  std::string mark = std::to_string(bytes.size()) + "-";
  for (int shift = 60; shift >= 0; shift -= 4) mark += hexadecimal[(sum >> shift) & 15];
  return mark;
}

std::string write_recovery(const RecoveryEntry& entry) {
  const std::string event = write_event(entry.event);
  std::string text(head);
  text += "changed " + escaped(entry.changed) + "\n";
  text += "file " + escaped(entry.file.string()) + "\n";
  text += "base " + escaped(entry.base) + "\n";
  text += "event " + mark_of(event) + "\n";
  return text + event;
}

Result<RecoveryEntry> read_recovery(std::string_view bytes, std::string_view name) {
  if (!bytes.starts_with(head_of_any)) return broken(name, "this is no journal of unsaved work.");
  if (!bytes.starts_with(head)) return broken(name, "it was kept by a newer version of the studio; open it with that.");
  bytes.remove_prefix(head.size());
  std::map<std::string, std::string, std::less<>> lines;
  while (!lines.contains("event")) {
    const std::size_t end = bytes.find('\n'), blank = bytes.substr(0, end).find(' ');
    if (end == std::string_view::npos || blank == std::string_view::npos)
      return broken(name, "it was cut off while it was written.");
    const auto value = plain(bytes.substr(blank + 1, end - blank - 1));
    if (!value) return broken(name, "a line of it is damaged.");
    lines.emplace(bytes.substr(0, blank), *value);
    bytes.remove_prefix(end + 1);
  }
  if (mark_of(bytes) != lines["event"]) return broken(name, "it was cut off while it was written.");
  auto opened = read_event(std::string(bytes), name);
  if (!opened) return Result<RecoveryEntry>::bad(opened.error);
  return Result<RecoveryEntry>::good({std::move(opened.value->event), lines["file"], lines["base"], lines["changed"]});
}

fs::path recovery_folder() {
  const auto folder = state_folder();
  return folder ? *folder / "recovery" : fs::path();
}

/// Finds a name that nobody has, and holds it.
bool RecoveryJournal::begin() {
  std::error_code error;
  fs::create_directories(folder_, error);
  // What is in it is as private as the events are.
  fs::permissions(folder_, fs::perms::owner_all, error);
  for (int i = 0; i < most_names && !lock_; ++i) {
    const std::string stem = std::to_string(i);
    auto lock = FileLock::take(beside(folder_, stem, lock_ending));
    // One that was left behind is asked about first.
    if (!lock || fs::exists(beside(folder_, stem, journal_ending), error)) continue;
    lock_ = std::move(lock);
    file_ = beside(folder_, stem, journal_ending);
  }
  return lock_ != nullptr;
}

std::optional<std::string> RecoveryJournal::keep(const RecoveryEntry& entry) {
  if (folder_.empty()) return std::nullopt;
  if (!lock_ && !begin()) return folder_.string() + ": nothing can be kept there.";
  return safe_write(file_, write_recovery(entry), Backup::none);
}

void RecoveryJournal::forget() {
  if (!lock_) return;
  std::error_code ignored;
  fs::remove(file_, ignored);
  lock_->remove();
  lock_.reset();
  file_.clear();
}

void LeftBehind::discard() {
  std::error_code ignored;
  fs::remove(file, ignored);
  if (lock) lock->remove();
  lock.reset();
}

std::vector<LeftBehind> left_behind(const fs::path& folder, const fs::path& only) {
  std::vector<std::pair<fs::file_time_type, LeftBehind>> found;
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    const fs::path file = entry->path();
    if (file.extension() != journal_ending) continue;
    auto lock = FileLock::take(beside(folder, file.stem().string(), lock_ending));
    if (!lock) continue;  // its window is open
    std::error_code gone;
    const auto written = fs::last_write_time(file, gone);
    if (gone) {  // it was forgotten just now
      lock->remove();
      continue;
    }
    const auto bytes = read_bytes(file);
    auto read = bytes ? read_recovery(*bytes.value, file.string()) : Result<RecoveryEntry>::bad(bytes.error);
    if (!only.empty() && !(read && read->file == only)) continue;
    found.emplace_back(written, LeftBehind{std::move(lock), file, std::move(read)});
  }
  std::ranges::sort(found, [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<LeftBehind> left;
  for (auto& [written, one] : found) left.push_back(std::move(one));
  return left;
}

}  // namespace quadrille
