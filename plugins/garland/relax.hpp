// Relaxing the core: soft balls pushed apart, held by their necks, within the outline, before the wall, above the floor.
#pragma once

#include <cstdint>
#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// How far a balloon's centre may be from where its neck is tied, as a share of its radius: pressed to the line, or
/// hanging out on its neck.
inline constexpr double nearest_share = 0.8, farthest_share = 1.42;

struct Pair {
  std::uint32_t a, b;
};

/// All pairs nearer to touching than `slack_m`, in one fixed order.
std::vector<Pair> neighbours(const std::vector<Ball>& balls, double slack_m);

/// Pushes apart what presses, in one fixed order, by + − × ÷ √ alone, until nothing presses deep or a fixed number of
/// rounds is over. The clusters slide along the line where they are crowded, all but the first and the last. Balls that
/// carry are brought to the outline of their side. Rounded to the nanometre. Balls of a cluster follow each other.
void relax(std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
