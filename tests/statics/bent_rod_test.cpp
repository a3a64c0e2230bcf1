// A springy rod bent into an arch, its bending stress in it, against the elastica in closed form.
#include <doctest/doctest.h>

#include <string>

#include "plugins/arch/elastica.hpp"
#include "tests/reference_table.hpp"
#include "tests/statics/frame_shapes.hpp"

using namespace quadrille;

namespace {

/// A rod of length 1 and EI 1 drawn as the clamped elastica; that closed form is itself tested against 40-digit values.
FrameModel drawn_arch(int count, double span, bool say_feet) {
  const arch::Elastica elastica(arch::Feet::upright, span);
  FrameModel model = rod_along(
      count, {1e6, 1, 0.769},
      [&](double at) {
        const auto point = elastica.point(at);
        return Vec3(point.x, 0, point.z);
      },
      Rest::straight);
  if (say_feet) {
    model.tangents.assign(model.nodes.size(), Vec3::Zero());
    model.tangents.front() = model.tangents.back() = Vec3::UnitZ();
  }
  model.supports = {{0, {}, {}}, {last_node(model), {}, {}}};
  return model;
}

/// Height, push and foot moment against row `row` of elastica.csv. The push is what the ground exerts inward, along x on
/// the left foot; where the rod leaves that foot bending inward (about +y, from z to x) the ground holds it back, about −y.
void check_arch(const FrameModel& model, const Equilibrium& found, const ReferenceTable& table, std::size_t row,
                double within) {
  REQUIRE(found.converged());
  double height = 0;
  for (std::size_t i = 0; i < model.nodes.size(); ++i)
    height = std::max(height, model.nodes[i].z() + found.state.shifts[i].z());
  CHECK(height == doctest::Approx(table.number(row, "height_over_L")).epsilon(within));
  CHECK(std::abs(found.supports[0].force_n.x() - table.number(row, "thrust_PL2_over_EI")) < within * 40);
  CHECK(std::abs(found.supports[0].moment_nm.y() + table.number(row, "foot_curvature_times_L")) < within * 6);
  CHECK(found.supports[0].force_n.x() == doctest::Approx(-found.supports[1].force_n.x()).epsilon(1e-6));
  CHECK(found.energy_j == doctest::Approx(table.number(row, "strain_energy_UL_over_EI")).epsilon(within));
}

}  // namespace

TEST_CASE("a rod drawn as the clamped elastica rests there with its push and foot moment") {
  const ReferenceTable table("elastica.csv");
  int checked = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double span = table.number(row, "span_over_L");
    if (span < 0.2 || span > 0.8) continue;
    CAPTURE(span);
    for (const bool say_feet : {true, false}) {
      CAPTURE(say_feet);
      const FrameModel model = drawn_arch(40, span, say_feet);
      // Where the feet's direction is not stated it is only as good as the nodes near them tell.
      check_arch(model, solve(model, {}), table, row, say_feet ? 0.001 : 0.002);
    }
    ++checked;
  }
  CHECK(checked >= 10);
}

TEST_CASE("a rod bent from straight by moving and turning its feet becomes the clamped elastica") {
  const ReferenceTable table("elastica.csv");
  for (const char* span : {"0.3000000000", "0.5000000000", "0.7000000000"}) {
    std::size_t row = 0;
    while (table.text(row, "span_over_L") != span) ++row;
    CAPTURE(span);
    // Straight along x; the left foot is turned by −90° about y, so that its tangent points up, the right one by +90°.
    FrameModel model = rod_along(40, {1e6, 1, 0.769}, [](double at) { return Vec3(at, 0, 0); });
    model.supports = {{0, {}, {}}, {40, {}, {}}};
    FrameLoads loads;
    loads.moves = {{0, Vec3::Zero(), Vec3(0, -pi / 2, 0)},
                   {1, Vec3(table.number(row, "span_over_L") - 1, 0, 0), Vec3(0, pi / 2, 0)}};
    const Equilibrium found = solve(model, loads);
    check_arch(model, found, table, row, 0.001);
  }
}

