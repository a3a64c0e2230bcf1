#include "studio/takeoff/colour_totals.hpp"

#include <algorithm>

namespace quadrille {

std::vector<ColourTotal> colour_totals(const EventCount& count) {
  std::vector<ColourTotal> totals;
  for (const BalloonLine& line : count.balloons) {
    auto total = std::ranges::find_if(totals, [&](const ColourTotal& known) {
      return known.colour == line.colour && known.name == line.colour_name;
    });
    if (total == totals.end()) total = totals.insert(total, {line.colour, line.colour_name, 0});
    total->used += line.used;
  }
  return totals;
}

}  // namespace quadrille
