// How deep balloons press into each other.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>

#include "sdk/built.hpp"
#include "sdk/sized_grid.hpp"

namespace quadrille {

/// Deeper than this share of its diameter a balloon is pressed until it bursts or jumps off. Common practice, no source.
inline constexpr double deepest_press = 0.30;

struct Overlap {
  double share = 0;                   ///< depth ÷ diameter of the smaller balloon; 0 where none touch
  std::size_t first = 0, second = 0;  ///< indices of the two
};

/// The deepest pair: depth is the sum of the radii less the distance of the centres. Diameters are above 0. Any number of
/// balloons of any sizes; time grows with their number and with how many touch each.
inline Overlap deepest_overlap(std::span<const Balloon> balloons) {
  const auto place = [](const Balloon& b) { return std::array{b.centre.x(), b.centre.y(), b.centre.z()}; };
  SizedGrid<3> grid;
  for (std::size_t i = 0; i < balloons.size(); ++i) grid.add(i, place(balloons[i]), balloons[i].diameter_m);
  Overlap deepest;
  for (std::size_t i = 0; i < balloons.size(); ++i)
    grid.any_near(place(balloons[i]), balloons[i].diameter_m, [&](std::size_t j) {
      if (i == j) return false;
      const double depth =
          (balloons[i].diameter_m + balloons[j].diameter_m) / 2 - (balloons[i].centre - balloons[j].centre).norm();
      const double share = depth / std::min(balloons[i].diameter_m, balloons[j].diameter_m);
      if (share > deepest.share) deepest = {share, std::min(i, j), std::max(i, j)};
      return false;
    });
  return deepest;
}

}  // namespace quadrille
