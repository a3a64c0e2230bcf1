#include "studio/window/recent_colours.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

#include "studio/disk/file_bytes.hpp"
#include "studio/disk/safe_write.hpp"
#include "studio/disk/user_folders.hpp"

namespace quadrille {

RecentColours::RecentColours(std::filesystem::path memory) : memory_(std::move(memory)) {
  if (memory_.empty()) return;
  const auto bytes = read_bytes(memory_);
  if (!bytes) return;
  std::string_view rest = *bytes.value;
  while (!rest.empty()) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(line.size() + 1, rest.size()));
    const std::size_t tab = line.find('\t');
    if (tab == std::string_view::npos) continue;
    const ColourReference colour{std::string(line.substr(0, tab)), std::string(line.substr(tab + 1))};
    const bool known = std::ranges::find(colours_, colour) != colours_.end();
    if (!colour.colour.empty() && !known && colours_.size() < most) colours_.push_back(colour);
  }
}

void RecentColours::chosen(const ColourReference& colour) {
  const auto splits_a_line = [](const std::string& key) { return key.find_first_of("\t\n") != std::string::npos; };
  if (colour.colour.empty() || splits_a_line(colour.palette) || splits_a_line(colour.colour)) return;
  const ColourReference newest = colour;  // which may stand among those that go
  std::erase(colours_, newest);
  colours_.insert(colours_.begin(), newest);
  if (colours_.size() > most) colours_.resize(most);
  keep();
}

void RecentColours::keep() const {
  if (memory_.empty()) return;
  std::string text;
  for (const ColourReference& colour : colours_) text += colour.palette + "\t" + colour.colour + "\n";
  std::error_code unknown;
  std::filesystem::create_directories(memory_.parent_path(), unknown);
  safe_write(memory_, text, Backup::none);
}

std::filesystem::path recent_colours_memory() {
  const auto folder = state_folder();
  return folder ? *folder / "recent-colours" : std::filesystem::path();
}

}  // namespace quadrille
