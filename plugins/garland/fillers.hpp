// Fillers: balloons glued into the creases of the core that are seen from the front.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"
#include "plugins/garland/core.hpp"

namespace quadrille::garland {

/// The core with fillers until their share of all is request.filler, and what the core left out among them: first where the outline is not reached
/// and where the line shows, each touching two balls or more, then each pressed a little into a crease of three, evenly
/// along the line, deep creases before shallow ones. Fewer where creases run out. No filler presses deeper than
/// `deepest_filler` (filling.hpp) into any balloon, lies behind a wall or below the floor, or reaches out of the garland.
/// Takes time and memory in proportion to the number of balloons.
std::vector<Ball> add_fillers(Core core, const Request& request, const Curve& line);

}  // namespace quadrille::garland
