// Arches drawn by lot, and the balance of the whole, for tests of what must hold for every frame.
#pragma once

#include <utility>

#include "sdk/random.hpp"
#include "tests/statics/frame_shapes.hpp"

namespace quadrille {

inline Vec3 any_vector(Random& random, double most) {
  return {random.within(-most, most), random.within(-most, most), random.within(-most, most)};
}

/// An arch of a bent rod or a stiff half circle, of 4 to 30 elements, with lines to the front and back, loaded anyhow.
struct AnyArch {
  FrameModel model;
  FrameLoads loads;
};

inline AnyArch any_arch(Random& random) {
  AnyArch any;
  const auto count = static_cast<int>(4 + random.below(27));
  const double radius = random.within(0.5, 2.5), bending = random.within(5, 500);
  const Rest rest = random.below(2) == 0 ? Rest::as_drawn : Rest::straight;
  any.model = rod_along(
      count, {random.within(1e5, 1e7), bending, random.within(0.2, 1) * bending},
      [&](double at) { return Vec3(-radius * std::cos(pi * at), 0, radius * std::sin(pi * at)); }, rest);
  const bool hinged = random.below(4) == 0;
  if (hinged) any.model.elements[static_cast<std::size_t>(count / 3)].hinge_from = true;
  any.model.supports = {{0, {}, {}}, {last_node(any.model), {}, {}}};
  const auto crown = static_cast<std::uint32_t>(count / 2);
  for (const double side : {-1.0, 1.0}) {
    const Vec3 anchor(0, side * random.within(1, 3), 0), tie = any.model.nodes[crown] + any_vector(random, 0.1);
    any.model.cables.push_back(
        {{crown, tie}, {std::nullopt, anchor}, (tie - anchor).norm() * random.within(0.999, 1.01), 2e4});
  }
  for (std::uint32_t i = 0; i < any.model.nodes.size(); ++i)
    any.loads.pushes.push_back({i, Vec3(0, random.within(0, bending / 60), -bending / 200 / radius) / count,
                                Vec3::Zero(), any_vector(random, 0.2)});
  return any;
}

inline Vec3 place(const FrameModel& model, const FrameState& state, std::uint32_t node) {
  return model.nodes[node] + state.shifts[node];
}

/// What is out of balance of the whole: force [N] and moment about the origin [Nm].
inline std::pair<Vec3, Vec3> whole_balance(const FrameModel& model, const FrameLoads& loads, const Equilibrium& found) {
  Vec3 force = Vec3::Zero(), moment = Vec3::Zero();
  const auto add = [&](const Vec3& at, const Vec3& push) {
    force += push;
    moment += at.cross(push);
  };
  for (const Push& push : loads.pushes) {
    add(place(model, found.state, push.node) + found.state.turns[push.node] * push.arm_m, push.force_n);
    moment += push.moment_nm;
  }
  for (std::size_t i = 0; i < model.supports.size(); ++i) {
    add(place(model, found.state, model.supports[i].node), found.supports[i].force_n);
    moment += found.supports[i].moment_nm;
  }
  for (std::size_t i = 0; i < model.cables.size(); ++i) {
    const FrameCable& cable = model.cables[i];
    for (const auto& [end, sign] : {std::pair{&cable.from, 1.0}, {&cable.to, -1.0}})
      if (end->node)
        add(place(model, found.state, *end->node) + found.state.turns[*end->node] * (end->at - model.nodes[*end->node]),
            sign * found.cables[i].pull_on_from);
  }
  return {force, moment};
}

inline double sum_of_forces(const FrameLoads& loads) {
  double sum = 0;
  for (const Push& push : loads.pushes) sum += push.force_n.norm();
  return sum;
}

}  // namespace quadrille
