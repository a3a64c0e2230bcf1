// A garland packed whole: core and fillers, in the shares of the mix.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// The balls of a garland along a line; those of a cluster follow each other, fillers come last. Where creases run out or
/// large balls must serve as fillers, it is packed again with the shares corrected, a few times at most.
std::vector<Ball> pack(const Request& request, const Curve& line);

}  // namespace quadrille::garland
