// The frame analysis on a dressed arch of 60 elements and 4 lines: one step of Newton's method, one direction and one gust
// from nothing and from a neighbouring gust, beside the time CalculiX takes for the same frame as a process of its own.
#include <benchmark/benchmark.h>

#include <cmath>

#include "studio/statics/assembly.hpp"
#include "studio/statics/stiffness.hpp"
#include "tests/statics/ccx_deck.hpp"
#include "tests/statics/frame_shapes.hpp"

using namespace quadrille;

namespace {

/// A half circle of 6 m of rod, two lines to the front and two to the back, dressed with 3 kg and pushed by a gust.
struct Dressed {
  SquareRod rod{0.012, 40e9, 0.25};
  FrameModel model;

  explicit Dressed(Rest rest, bool front = true) {
    const double radius = 6 / pi;
    model = rod_along(
        60, {rod.axial_n(), rod.bending_nm2(), rod.torsion_nm2()},
        [&](double at) { return Vec3(-radius * std::cos(pi * at), 0, radius * std::sin(pi * at)); }, rest);
    model.supports = {{0, {}, {}}, {60, {}, {}}};
    for (const std::uint32_t node : {25u, 35u})
      for (const double side : {-1.0, 1.0}) {
        if (side > 0 && !front) continue;
        const Vec3 anchor(model.nodes[node].x() * 2, 1.8 * side, 0);
        model.cables.push_back(
            {{node, model.nodes[node]}, {std::nullopt, anchor}, (model.nodes[node] - anchor).norm(), 2e4});
      }
  }

  /// Velocity pressure × 1.2 × half a metre of dressing, over the nodes between the feet.
  FrameLoads gust(double speed_m_s) const {
    FrameLoads loads;
    const double push = 0.625 * speed_m_s * speed_m_s * 1.2 * 0.5 * 6, weight = 3 * 9.80665;
    for (std::uint32_t i = 1; i < 60; ++i)
      loads.pushes.push_back({i, Vec3(0, push, -weight) / 59, Vec3::Zero(), Vec3::Zero()});
    return loads;
  }
};

void one_newton_step(benchmark::State& state) {
  const Dressed dressed(Rest::straight);
  const FrameAssembly frame(dressed.model);
  FrameAssembly::Tangent tangent = frame.empty_tangent();
  FrameAssembly::Forces forces;
  Stiffness stiffness(tangent.stiffness, Eigen::VectorXd::Ones(frame.free_size()));
  FrameState at = frame.drawn();
  for (auto _ : state) {
    frame.forces(at, forces);
    frame.tangent(at, {}, {}, nullptr, tangent);
    stiffness.factorise(tangent.stiffness, 0);
    benchmark::DoNotOptimize(stiffness.solve(Eigen::VectorXd::Ones(frame.free_size())));
    FrameState moved = at;
    frame.move(moved, FullVector::Zero(static_cast<Eigen::Index>(frame.full_size())));
    benchmark::DoNotOptimize(moved);
  }
}

void from_nothing(benchmark::State& state) {
  const Dressed dressed(Rest::straight);
  FrameAnalysis analysis(dressed.model);
  Equilibrium found;
  for (auto _ : state) found = analysis.solve(dressed.gust(8));
  if (!found.converged()) state.SkipWithError(found.reason.c_str());
  state.counters["matrices"] = found.iterations;
}

void from_a_neighbouring_gust(benchmark::State& state) {
  const Dressed dressed(Rest::straight);
  FrameAnalysis analysis(dressed.model);
  const Equilibrium near = analysis.solve(dressed.gust(7.5));
  Equilibrium found;
  for (auto _ : state) found = analysis.solve(dressed.gust(8), {}, &near.state);
  if (!found.converged()) state.SkipWithError(found.reason.c_str());
  state.counters["matrices"] = found.iterations;
}

/// Free of stress as drawn and without the slack lines in the lee, which CalculiX's would push.
void stress_free_here(benchmark::State& state) {
  const Dressed dressed(Rest::as_drawn, false);
  Equilibrium found;
  for (auto _ : state) found = solve(dressed.model, dressed.gust(8));
  if (!found.converged()) state.SkipWithError(found.reason.c_str());
  state.counters["crown_m"] = found.state.shifts[30].norm();
}

void stress_free_in_calculix(benchmark::State& state) {
  if (!has_ccx()) {
    state.SkipWithError("ccx (Debian package calculix-ccx) is not on the path");
    return;
  }
  const Dressed dressed(Rest::as_drawn, false);
  std::optional<CcxAnswer> found;
  for (auto _ : state) found = run_ccx(dressed.model, dressed.gust(8), dressed.rod);
  if (!found) {
    state.SkipWithError("ccx did not come to the end of the step");
    return;
  }
  state.counters["crown_m"] = found->shifts.at(30).norm();
}

}  // namespace

BENCHMARK(one_newton_step)->Unit(benchmark::kMillisecond);
BENCHMARK(from_nothing)->Unit(benchmark::kMillisecond);
BENCHMARK(from_a_neighbouring_gust)->Unit(benchmark::kMillisecond);
BENCHMARK(stress_free_here)->Unit(benchmark::kMillisecond);
BENCHMARK(stress_free_in_calculix)->Unit(benchmark::kMillisecond)->UseRealTime();

BENCHMARK_MAIN();
