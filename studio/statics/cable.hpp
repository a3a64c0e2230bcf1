// The force of a line against its stretch, smooth at the corner where it goes slack.
#pragma once

#include "studio/statics/frame_model.hpp"

namespace quadrille {

struct LinePull {
  double energy = 0;     ///< J
  double tension = 0;    ///< N, 0 or more
  double stiffness = 0;  ///< N/m, derivative of the tension by the length; continuous tension, stepless stiffness
};

/// `stretch`: length less unstretched length [m]; `stiffness`: EA/length [N/m]. Tension 0 below −w, stiffness × stretch
/// above w, and stiffness × (stretch + w)²/(4w) between, with w = cable_corner_m.
inline LinePull line_pull(double stretch, double stiffness) {
  constexpr double w = cable_corner_m;
  if (stretch <= -w) return {};
  if (stretch < w) {
    const double in = stretch + w;
    return {stiffness * in * in * in / (12 * w), stiffness * in * in / (4 * w), stiffness * in / (2 * w)};
  }
  // The parabola's energy at w is 2w²/3 of the stiffness, the straight line's w²/2.
  return {stiffness * (stretch * stretch / 2 + w * w / 6), stiffness * stretch, stiffness};
}

}  // namespace quadrille
