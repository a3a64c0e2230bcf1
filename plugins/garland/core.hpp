// The core of a garland: clusters of mixed sizes threaded on the line, relaxed until none presses deep.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// How far a balloon's centre may be from where its neck is tied, as a share of its radius: pressed to the line, or
/// hanging out on its neck.
inline constexpr double nearest_share = 0.8, farthest_share = 1.42;

/// The size of each balloon of a share of the mix (largest first), spread so evenly that every stretch has its part.
/// `shares` need not add up to 1; the sequence is endless: next() gives one after the other.
class SizeSequence {
 public:
  explicit SizeSequence(std::vector<double> shares) : shares_(std::move(shares)), given_(shares_.size()) {
    for (const double share : shares_) total_ += share;
  }
  std::size_t next();

 private:
  std::vector<double> shares_;
  std::vector<double> given_;
  double total_ = 0, count_ = 0;
};

/// The parts of the mix that fillers take, by size: the smallest sizes first, `request.filler` in all.
std::vector<double> filler_shares(const Request& request);

/// Clusters of the core along the line, relaxed: no pair overlaps deeper than `deepest_core` of the smaller diameter.
/// Takes time in proportion to the number of balloons.
std::vector<Ball> pack_core(const Request& request, const Curve& line);

inline constexpr double deepest_core = 0.11;

/// How deep two balls press into each other, as a share of the smaller diameter; negative where they are apart.
double press(const Ball& a, const Ball& b);

}  // namespace quadrille::garland
