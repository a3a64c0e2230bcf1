#include "studio/window/recent_lines.hpp"

#include <algorithm>
#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/disk/user_folders.hpp"

namespace quadrille {

RecentLines::RecentLines(std::filesystem::path memory, std::size_t most,
                         const std::function<bool(std::string_view)>& is_good)
    : memory_(std::move(memory)), most_(most) {
  if (memory_.empty()) return;
  const auto bytes = read_bytes(memory_);
  if (!bytes) return;
  std::string_view rest = *bytes.value;
  while (!rest.empty() && lines_.size() < most_) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(line.size() + 1, rest.size()));
    if (is_good(line) && std::ranges::find(lines_, line) == lines_.end()) lines_.emplace_back(line);
  }
}

void RecentLines::put_on_top(std::string line) {
  std::erase(lines_, line);
  lines_.insert(lines_.begin(), std::move(line));
  if (lines_.size() > most_) lines_.resize(most_);
  keep();
}

void RecentLines::forget(const std::string& line) {
  std::erase(lines_, line);
  keep();
}

void RecentLines::keep() const {
  if (memory_.empty()) return;
  std::string text;
  for (const std::string& line : lines_) text += line + "\n";
  std::error_code unknown;
  std::filesystem::create_directories(memory_.parent_path(), unknown);
  safe_write(memory_, text, Backup::none);
}

std::filesystem::path memory_called(const char* name) {
  const auto folder = state_folder();
  return folder ? *folder / name : std::filesystem::path();
}

}  // namespace quadrille
