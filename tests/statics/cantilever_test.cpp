// Rods clamped at one end, bent far, against closed forms and published values.
#include <doctest/doctest.h>

#include "tests/reference_table.hpp"
#include "tests/statics/frame_shapes.hpp"

using namespace quadrille;

TEST_CASE("a cantilever under a transverse tip load follows Mattiasson's closed form") {
  const ReferenceTable table("mattiasson.csv");
  REQUIRE(table.rows() == 18);
  const RodStiffness rod{1e8, 2, 2};
  FrameAnalysis analysis(cantilever(20, rod, 1));
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double load = table.number(row, "PL2_over_EI");
    CAPTURE(load);
    const Equilibrium found = analysis.solve(push_on(20, Vec3(0, 0, -2 * load)));
    REQUIRE(found.converged());
    const double within = 1e-4;
    CHECK(-found.state.shifts[20].z() == doctest::Approx(table.number(row, "w_over_L_transverse")).epsilon(within));
    CHECK(-found.state.shifts[20].x() ==
          doctest::Approx(table.number(row, "u_over_L_axial_shortening")).epsilon(within));
    CHECK(turn_angle(found.state.turns[20]) == doctest::Approx(table.number(row, "theta_tip_rad")).epsilon(within));
    // The clamp turns the rod up against the load: about −y.
    CHECK(found.supports[0].moment_nm.y() ==
          doctest::Approx(-2 * table.number(row, "root_moment_ML_over_EI")).epsilon(within));
    CHECK(!found.lost_stability_at);
  }
}

TEST_CASE("a rod rolls up into a circle under an end moment") {
  // x = L sin(a)/a, z = L(1 − cos a)/a with a = ML/EI; at a = 2π the ring closes. In space a moment that keeps its axis
  // topples the half circle sideways, so every node is kept in the plane.
  const double length = 10, bending = 100;
  FrameModel model = cantilever(40, {1e9, bending, 100}, length);
  for (std::uint32_t i = 1; i <= 40; ++i) model.supports.push_back({i, {true, false, true}, {false, true, false}});
  FrameAnalysis analysis(model);
  for (const double part : {0.25, 0.5, 1.0, 1.5, 2.0}) {
    const double a = pi * part;
    CAPTURE(a);
    const Equilibrium found = analysis.solve(push_on(40, Vec3::Zero(), Vec3(0, -a * bending / length, 0)));
    REQUIRE(found.converged());
    const Vec3 tip = analysis.model().nodes[40] + found.state.shifts[40];
    const Vec3 exact(length * std::sin(a) / a, 0, length * (1 - std::cos(a)) / a);
    CHECK((tip - exact).norm() < 0.001 * length);
    CHECK(found.energy_j == doctest::Approx(a * a * bending / (2 * length)).epsilon(1e-6));
  }
}

TEST_CASE("the 45 degree bend twists and bends as the converged rod does") {
  const ReferenceTable table("bend45.csv");
  const double radius = 100;
  int checked = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    // Both torsion constants, G·Ip and G·0.140577 b⁴ of the square; without shear.
    if (table.text(row, "set").find("inextensible") == std::string::npos) continue;
    const double torsion = table.number(row, "GJ");
    FrameModel model = rod_along(40, {1e7, 1e7 / 12, torsion}, [&](double at) {
      return Vec3(radius * std::sin(at * pi / 4), radius * (1 - std::cos(at * pi / 4)), 0);
    });
    model.supports.push_back({0, {}, {}});
    const Equilibrium found = solve(model, push_on(40, Vec3(0, 0, table.number(row, "P"))));
    CAPTURE(torsion);
    CAPTURE(table.number(row, "P"));
    REQUIRE(found.converged());
    const Vec3 tip = model.nodes[40] + found.state.shifts[40];
    CHECK(tip.x() == doctest::Approx(table.number(row, "tip_R_sin_dir")).epsilon(0.001));
    CHECK(tip.y() == doctest::Approx(table.number(row, "tip_R_1mcos_dir")).epsilon(0.001));
    CHECK(tip.z() == doctest::Approx(table.number(row, "tip_out_of_plane")).epsilon(0.001));
    ++checked;
  }
  CHECK(checked == 6);
}

