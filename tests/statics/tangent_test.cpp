// The forces are the derivative of the energy and the tangent that of the forces, by differences.
#include <doctest/doctest.h>

#include <algorithm>

#include "studio/statics/assembly.hpp"
#include "studio/statics/cable.hpp"
#include "tests/statics/any_arch.hpp"

using namespace quadrille;

TEST_CASE("the corner of a line is smooth and within its stated bound") {
  const double stiffness = 7000, w = cable_corner_m;
  for (double stretch = -2 * w; stretch <= 2 * w; stretch += w / 16) {
    const LinePull pull = line_pull(stretch, stiffness);
    const double ideal = stiffness * std::max(0.0, stretch);
    CHECK(pull.tension >= ideal - 1e-12);
    CHECK(pull.tension <= ideal + stiffness * w / 4 + 1e-12);
    const double step = w * 1e-3;
    const LinePull before = line_pull(stretch - step, stiffness), after = line_pull(stretch + step, stiffness);
    CHECK((after.energy - before.energy) / (2 * step) ==
          doctest::Approx(pull.tension).epsilon(1e-5).scale(stiffness * w));
    CHECK((after.tension - before.tension) / (2 * step) ==
          doctest::Approx(pull.stiffness).epsilon(1e-3).scale(stiffness));
  }
  CHECK(line_pull(-w, stiffness).tension == 0);
}

TEST_CASE("the tangent is the derivative of the forces, for any state") {
  // With g the derivative of the energy and rotations taken as exp(θ)·R, H η is the difference quotient of g along η plus
  // ½ g × η for each turn (second order of exp). Lines away from their corner, hinges and arms included.
  Random random(13);
  for (int round = 0; round < 40; ++round) {
    CAPTURE(round);
    AnyArch any = any_arch(random);
    any.model.elements[2].hinge_to = true;
    any.model.elements[1].shear_stiffness_n = 5e4;
    const FrameAssembly frame(any.model);
    const auto size = static_cast<Eigen::Index>(frame.full_size());
    FrameState state = frame.drawn();
    // Far from the drawn shape: the whole frame turned, and every node by up to 0.05 m and 0.3 rad more.
    FullVector start(size), along(size);
    for (Eigen::Index i = 0; i < size; ++i) start(i) = random.within(-0.3, 0.3);
    start.head(static_cast<Eigen::Index>(3 * any.model.nodes.size())) *= 0.03;
    for (Eigen::Index i = 0; i < size; ++i) along(i) = random.within(-1, 1);
    for (std::size_t i = 0; i < frame.full_size(); ++i)
      if (frame.free_number(i) < 0) along(static_cast<Eigen::Index>(i)) = 0;
    const Turn whole = turn_by(any_vector(random, 2));
    for (std::size_t i = 0; i < any.model.nodes.size(); ++i)
      state.shifts[i] =
          whole * any.model.nodes[i] - any.model.nodes[i] + Vec3(start.segment<3>(3 * static_cast<Eigen::Index>(i)));
    for (std::size_t i = 0; i < frame.turns(); ++i)
      state.turns[i] = turn_by(start.segment<3>(static_cast<Eigen::Index>(frame.turn_index(i)))) * whole;
    const std::array<ScaledPushes, 1> pushes{ScaledPushes{any.loads.pushes, 0.7}};
    const auto slope = [&](double by, FullVector& out, double& energy) {
      FrameState moved = state;
      for (std::size_t i = 0; i < moved.shifts.size(); ++i)
        moved.shifts[i] += by * along.segment<3>(3 * static_cast<Eigen::Index>(i));
      for (std::size_t i = 0; i < frame.turns(); ++i)
        moved.turns[i] =
            turn_by(by * along.segment<3>(static_cast<Eigen::Index>(frame.turn_index(i)))) * moved.turns[i];
      FrameAssembly::Forces forces;
      REQUIRE(frame.forces(moved, forces));
      FullVector outer = FullVector::Zero(size);
      frame.add_pushes(moved, pushes[0], outer);
      out = forces.inner - outer;
      energy = forces.energy - frame.work(moved, pushes[0]);
    };
    const double step = 1e-6;
    FullVector here, before, after;
    double e_here = 0, e_before = 0, e_after = 0;
    slope(0, here, e_here);
    slope(-step, before, e_before);
    slope(step, after, e_after);
    // The forces are the derivative of the energy…
    CHECK((e_after - e_before) / (2 * step) ==
          doctest::Approx(here.dot(along)).epsilon(1e-6).scale(here.norm() * along.norm()));
    // …and the tangent that of the forces.
    FullVector expected = (after - before) / (2 * step);
    for (std::size_t i = 0; i < frame.turns(); ++i) {
      const auto at = static_cast<Eigen::Index>(frame.turn_index(i));
      expected.segment<3>(at) += 0.5 * Vec3(here.segment<3>(at)).cross(Vec3(along.segment<3>(at)));
    }
    FrameAssembly::Tangent tangent = frame.empty_tangent();
    REQUIRE(frame.tangent(state, pushes, {}, nullptr, tangent));
    Eigen::VectorXd free_along(frame.free_size()), free_expected(frame.free_size());
    for (std::size_t i = 0; i < frame.full_size(); ++i)
      if (const int free = frame.free_number(i); free >= 0) {
        free_along(free) = along(static_cast<Eigen::Index>(i));
        free_expected(free) = expected(static_cast<Eigen::Index>(i));
      }
    const Eigen::VectorXd found = tangent.stiffness.selfadjointView<Eigen::Lower>() * free_along;
    CHECK((found - free_expected).norm() < 2e-6 * free_expected.norm());
  }
}
