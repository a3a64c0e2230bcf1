// What the order, the air and the power are reckoned with: every figure with a name, a unit and a source, and the
// decorator's own value where the house holds one.
#pragma once

#include <span>
#include <string_view>

#include "studio/model/house.hpp"

namespace quadrille {

struct HouseFigure {
  const char* key;
  const char* label;
  const char* unit;  ///< empty = a plain ratio
  double standard, least, most;
  const char* source;
};

/// All of them, in the order in which they are shown.
std::span<const HouseFigure> all_figures();

/// The figure with this key, or null.
const HouseFigure* find_figure(std::string_view key);

/// The house's value of a figure, out of House::rates; one outside its range is drawn to its nearer end. `key` is one of
/// all_figures(), anything else throws std::invalid_argument.
double figure_of(const House& house, std::string_view key);

}  // namespace quadrille
