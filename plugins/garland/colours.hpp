// Colour slots and accents of a packed garland.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Gives every ball its slot by request.flow, and makes a share of the fillers and front balloons accents. Counts of the
/// slots come out even (scattered) or follow the drift or the blocks; neighbours of one colour are avoided.
void colour(std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
