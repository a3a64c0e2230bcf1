// Fillers: balloons glued into the creases of the core that are seen from the front.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Adds fillers to `balls` (the core) until their share of all is request.filler: first where the outline is not reached
/// and where the line shows, each touching two balls or more, then each pressed a little into a crease of three, evenly
/// along the line, deep creases before shallow ones. Fewer where creases run out. No filler presses deeper than
/// `deepest_filler` (filling.hpp) into any balloon, lies behind a wall or below the floor, or reaches out of the garland.
/// Takes time and memory in proportion to the number of balloons.
void add_fillers(std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
