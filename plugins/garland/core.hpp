// The core of a garland: clusters of mixed sizes threaded on the line, relaxed until none presses deep.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

struct Core {
  std::vector<Ball> balls;
  std::vector<long> left_out;  ///< by size: balls that found no room on the line
};

/// Clusters of the core along the line, relaxed: no pair overlaps deeper than `deepest_core` of the smaller diameter, and
/// on both sides some reach the outline that is asked. Takes time and memory in proportion to the number of balloons.
Core pack_core(const Request& request, const Curve& line);

inline constexpr double deepest_core = 0.11;

/// How deep two balls press into each other, as a share of the smaller diameter; negative where they are apart.
double press(const Ball& a, const Ball& b);

}  // namespace quadrille::garland
