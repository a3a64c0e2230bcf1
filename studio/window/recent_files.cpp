#include "studio/window/recent_files.hpp"

#include <algorithm>
#include <string>
#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/disk/user_folders.hpp"

namespace quadrille {

namespace fs = std::filesystem;

RecentFiles::RecentFiles(fs::path memory) : memory_(std::move(memory)) {
  if (memory_.empty()) return;
  const auto bytes = read_bytes(memory_);
  if (!bytes) return;
  std::string line;
  for (const char c : *bytes.value + "\n") {
    if (c != '\n') {
      line += c;
      continue;
    }
    const fs::path file = std::exchange(line, {});
    const bool known = std::ranges::find(files_, file) != files_.end();
    if (file.is_absolute() && !known && files_.size() < most) files_.push_back(file);
  }
}

void RecentFiles::opened(const fs::path& file) {
  if (file.empty() || file.string().find('\n') != std::string::npos) return;
  std::erase(files_, file);
  files_.insert(files_.begin(), file);
  if (files_.size() > most) files_.resize(most);
  keep();
}

void RecentFiles::forget(const fs::path& file) {
  std::erase(files_, file);
  keep();
}

void RecentFiles::keep() const {
  if (memory_.empty()) return;
  std::string text;
  for (const fs::path& file : files_) text += file.string() + "\n";
  std::error_code unknown;
  fs::create_directories(memory_.parent_path(), unknown);
  safe_write(memory_, text, Backup::none);
}

fs::path recent_files_memory() {
  const auto folder = state_folder();
  return folder ? *folder / "recent-events" : fs::path();
}

std::vector<fs::path> sample_events(const fs::path& executable) {
  std::vector<fs::path> files;
  if (executable.empty()) return files;
  const fs::path folder = (executable.parent_path() / ".." / "share" / "quadrille" / "examples").lexically_normal();
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error))
    if (entry->path().extension() == ".quadrille") files.push_back(entry->path());
  std::ranges::sort(files);
  return files;
}

}  // namespace quadrille
