// What is asked of an arch, read from the parameter values once, and what follows from it at once.
#pragma once

#include <string>

#include "plugins/arch/dressing.hpp"
#include "plugins/arch/elastica.hpp"
#include "sdk/base.hpp"
#include "sdk/piece.hpp"
#include "sdk/rod.hpp"

namespace quadrille::arch {

enum class FrameKind { flexible_rod, half_circle, half_ellipse, square };

struct Request {
  FrameKind frame = FrameKind::flexible_rod;
  Feet feet = Feet::upright;
  double rod_length_m = 0, span_m = 0, height_m = 0, corner_m = 0;
  Rod rod;
  BaseValues base;
  DressingPlan dressing;
};

/// The widest corners [m] that a square frame has room for.
double widest_corner_m(const Request& request);

inline bool is_rigid(const Request& request) { return request.frame != FrameKind::flexible_rod; }

/// Throws BadParameter for a value that cannot be used by itself or with the frame that was chosen.
Request read_request(const Values& values);

}  // namespace quadrille::arch
