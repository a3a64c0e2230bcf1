// Fillers: balloons glued into the creases of the core that are seen from the front.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"
#include "plugins/garland/core.hpp"

namespace quadrille::garland {

/// How many balloons of each size there are to be with this core when the fillers are request.filler of all.
std::vector<long> counts_with_fillers(const Core& core, const Request& request);

/// The core with fillers until there are `counts` of each size: first where the outline is not reached and where the line
/// shows, each touching two balls or more, then each pressed a little into a crease of three, evenly along the line, deep
/// creases before shallow ones. Creases get only `first` of each size at first, no more than `counts`: the rest is for
/// what the outline and the line need afterwards. Fewer where creases run out; what the outline and the line need beyond
/// the counts makes others go that are not needed, where there are such. No filler presses deeper than `deepest_filler`
/// (filling.hpp) into any balloon, lies behind a wall or below the floor, or reaches out of the garland. Takes time and
/// memory in proportion to the number of balloons.
std::vector<Ball> add_fillers(std::vector<Ball> core, const std::vector<long>& first, const std::vector<long>& counts,
                              const Request& request, const Curve& line);

}  // namespace quadrille::garland
