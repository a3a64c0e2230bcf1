// How deep balloons press into each other.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <span>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// Deeper than this share of its diameter a balloon is pressed until it bursts or jumps off. Common practice, no source.
inline constexpr double deepest_press = 0.30;

struct Overlap {
  double share = 0;                   ///< depth ÷ diameter of the smaller balloon; 0 where none touch
  std::size_t first = 0, second = 0;  ///< indices of the two
};

/// The deepest pair: depth is the sum of the radii less the distance of the centres. Any number of balloons; time grows
/// with their number as long as sizes are alike.
inline Overlap deepest_overlap(std::span<const Balloon> balloons) {
  double largest = 0;
  for (const Balloon& balloon : balloons) largest = std::max(largest, balloon.diameter_m);
  Overlap deepest;
  if (largest <= 0) return deepest;
  const auto cell_of = [largest](const Vec3& p) {
    std::array<long, 3> cell{};
    for (int axis = 0; axis < 3; ++axis)
      cell[static_cast<std::size_t>(axis)] = std::lround(std::floor(p[axis] / largest));
    return cell;
  };
  std::map<std::array<long, 3>, std::vector<std::size_t>> grid;
  for (std::size_t i = 0; i < balloons.size(); ++i) {
    const auto cell = cell_of(balloons[i].centre);
    for (long x = -1; x <= 1; ++x)
      for (long y = -1; y <= 1; ++y)
        for (long z = -1; z <= 1; ++z) {
          const auto found = grid.find({cell[0] + x, cell[1] + y, cell[2] + z});
          if (found == grid.end()) continue;
          for (const std::size_t j : found->second) {
            const double depth = (balloons[i].diameter_m + balloons[j].diameter_m) / 2 -
                                 (balloons[i].centre - balloons[j].centre).norm();
            const double share = depth / std::min(balloons[i].diameter_m, balloons[j].diameter_m);
            if (share > deepest.share) deepest = {share, j, i};
          }
        }
    grid[cell].push_back(i);
  }
  return deepest;
}

}  // namespace quadrille
