// How many balloons there are of each colour, whatever their size.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "studio/takeoff/count.hpp"

namespace quadrille {

struct ColourTotal {
  ColourReference colour;  ///< keys; empty where the slot has no colour
  std::string name;        ///< for people
  std::int64_t used = 0;
  bool operator==(const ColourTotal&) const = default;
};

/// One for each colour of `count`, in the order of its lines; their sum is EventCount::total_balloons.
std::vector<ColourTotal> colour_totals(const EventCount& count);

}  // namespace quadrille
