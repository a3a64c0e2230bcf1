// What must hold for every frame: balance, mirror images, slack lines, refinement.
#include <doctest/doctest.h>

#include "studio/statics/cable.hpp"
#include "tests/statics/any_arch.hpp"

using namespace quadrille;

TEST_CASE("reactions, lines and loads balance in force and moment to a millionth of the load") {
  Random random(11);
  int converged = 0;
  for (int round = 0; round < 60; ++round) {
    CAPTURE(round);
    const AnyArch any = any_arch(random);
    const Equilibrium found = solve(any.model, any.loads);
    if (!found.converged()) continue;
    ++converged;
    const auto [force, moment] = whole_balance(any.model, any.loads, found);
    const double load = sum_of_forces(any.loads);
    CHECK(force.norm() < 1e-6 * load);
    CHECK(moment.norm() < 1e-6 * load * 5);
  }
  CHECK(converged > 50);
}

TEST_CASE("forces within the rod balance at every node that nothing pushes") {
  // Between two loads the section force is one vector, and the moments differ by the arm.
  const FrameModel model = cantilever(8, {1e6, 10, 8}, 2, Vec3(0, 0.6, 0.8));
  const Vec3 force(1.5, -2, 0.7);
  const Equilibrium found = solve(model, push_on(8, force));
  REQUIRE(found.converged());
  for (std::uint32_t i = 0; i < 8; ++i) {
    CAPTURE(i);
    CHECK(found.elements[i].at_from.force_n.norm() == doctest::Approx(force.norm()).epsilon(1e-7));
    const Vec3 arm = place(model, found.state, 8) - place(model, found.state, i);
    CHECK(found.elements[i].at_from.moment_nm.norm() == doctest::Approx(arm.cross(force).norm()).epsilon(1e-6));
  }
  // On a straight pole pulled along itself the axial force is positive; pushed, negative.
  const FrameModel upright = cantilever(4, {1e6, 10, 8}, 1, Vec3::UnitZ());
  CHECK(solve(upright, push_on(4, Vec3(0, 0, 3))).elements[2].at_to.force_n.x() == doctest::Approx(3));
  CHECK(solve(upright, push_on(4, Vec3(0, 0, -3))).elements[2].at_from.force_n.x() == doctest::Approx(-3));
}

TEST_CASE("a mirrored frame has mirrored reactions") {
  // Mirrored in x: forces change their x, moments (axial vectors) their y and z.
  const Vec3 flip(-1, 1, 1), flip_moment(1, -1, -1);
  Random random(12);
  int converged = 0;
  for (int round = 0; round < 20; ++round) {
    AnyArch any = any_arch(random);
    const Equilibrium found = solve(any.model, any.loads);
    for (Vec3& node : any.model.nodes) node = node.cwiseProduct(flip);
    for (FrameCable& cable : any.model.cables)
      for (CableEnd* end : {&cable.from, &cable.to}) end->at = end->at.cwiseProduct(flip);
    for (Push& push : any.loads.pushes) {
      push.force_n = push.force_n.cwiseProduct(flip);
      push.arm_m = push.arm_m.cwiseProduct(flip);
    }
    const Equilibrium mirrored = solve(any.model, any.loads);
    CHECK(mirrored.converged() == found.converged());
    if (!found.converged() || !mirrored.converged() || found.lost_stability_at) continue;
    ++converged;
    const double load = sum_of_forces(any.loads);
    for (std::size_t i = 0; i < found.supports.size(); ++i) {
      CHECK((mirrored.supports[i].force_n - found.supports[i].force_n.cwiseProduct(flip)).norm() < 1e-5 * load);
      CHECK((mirrored.supports[i].moment_nm - found.supports[i].moment_nm.cwiseProduct(flip_moment)).norm() <
            1e-5 * load * 5);
    }
  }
  CHECK(converged > 15);
}

TEST_CASE("a slack line carries nothing and changes nothing") {
  FrameModel model = cantilever(10, {1e6, 20, 15}, 2, Vec3::UnitZ());
  const FrameLoads loads = push_on(10, Vec3(1, 0.5, -1));
  const Equilibrium without = solve(model, loads);
  REQUIRE(without.converged());
  const double apart = (place(model, without.state, 10) - Vec3(2, 0, 0)).norm();
  model.cables.push_back({{10u, model.nodes[10]}, {std::nullopt, Vec3(2, 0, 0)}, apart + cable_corner_m + 1e-6, 1e5});
  // Longer than the drawn distance too? Only then is it slack on the whole way.
  REQUIRE(apart < (model.nodes[10] - Vec3(2, 0, 0)).norm() + 1);
  if (model.cables[0].length_m < (model.nodes[10] - Vec3(2, 0, 0)).norm()) model.cables[0].length_m = 3.5;
  const Equilibrium with = solve(model, loads);
  REQUIRE(with.converged());
  CHECK(with.cables[0].tension_n == 0);
  CHECK((with.state.shifts[10] - without.state.shifts[10]).norm() < 1e-9);
}