TEST_CASE("weight lowers the arch as the boundary-value solution says") {
  const ReferenceTable table("elastica_selfweight.csv");
  int checked = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double span = table.number(row, "span_over_L"), gamma = table.number(row, "gamma_wL3_over_EI");
    if ((span != 0.4 && span != 0.5 && span != 0.6) || gamma > 60) continue;
    CAPTURE(span);
    CAPTURE(gamma);
    const FrameModel model = drawn_arch(60, span, true);
    const Equilibrium found = solve(model, weight_of(model, gamma));
    REQUIRE(found.converged());
    CHECK(model.nodes[30].z() + found.state.shifts[30].z() ==
          doctest::Approx(table.number(row, "height_over_L")).epsilon(0.001));
    CHECK(found.supports[0].force_n.x() == doctest::Approx(table.number(row, "thrust_HL2_over_EI")).epsilon(0.002));
    CHECK(std::abs(found.supports[0].moment_nm.y() + table.number(row, "foot_curvature_times_L")) < 0.01);
    CHECK(found.supports[0].force_n.z() == doctest::Approx(gamma / 2).epsilon(0.001));
    ++checked;
  }
  CHECK(checked >= 10);
}

TEST_CASE("a rod with one foot that turns rests as the boundary-value solution says") {
  const ReferenceTable table("elastica_clamped_pinned.csv");
  int checked = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double span = table.number(row, "span_over_L");
    if (span < 0.4 || span > 0.6) continue;
    CAPTURE(span);
    // Let go at the right foot, the clamped elastica moves to it.
    FrameModel model = drawn_arch(40, span, true);
    model.supports[1].turns = {true, true, true};
    const Equilibrium found = solve(model, {});
    REQUIRE(found.converged());
    double height = 0;
    for (std::size_t i = 0; i < model.nodes.size(); ++i)
      height = std::max(height, model.nodes[i].z() + found.state.shifts[i].z());
    CHECK(height == doctest::Approx(table.number(row, "height_over_L")).epsilon(0.001));
    CHECK(found.supports[0].force_n.x() == doctest::Approx(table.number(row, "thrust_HL2_over_EI")).epsilon(0.001));
    // The table gives the curvature dθ/ds, negative where the rod bends inward, and the rod's force on its foot.
    CHECK(std::abs(found.supports[0].moment_nm.y() - table.number(row, "clamp_moment_ML_over_EI_signed_curvature")) <
          0.005);
    CHECK(std::abs(found.supports[0].force_n.z() + table.number(row, "vertical_force_on_clamped_foot_VL2_over_EI")) <
          0.01);
    ++checked;
  }
  CHECK(checked >= 4);
}

TEST_CASE("an 8 mm glass-fibre rod pushes its feet as reckoned by hand") {
  // E 41.4 GPa, L 6 m, S 3 m: EI = 8.323964 N m², push 2.555762 N, foot moment 0.923955 N m, energy 7.974960 J, height
  // 2.216189 m (closed form of the elastica, recomputed).
  FrameModel model = drawn_arch(50, 0.5, false);
  for (Vec3& node : model.nodes) node *= 6;
  for (FrameElement& element : model.elements) {
    element.bending_stiffness_nm2 = 8.323964;
    element.torsion_stiffness_nm2 = 6.4;
    element.axial_stiffness_n = 2.08e6;
  }
  const Equilibrium found = solve(model, {});
  REQUIRE(found.converged());
  CHECK(found.supports[0].force_n.x() == doctest::Approx(2.555762).epsilon(0.001));
  CHECK(found.supports[0].moment_nm.y() == doctest::Approx(-0.923955).epsilon(0.001));
  CHECK(found.energy_j == doctest::Approx(7.974960).epsilon(0.001));
  CHECK(model.nodes[25].z() + found.state.shifts[25].z() == doctest::Approx(2.216189).epsilon(0.001));
  // The rod's own axes at the crown: pressed together by the push, bent by EI × crown curvature, 1/1.263503 m.
  const SectionForce crown = found.elements[24].at_to;
  CHECK(crown.force_n.x() == doctest::Approx(-2.555762).epsilon(0.001));
  CHECK(std::hypot(crown.moment_nm.y(), crown.moment_nm.z()) == doctest::Approx(8.323964 / 1.263503).epsilon(0.001));
}
