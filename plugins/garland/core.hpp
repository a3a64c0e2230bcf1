// The core of a garland: clusters of mixed sizes threaded on the line, relaxed until none presses deep.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

struct Core {
  std::vector<Ball> balls;
  std::vector<long> left_out;  ///< by size: balls that found no room on the line
};

/// How much more room than usual the clusters get, by stations along the line: where they would press too deep.
class Stretch {
 public:
  Stretch(const Request& request, const Curve& line);

  double at(double along) const { return factors_[station(along)]; }
  void mark_pressed(double along) { pressed_[station(along)] = true; }
  /// Widens what is marked.
  void widen();

 private:
  std::size_t station(double along) const;

  double length_;
  std::vector<double> factors_;
  std::vector<bool> pressed_;
};

/// Clusters of the core along the line, relaxed: no pair overlaps deeper than `deepest_core` of the smaller diameter, and
/// on both sides some reach the outline that is asked. Which clusters are laid does not depend on the seed, only on the
/// stretch; that is widened where they press, and they are laid anew, up to `widenings` times. Takes time and memory in
/// proportion to the number of balloons.
Core pack_core(const Request& request, const Curve& line, Stretch& stretch, int widenings);

inline constexpr double deepest_core = 0.11;

/// How deep two balls press into each other, as a share of the smaller diameter; negative where they are apart.
double press(const Ball& a, const Ball& b);

}  // namespace quadrille::garland
