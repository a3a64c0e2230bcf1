// Where a line must not break: a number and its unit are read as one.
#include <algorithm>
#include <array>
#include <string_view>

#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr std::array<std::string_view, 24> units{"m",  "cm",  "mm",  "km",   "in",    "ft",  "g",   "kg",
                                                 "lb", "oz",  "l",   "%",    "°C",    "°F",  "h",   "s",
                                                 "pt", "min", "mph", "km/h", "miles", "gal", "lbf", "N"};

/// What is counted on the sheets.
constexpr std::array<std::string_view, 28> counted{
    "balloon", "balloons", "cluster", "clusters", "container", "containers", "piece",  "pieces", "line", "lines",
    "base",    "bases",    "joint",   "joints",   "person",    "people",     "trip",   "trips",  "time", "times",
    "spare",   "spares",   "stake",   "stakes",   "column",    "columns",    "arches", "more"};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_times(std::string_view word) { return word == "x" || word == "×"; }

bool is_unit(std::string_view word) {
  while (!word.empty() && std::string_view(",.;:)").find(word.back()) != std::string_view::npos) word.remove_suffix(1);
  return std::ranges::find(units, word) != units.end() || std::ranges::find(counted, word) != counted.end();
}

/// Whether a number ends here: "8", "1/2", "6'".
bool ends_number(std::string_view word) { return !word.empty() && (is_digit(word.back()) || word.back() == '\''); }

bool belong_together(std::string_view before, std::string_view after) {
  if (before.empty() || after.empty()) return false;
  if (is_times(before) || before.ends_with("Beaufort")) return is_digit(after.front());
  if (!ends_number(before)) return false;
  // Feet and inches, whole inches and their fraction.
  const bool goes_on = is_digit(after.front()) && (before.back() == '\'' || after.find('"') != std::string_view::npos);
  return is_unit(after) || is_times(after) || goes_on;
}

}  // namespace

std::vector<std::size_t> blanks_in_measures(const std::string& text) {
  std::vector<std::size_t> blanks;
  const std::string_view all = text;
  for (std::size_t at = all.find(' '); at != std::string_view::npos; at = all.find(' ', at + 1)) {
    const std::size_t start = at == 0 ? 0 : all.rfind(' ', at - 1) + 1;  // npos + 1 is 0
    const std::size_t end = std::min(all.find(' ', at + 1), all.size());
    if (belong_together(all.substr(start, at - start), all.substr(at + 1, end - at - 1))) blanks.push_back(at);
  }
  return blanks;
}

}  // namespace quadrille
