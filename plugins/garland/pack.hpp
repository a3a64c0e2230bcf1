// A garland packed whole: core and fillers, in the shares of the mix.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// The balls of a garland along a line; those of a cluster follow each other, fillers come last. How many there are of
/// each size comes from plan_of (plan.hpp), whatever the seed; where chance leaves one of them short, too thin or showing
/// its line, it is packed again with other chance, a few times at most.
std::vector<Ball> pack(const Request& request, const Curve& line);

}  // namespace quadrille::garland