TEST_CASE("the 45 degree bend with shear matches the published tip positions") {
  // Converged with GA = 5e6 and GJ = G·Ip: 600 → 47.150439, 15.684801, 53.474859. Published: Bathe and Bolourchi 1979 give
  // the tip's displacement at 600 as 13.4, 23.5, 53.4.
  FrameModel model = rod_along(40, {1e7, 1e7 / 12, 5e6 / 6}, [&](double at) {
    return Vec3(100 * std::sin(at * pi / 4), 100 * (1 - std::cos(at * pi / 4)), 0);
  });
  for (FrameElement& element : model.elements) element.shear_stiffness_n = 5e6;
  model.supports.push_back({0, {}, {}});
  const Equilibrium found = solve(model, push_on(40, Vec3(0, 0, 600)));
  REQUIRE(found.converged());
  const Vec3 tip = model.nodes[40] + found.state.shifts[40];
  CHECK(tip.x() == doctest::Approx(47.150439).epsilon(0.001));
  CHECK(tip.y() == doctest::Approx(15.684801).epsilon(0.001));
  CHECK(tip.z() == doctest::Approx(53.474859).epsilon(0.0005));
  const Vec3 shift = found.state.shifts[40];
  CHECK(-shift.y() == doctest::Approx(13.4).epsilon(0.02));
  CHECK(-shift.x() == doctest::Approx(23.5).epsilon(0.005));
  CHECK(shift.z() == doctest::Approx(53.4).epsilon(0.005));
}

namespace {

/// A horizontal beam of length 1 and EI 1 with `count` elements; ends clamped or turning, the far one free to slide.
FrameModel beam(int count, bool left_turns, bool right_turns) {
  FrameModel model = rod_along(count, {1e6, 1, 1}, [](double at) { return Vec3(at, 0, 0); });
  const std::array<bool, 3> about_y{false, left_turns, false}, slides{true, false, false};
  model.supports.push_back({0, {}, about_y});
  model.supports.push_back({last_node(model), slides, {false, right_turns, false}});
  return model;
}

double sag(const FrameModel& model, std::uint32_t node, const FrameLoads& loads) {
  const Equilibrium found = solve(model, loads);
  REQUIRE(found.converged());
  return -found.state.shifts[node].z();
}

}  // namespace

TEST_CASE("small deflections are those of the handbook") {
  // Beam formulas, Timoshenko; Roark, Table 8.1. Loads so small that the large-deflection terms are below 1e-6.
  const double p = 1e-3;
  const FrameModel tip = cantilever(20, {1e6, 1, 1}, 1);
  CHECK(sag(tip, 20, push_on(20, Vec3(0, 0, -p))) == doctest::Approx(p / 3).epsilon(1e-5));
  CHECK(sag(tip, 20, push_on(20, Vec3::Zero(), Vec3(0, p, 0))) == doctest::Approx(p / 2).epsilon(1e-5));
  CHECK(sag(tip, 20, weight_of(tip, p)) == doctest::Approx(p / 8).epsilon(2e-3));
  const FrameModel simple = beam(20, true, true), fixed = beam(20, false, false), propped = beam(40, false, true);
  CHECK(sag(simple, 10, push_on(10, Vec3(0, 0, -p))) == doctest::Approx(p / 48).epsilon(1e-5));
  CHECK(sag(simple, 10, weight_of(simple, p)) == doctest::Approx(5 * p / 384).epsilon(3e-3));
  CHECK(sag(fixed, 10, push_on(10, Vec3(0, 0, -p))) == doctest::Approx(p / 192).epsilon(1e-5));
  CHECK(sag(fixed, 10, weight_of(fixed, p)) == doctest::Approx(p / 384).epsilon(1e-2));
  // Propped: largest 0.005416122 at 0.578465 from the fixed end; node 23 lies at 0.575.
  CHECK(sag(propped, 23, weight_of(propped, p)) == doctest::Approx(0.005416122 * p).epsilon(3e-3));
}

TEST_CASE("a rod that shears gives way by PL/GA more") {
  FrameModel model = cantilever(10, {1e6, 1, 1}, 1);
  for (FrameElement& element : model.elements) element.shear_stiffness_n = 6;
  CHECK(sag(model, 10, push_on(10, Vec3(0, 0, -1e-3))) == doctest::Approx(1e-3 * (1.0 / 3 + 1.0 / 6)).epsilon(1e-4));
}

TEST_CASE("torsion turns a straight rod by TL/GJ and nothing else") {
  const FrameModel model = cantilever(10, {1e6, 3, 2}, 4);
  const Equilibrium found = solve(model, push_on(10, Vec3::Zero(), Vec3(0.3, 0, 0)));
  REQUIRE(found.converged());
  CHECK(turn_angle(found.state.turns[10]) == doctest::Approx(0.3 * 4 / 2).epsilon(1e-9));
  CHECK(found.state.shifts[10].norm() < 1e-9);
  CHECK(found.elements[4].at_to.moment_nm.x() == doctest::Approx(0.3));
}