TEST_CASE("a line between a pole and the ground shares a small push by their stiffness") {
  // A pole of stiffness 3EI/L³ and a horizontal line of EA/l side by side: the line takes its share of the push.
  FrameModel model = cantilever(10, {1e7, 30, 25}, 2, Vec3::UnitZ());
  model.cables.push_back({{10u, model.nodes[10]}, {std::nullopt, Vec3(-4, 0, 2)}, 4, 400});
  const double pole = 3 * 30 / 8.0, line = 400 / 4.0, push = 1;
  const Equilibrium found = solve(model, push_on(10, Vec3(push, 0, 0)));
  REQUIRE(found.converged());
  CHECK(found.cables[0].tension_n == doctest::Approx(push * line / (pole + line)).epsilon(1e-3));
  CHECK(found.cables[0].pull_on_from.x() < 0);
  // A line tied 0.3 m to the side of the node turns with it.
  model.cables[0].from.at.z() += 0.3;
  model.cables[0].to.at.z() += 0.3;
  const Equilibrium higher = solve(model, push_on(10, Vec3(push, 0, 0)));
  REQUIRE(higher.converged());
  // By energy, tip shift u and turn θ: EI(12u²/L³ − 12uθ/L² + 4θ²/L)/2 + k(u + 0.3θ)²/2 − Pu is least.
  const double a = 12 * 30 / 8.0 + line, b = -6 * 30 / 4.0 + 0.3 * line, c = 4 * 30 / 2.0 + 0.09 * line;
  const double u = push * c / (a * c - b * b), theta = -push * b / (a * c - b * b);
  CHECK(higher.state.shifts[10].x() == doctest::Approx(u).epsilon(2e-3));
  CHECK(higher.cables[0].tension_n == doctest::Approx(line * (u + 0.3 * theta)).epsilon(5e-3));
}

TEST_CASE("finer elements converge") {
  // Half circles bent from straight, pushed sideways; errors against 128 elements fall to less than a third with each halving.
  const auto crown = [](int count) {
    FrameModel model = rod_along(
        count, {2e6, 8, 6}, [](double at) { return Vec3(-1.5 * std::cos(pi * at), 0, 1.5 * std::sin(pi * at)); },
        Rest::straight);
    model.tangents.assign(model.nodes.size(), Vec3::Zero());
    model.tangents.front() = model.tangents.back() = Vec3::UnitZ();
    model.supports = {{0, {}, {}}, {last_node(model), {}, {}}};
    const auto middle = static_cast<std::uint32_t>(count / 2);
    const Equilibrium found = solve(model, push_on(middle, Vec3(0.2, 0.5, -0.4)));
    REQUIRE(found.converged());
    return Vec3(model.nodes[middle] + found.state.shifts[middle]);
  };
  const Vec3 fine = crown(128);
  double last = (crown(8) - fine).norm();
  for (const int count : {16, 32}) {
    const double error = (crown(count) - fine).norm();
    CHECK(error < last / 3);
    last = error;
  }
  CHECK(last < 1e-4);
}

TEST_CASE("a start from a neighbouring load ends where a start from nothing does") {
  Random random(14);
  int compared = 0;
  for (int round = 0; round < 15; ++round) {
    const AnyArch any = any_arch(random);
    FrameAnalysis analysis(any.model);
    FrameLoads less = any.loads;
    for (Push& push : less.pushes) push.force_n *= 0.8;
    const Equilibrium near = analysis.solve(less), cold = analysis.solve(any.loads);
    if (!near.converged() || !cold.converged() || cold.lost_stability_at) continue;
    ++compared;
    const Equilibrium warm = analysis.solve(any.loads, {}, &near.state);
    REQUIRE(warm.converged());
    CHECK((warm.supports[0].force_n - cold.supports[0].force_n).norm() < 1e-5 * sum_of_forces(any.loads));
    CHECK(warm.iterations <= cold.iterations + 2);
  }
  CHECK(compared > 10);
}
