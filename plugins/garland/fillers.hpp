// Fillers: balloons glued into the creases of the core that are seen from the front.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Adds fillers to `balls` (the core) until their share of all is request.filler, each pressed a little into three others;
/// first where the line shows, then evenly along it, deep creases before shallow ones. Fewer where creases run out. No
/// filler presses deeper than `deepest_filler` into any balloon, lies behind a wall or below the floor, or reaches out of
/// the garland. Takes time in proportion to the number of balloons.
void add_fillers(std::vector<Ball>& balls, const Request& request, const Curve& line);

inline constexpr double deepest_filler = 0.16;

}  // namespace quadrille::garland
