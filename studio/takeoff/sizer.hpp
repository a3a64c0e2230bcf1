// Which diameters a piece's balloons are blown to, and how many of each: what the sizer is set to.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

struct SizerLine {
  double nominal_in = 0;
  double inflated_m = 0;  ///< at the event, to the nearest millimetre
  double sizer_m = 0;     ///< to blow it to, in the air it is blown in: see AirLine::inflate_to_m
  double around_m = 0;    ///< circumference of that, for a tape measure
  std::int64_t balloons = 0;
  bool operator==(const SizerLine&) const = default;
};

/// One line for each nominal size and inflated diameter among `counts` (see counts_of), the largest first.
std::vector<SizerLine> sizer_lines(std::span<const LastBuilt::Count> counts, const Site& site);

}  // namespace quadrille
