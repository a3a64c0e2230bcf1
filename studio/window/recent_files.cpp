#include "studio/window/recent_files.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

namespace quadrille {

namespace fs = std::filesystem;

RecentFiles::RecentFiles(fs::path memory)
    : kept_(std::move(memory), most, [](std::string_view line) { return fs::path(line).is_absolute(); }) {}

void RecentFiles::opened(const fs::path& file) {
  if (file.empty() || file.string().find('\n') != std::string::npos) return;
  kept_.put_on_top(file.string());
}

void RecentFiles::forget(const fs::path& file) { kept_.forget(file.string()); }

fs::path recent_files_memory() { return memory_called("recent-events"); }

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
