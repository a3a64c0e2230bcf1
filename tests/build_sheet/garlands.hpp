// Garlands for the tests of this folder.
#pragma once

#include <cmath>

#include "sdk/built.hpp"

namespace quadrille {

/// A garland along 3 m: clusters of four unlike balloons, and fillers, by a formula.
inline Piece garland(double length_m = 3) {
  Piece piece;
  constexpr double sizes[] = {16, 11, 5, 9};
  const auto clusters = static_cast<std::uint32_t>(length_m / 0.25);
  for (std::uint32_t i = 0; i < clusters; ++i) {
    const Vec3 centre(0.125 + 0.25 * i, 0, 1.8);
    piece.clusters.push_back({i + 1, 0.125 + 0.25 * i, centre, Vec3::UnitX(), 0});
    for (std::uint32_t j = 0; j < 4; ++j) {
      const double nominal = sizes[(i * 7 + j * 3) % 4], angle = j * pi / 2 + i * 0.4, r = nominal * 0.0127 * 0.9;
      const Vec3 out(0.02 * j, std::cos(angle), std::sin(angle));
      const Role role = (i + j) % 9 == 0 ? Role::accent : Role::body;
      piece.balloons.push_back({centre + r * out, centre, 2 * r, nominal, (i * 5 + j) % 4, i + 1, j, role});
    }
    for (std::uint32_t j = 0; j < 1 + i % 3; ++j) {
      const Vec3 off(0.05 * j, j == 0 ? -0.3 : 0.1, j == 1 ? 0.3 : -0.2);
      piece.balloons.push_back({centre + off, centre, 0.11, 5, (i + j) % 4, 0, 0, Role::filler});
    }
  }
  piece.spine = {{0, Vec3(0, 0, 1.8)}, {length_m, Vec3(length_m, 0, 1.8)}};
  for (int i = 0; i < 4; ++i) {
    piece.frame.nodes.emplace_back(length_m * i / 3, 0, 1.8);
    piece.supports.push_back({SupportKind::hook, static_cast<std::uint32_t>(i), true, 0, 0, 0, 0, 0});
  }
  piece.tie_points = {{0, TiePurpose::side, piece.frame.nodes[0], "first end"}};
  return piece;
}

}  // namespace quadrille
