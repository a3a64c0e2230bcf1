// The frame analysis on a dressed arch of 60 elements and 4 lines: one step of Newton's method, one direction and one gust
// from nothing and from a neighbouring gust, all directions of the whole piece in a gust and its limit gust, beside the
// time CalculiX takes for one direction and one gust of the same frame as a process of its own.
#include <benchmark/benchmark.h>

#include <cmath>
#include <string_view>

#include "studio/standing/gust_limit.hpp"
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

/// The same rod as a piece, in fours of 0.25 m on two plates, with its four lines to stakes on grass.
struct DressedPiece {
  Event event;
  Area area;
  PlacedPiece placed;
  Piece piece;

  DressedPiece() {
    area.site.surroundings = Surroundings::outdoors;
    area.site.ground = Ground::grass;
    const Dressed dressed(Rest::straight);
    piece.frame.nodes = dressed.model.nodes;
    for (std::uint32_t i = 0; i < 60; ++i) {
      piece.frame.members.push_back({i, i + 1, Joint::rigid, Rest::straight, 0.012, 0, 40e9, 2000, 800e6});
      const Vec3 middle = (piece.frame.nodes[i] + piece.frame.nodes[i + 1]) / 2;
      const Vec3 outward = Vec3(middle.x(), 0, middle.z()).normalized();
      for (const Vec3& side : {outward, Vec3(-outward), Vec3(0, 1, 0), Vec3(0, -1, 0)}) {
        Balloon balloon;
        balloon.centre = middle + 0.14 * side;
        balloon.diameter_m = 0.25;
        balloon.nominal_in = 11;
        piece.balloons.push_back(balloon);
      }
    }
    for (const std::uint32_t node : {0u, 60u}) {
      Support plate;
      plate.node = node;
      plate.width_m = plate.depth_m = 0.5;
      plate.own_mass_kg = 5;
      plate.ballast_kg = 40;
      piece.supports.push_back(plate);
    }
    for (const TiePurpose purpose : {TiePurpose::front, TiePurpose::back})
      for (const std::uint32_t node : {25u, 35u}) {
        TiePoint tie;
        tie.node = node;
        tie.point = piece.frame.nodes[node];
        tie.purpose = purpose;
        piece.tie_points.push_back(tie);
      }
    for (const char* tie : {"front-1", "front-2", "back-1", "back-2"}) {
      SecuringLine line;
      line.tie = tie;
      line.x_m = std::string_view(tie).ends_with("1") ? -1 : 1;
      line.y_m = std::string_view(tie).starts_with("front") ? -1.8 : 1.8;
      placed.lines.push_back(line);
    }
  }
};

/// All 16 directions in a gust, and the limit gust with what governs it: what is asked about each piece.
void all_directions_and_the_limit(benchmark::State& state) {
  const DressedPiece dressed;
  StandingCase::AllRound round;
  GustLimit limit;
  for (auto _ : state) {
    StandingCase its(dressed.event, dressed.area, dressed.placed, dressed.piece);
    if (!its.faults().empty()) state.SkipWithError(its.faults().front().c_str());
    limit = limit_of(its);
    round = its.all_round(4);
  }
  state.counters["limit_m_s"] = limit.gust_m_s;
  state.counters["used_at_4_m_s"] = round.worst.utilisation();
}

}  // namespace

BENCHMARK(all_directions_and_the_limit)->Unit(benchmark::kMillisecond);
BENCHMARK(one_newton_step)->Unit(benchmark::kMillisecond);
BENCHMARK(from_nothing)->Unit(benchmark::kMillisecond);
BENCHMARK(from_a_neighbouring_gust)->Unit(benchmark::kMillisecond);
BENCHMARK(stress_free_here)->Unit(benchmark::kMillisecond);
BENCHMARK(stress_free_in_calculix)->Unit(benchmark::kMillisecond)->UseRealTime();

BENCHMARK_MAIN();
