// What is asked of a hoop, and where its ring runs.
#pragma once

#include <cmath>

#include "sdk/base.hpp"
#include "sdk/dressing.hpp"
#include "sdk/rod.hpp"

namespace hoop {

/// Angles run round the ring clockwise as the audience sees it, from its foot: 0 at the foot, a quarter turn at the left,
/// half a turn at the top. Lengths in metres, angles in radians.
struct Hoop {
  double radius_m = 0, lift_m = 0;  ///< of the ring at the tube; from the floor to the ring's foot
  double from = 0, to = 0;          ///< the dressed part
  quadrille::Rod tube;
  quadrille::BaseValues base;
  quadrille::DressingValues dressing;

  double ring_m() const { return 2 * quadrille::pi * radius_m; }
  double dressed_m() const { return (to - from) * radius_m; }
  bool is_full() const { return to - from > 2 * quadrille::pi - 1e-9; }

  quadrille::Vec3 point(double angle) const {
    return {-radius_m * std::sin(angle), 0, lift_m + radius_m * (1 - std::cos(angle))};
  }
  quadrille::Vec3 tangent(double angle) const { return {-std::cos(angle), 0, std::sin(angle)}; }
};

/// The ring on its stand: nodes, members, the foot, where lines may be tied, and the spine along the dressed part.
void add_frame(quadrille::Piece& piece, const Hoop& hoop);
/// What to bring and what to do for frame and dressing.
void add_supplies_and_work(quadrille::Piece& piece, const Hoop& hoop);

/// How the hoop must be secured, and what to warn of.
void add_anchoring_rules(quadrille::Piece& piece);
void add_warnings(quadrille::Piece& piece, const Hoop& hoop);

}  // namespace hoop
