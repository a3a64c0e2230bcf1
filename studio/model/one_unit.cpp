#include "studio/model/one_unit.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

#include "sdk/quantity.hpp"

namespace quadrille {
namespace {

constexpr std::array<std::string_view, 7> metric_units{"m", "mm", "cm", "km", "kg", "g", "l"};
constexpr std::array<std::string_view, 5> other_units{"ft", "in", "lb", "gal", "miles"};

bool is_of_number(char c) { return is_digit(c) || c == '.' || c == ','; }

/// Where the number begins whose unit ends before `end`: "2.1 m" in "Keep 2.1 m"; npos where no metric measure ends there.
std::size_t metric_before(std::string_view text, std::size_t end) {
  std::size_t unit = end;
  while (unit > 0 && text[unit - 1] >= 'a' && text[unit - 1] <= 'z') --unit;
  if (std::ranges::find(metric_units, text.substr(unit, end - unit)) == metric_units.end()) return std::string::npos;
  if (unit == 0 || text[unit - 1] != ' ') return std::string::npos;
  std::size_t number = unit - 1;
  while (number > 0 && is_of_number(text[number - 1])) --number;
  return number < unit - 1 ? number : std::string::npos;
}

/// "7 ft", "17.6 lb", "1' 5 1/2\"", "5/8 in".
bool is_other_measure(std::string_view text) {
  if (text.empty() || !is_digit(text.front())) return false;
  const std::size_t last = text.find_last_not_of("0123456789'\"/., ");
  if (last == std::string_view::npos) return text.back() == '"' || text.back() == '\'';
  const std::size_t space = text.find_last_of(' ');
  if (space == std::string_view::npos) return false;
  return text.substr(0, space).find_first_not_of("0123456789/., ") == std::string_view::npos &&
         std::ranges::find(other_units, text.substr(space + 1)) != other_units.end();
}

}  // namespace

std::string in_one_unit(const std::string& text, Units units) {
  std::string told = text;
  for (std::size_t open = told.find(" ("); open != std::string::npos; open = told.find(" (", open + 1)) {
    const std::size_t from = metric_before(told, open), close = told.find(')', open);
    if (from == std::string::npos || close == std::string::npos) continue;
    const std::string other = told.substr(open + 2, close - open - 2);
    if (!is_other_measure(other)) continue;
    if (units == Units::metric) {
      told.erase(open, close + 1 - open);
    } else {
      told.replace(from, close + 1 - from, other);
      open = from;
    }
  }
  return told;
}

}  // namespace quadrille
