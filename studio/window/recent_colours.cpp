#include "studio/window/recent_colours.hpp"

#include <string>
#include <string_view>
#include <utility>

namespace quadrille {
namespace {

bool names_a_colour(std::string_view line) {
  const std::size_t tab = line.find('\t');
  return tab != std::string_view::npos && tab + 1 < line.size();
}

}  // namespace

RecentColours::RecentColours(std::filesystem::path memory) : kept_(std::move(memory), most, names_a_colour) {}

std::vector<ColourReference> RecentColours::colours() const {
  std::vector<ColourReference> colours;
  for (const std::string& line : kept_.lines()) {
    const std::size_t tab = line.find('\t');
    colours.push_back({line.substr(0, tab), line.substr(tab + 1)});
  }
  return colours;
}

void RecentColours::chosen(const ColourReference& colour) {
  const auto splits_a_line = [](const std::string& key) { return key.find_first_of("\t\n") != std::string::npos; };
  if (colour.colour.empty() || splits_a_line(colour.palette) || splits_a_line(colour.colour)) return;
  kept_.put_on_top(colour.palette + "\t" + colour.colour);
}

std::filesystem::path recent_colours_memory() { return memory_called("recent-colours"); }

}  // namespace quadrille
