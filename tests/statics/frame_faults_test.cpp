// What cannot be analysed is refused, and every question ends with an answer or a reason.
#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <limits>

#include "tests/statics/any_arch.hpp"

using namespace quadrille;

TEST_CASE("what cannot be analysed is refused with a sentence") {
  const FrameModel good = cantilever(3, {1e6, 10, 8}, 1);
  const FrameLoads loads = push_on(3, Vec3(0, 0, -1));
  REQUIRE(solve(good, loads).converged());
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [&](auto spoil) {
    FrameModel model = good;
    FrameLoads with = loads;
    spoil(model, with);
    const Equilibrium found = solve(model, with);
    CHECK(found.outcome == Outcome::bad_model);
    CHECK(found.reason.size() > 20);
  };
  refused([](FrameModel& m, FrameLoads&) { m.elements.clear(); });
  refused([](FrameModel& m, FrameLoads&) { m.supports.clear(); });
  refused([](FrameModel& m, FrameLoads&) { m.nodes.emplace_back(0, 0, 9); });
  refused([](FrameModel& m, FrameLoads&) { m.nodes[1] = m.nodes[0]; });
  refused([&](FrameModel& m, FrameLoads&) { m.nodes[2].y() = nan; });
  refused([](FrameModel& m, FrameLoads&) { m.elements[1].to = 77; });
  refused([](FrameModel& m, FrameLoads&) { m.elements[1].bending_stiffness_nm2 = 0; });
  refused([&](FrameModel& m, FrameLoads&) { m.elements[1].axial_stiffness_n = nan; });
  refused([](FrameModel& m, FrameLoads&) { m.supports.push_back({0, {}, {}}); });
  refused([](FrameModel& m, FrameLoads&) { m.supports[0].turns = {true, true, false}; });
  refused([](FrameModel& m, FrameLoads&) {
    m.cables.push_back({{3u, Vec3::Zero()}, {std::nullopt, Vec3::Zero()}, 0, 1e4});
  });
  refused([](FrameModel& m, FrameLoads&) { m.cables.push_back({{}, {}, 1, 1e4}); });
  refused([&](FrameModel&, FrameLoads& l) { l.pushes[0].force_n.x() = nan; });
  refused([](FrameModel&, FrameLoads& l) { l.pushes[0].node = 4; });
  refused([](FrameModel&, FrameLoads& l) { l.moves.push_back({3, Vec3::Zero(), Vec3::Zero()}); });
  FrameState foreign;
  CHECK(solve(good, loads, {}, &foreign).outcome == Outcome::bad_model);
}

TEST_CASE("a frame that nothing keeps from turning is no frame at rest") {
  // A pole on a ball: at rest upright without load, falling with the least one.
  FrameModel model = cantilever(6, {1e6, 10, 8}, 1, Vec3::UnitZ());
  model.supports[0].turns = {true, true, true};
  CHECK(solve(model, {}).outcome == Outcome::mechanism);
  const Equilibrium fallen = solve(model, weight_of(model, 1));
  CHECK(fallen.lost_stability_at.has_value());
  // Guyed on three sides it stands, but for its spin about itself, which the lines tied beside its middle hold too.
  for (const double angle : {0.0, 2 * pi / 3, 4 * pi / 3}) {
    const Vec3 out(std::cos(angle), std::sin(angle), 0), beside(-std::sin(angle), std::cos(angle), 0);
    const Vec3 tie = model.nodes[6] + 0.05 * out + 0.02 * beside, anchor = 1.2 * out;
    model.cables.push_back({{6u, tie}, {std::nullopt, anchor}, (tie - anchor).norm() - 0.002, 2e4});
  }
  const Equilibrium stands = solve(model, weight_of(model, 1));
  CHECK(stands.state.shifts[6].norm() < 0.05);
}

TEST_CASE("whatever is asked ends within its bound with an answer or a reason") {
  Random random(15);
  const auto start = std::chrono::steady_clock::now();
  int answers = 0, reasons = 0;
  for (int round = 0; round < 300; ++round) {
    AnyArch any = any_arch(random);
    const double wild = std::pow(10, random.within(-4, 4));
    for (Push& push : any.loads.pushes) push.force_n *= wild;
    for (FrameElement& element : any.model.elements)
      element.bending_stiffness_nm2 *= random.below(3) == 0 ? std::pow(10, random.within(-3, 3)) : 1.0;
    if (random.below(4) == 0) any.model.supports[0].turns = any.model.supports[1].turns = {true, true, true};
    if (random.below(4) == 0) any.model.cables.clear();
    SolveOptions options;
    options.most_iterations = 300;
    options.past_loss = random.below(2) == 0;
    const Equilibrium found = solve(any.model, any.loads, options);
    CHECK(found.iterations <= options.most_iterations + 20);
    CHECK(found.converged() == found.reason.empty());
    if (found.converged()) {
      ++answers;
      CHECK(whole_balance(any.model, any.loads, found).first.norm() < 1e-5 * (sum_of_forces(any.loads) + 1));
    } else {
      ++reasons;
    }
  }
  const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  MESSAGE(answers, " answers and ", reasons, " reasons in ", seconds, " s");
  CHECK(answers > 100);
  CHECK(reasons > 20);
}
