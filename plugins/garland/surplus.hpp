// Fillers of which there are too many.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Takes out up to `surplus` fillers of each size, the latest first, where nothing rests on them, another ball nearby
/// reaches as far out on the same side, and they are not before the line. Fillers are the last of `balls`.
void take_out(std::vector<Ball>& balls, std::vector<long> surplus, const Request& request, const Curve& line);

}  // namespace quadrille::garland
