// What is asked of an arch, read from the parameter values once, and what follows from it at once.
#pragma once

#include <string>

#include "plugins/arch/dressing.hpp"
#include "plugins/arch/elastica.hpp"
#include "sdk/base.hpp"
#include "sdk/material.hpp"
#include "sdk/piece.hpp"

namespace quadrille::arch {

enum class FrameKind { flexible_rod, half_circle, half_ellipse, square };

struct Rod {
  RoundSection section;
  const Material* material = nullptr;
  double piece_m = 0;  ///< length of one section as carried

  double bending_stiffness_nm2() const { return material->young_pa * section.second_moment_m4(); }
  double mass_per_m_kg() const { return material->density_kg_m3 * section.area_m2(); }
  /// The tightest radius it is kept bent to.
  double bend_limit_m() const { return section.outer_m / 2 / material->bend_strain; }
};

struct Request {
  FrameKind frame = FrameKind::flexible_rod;
  Feet feet = Feet::upright;
  double rod_length_m = 0, span_m = 0, height_m = 0, corner_m = 0;
  Rod rod;
  BaseValues base;
  DressingPlan dressing;
};

/// Throws BadParameter for a value that cannot be used by itself or with the frame that was chosen.
Request read_request(const Values& values);

}  // namespace quadrille::arch
