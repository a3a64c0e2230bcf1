// Frames that several tests load: straight rods, arcs and bent rods.
#pragma once

#include <cmath>
#include <cstdint>
#include <functional>
#include <vector>

#include "studio/statics/equilibrium.hpp"

namespace quadrille {

/// Stiffness of a rod. The default hardly stretches, like an 8 mm rod of glass fibre metres long.
struct RodStiffness {
  double axial = 2e6, bending = 8.3, torsion = 6.4;
};

inline FrameElement element_between(std::uint32_t from, std::uint32_t to, const RodStiffness& rod,
                                    Rest rest = Rest::as_drawn) {
  FrameElement element;
  element.from = from;
  element.to = to;
  element.axial_stiffness_n = rod.axial;
  element.bending_stiffness_nm2 = rod.bending;
  element.torsion_stiffness_nm2 = rod.torsion;
  element.rest = rest;
  return element;
}

/// `count` elements through the points of `at`(0…1); nothing held.
inline FrameModel rod_along(int count, const RodStiffness& rod, const std::function<Vec3(double)>& at,
                            Rest rest = Rest::as_drawn) {
  FrameModel model;
  for (int i = 0; i <= count; ++i) model.nodes.push_back(at(static_cast<double>(i) / count));
  for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(count); ++i)
    model.elements.push_back(element_between(i, i + 1, rod, rest));
  return model;
}

inline std::uint32_t last_node(const FrameModel& model) { return static_cast<std::uint32_t>(model.nodes.size() - 1); }

/// Clamped at node 0, free at the other end.
inline FrameModel cantilever(int count, const RodStiffness& rod, double length, const Vec3& along = Vec3::UnitX()) {
  FrameModel model = rod_along(count, rod, [&](double at) { return Vec3(at * length * along); });
  model.supports.push_back({0, {}, {}});
  return model;
}

/// The weight of every element, `newton_per_m` downward, half on either node.
inline FrameLoads weight_of(const FrameModel& model, double newton_per_m) {
  FrameLoads loads;
  for (const FrameElement& element : model.elements) {
    const double length =
        element.length_m > 0 ? element.length_m : (model.nodes[element.to] - model.nodes[element.from]).norm();
    for (const std::uint32_t node : {element.from, element.to})
      loads.pushes.push_back({node, Vec3(0, 0, -newton_per_m * length / 2), Vec3::Zero(), Vec3::Zero()});
  }
  return loads;
}

/// By how much a node has turned [rad], 0 to π.
inline double turn_angle(const Eigen::Quaterniond& turn) {
  return 2 * std::atan2(turn.vec().norm(), std::abs(turn.w()));
}

inline FrameLoads push_on(std::uint32_t node, const Vec3& force, const Vec3& moment = Vec3::Zero()) {
  return {{{node, force, moment, Vec3::Zero()}}, {}};
}

}  // namespace quadrille
