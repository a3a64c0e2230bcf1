// The bent rod against independent solutions of the elastica, and its sideways limit.
#include "plugins/arch/elastica.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "plugins/arch/topple.hpp"
#include "sdk/vec.hpp"
#include "tests/reference_table.hpp"

using namespace quadrille;
using namespace quadrille::arch;

namespace {

bool near(double found, double wanted, double relative = 1e-6, double absolute = 1e-8) {
  return std::abs(found - wanted) <= std::max(absolute, relative * std::abs(wanted));
}

/// Integrates EIθ'' = −P sinθ from the left foot with the thrust and foot curvature that the closed form gives
/// (classical Runge-Kutta; L = EI = 1), and says how far the right foot is missed in x, z and slope.
double miss_of_the_far_foot(const Elastica& elastica, double start_slope) {
  constexpr int steps = 20000;
  constexpr double h = 1.0 / steps;
  struct State {
    double slope, turn, x, z;
  };
  const auto rate = [&](const State& y) {
    return State{y.turn, -elastica.thrust() * std::sin(y.slope), std::cos(y.slope), std::sin(y.slope)};
  };
  const auto step = [](const State& y, const State& r, double by) {
    return State{y.slope + by * r.slope, y.turn + by * r.turn, y.x + by * r.x, y.z + by * r.z};
  };
  State y{start_slope, -elastica.foot_curvature(), 0, 0};
  for (int i = 0; i < steps; ++i) {
    const State a = rate(y), b = rate(step(y, a, h / 2)), c = rate(step(y, b, h / 2)), d = rate(step(y, c, h));
    y = step(step(step(step(y, a, h / 6), b, h / 3), c, h / 3), d, h / 6);
  }
  return std::max({std::abs(y.x - elastica.span()), std::abs(y.z), std::abs(y.slope + start_slope)});
}

}  // namespace

TEST_CASE("the arch with upright feet has the published height, width, thrust, curvatures and energy") {
  const ReferenceTable table("elastica.csv");
  CHECK(table.rows() >= 20);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const Elastica elastica(Feet::upright, table.number(row, "span_over_L"));
    CAPTURE(elastica.span());
    CHECK(near(elastica.height(), table.number(row, "height_over_L")));
    CHECK(near(elastica.widest(), table.number(row, "max_width_over_L")));
    CHECK(near(elastica.widest_at(), table.number(row, "height_of_max_width_over_L"), 1e-6, 1e-7));
    CHECK(near(elastica.thrust(), table.number(row, "thrust_PL2_over_EI"), 1e-6, 2e-7));
    CHECK(near(elastica.crown_curvature(), table.number(row, "crown_curvature_times_L")));
    CHECK(near(elastica.foot_curvature(), table.number(row, "foot_curvature_times_L"), 1e-6, 2e-7));
    CHECK(near(elastica.energy(), table.number(row, "strain_energy_UL_over_EI")));
  }
}

TEST_CASE("the arch with pinned feet has the published height, thrust, curvature and energy") {
  const ReferenceTable table("elastica_pinned.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double span = table.number(row, "span_over_L");
    if (!Elastica::span_is_valid(Feet::pinned, span)) continue;
    const Elastica elastica(Feet::pinned, span);
    CAPTURE(span);
    CHECK(near(elastica.height(), table.number(row, "height_over_L")));
    CHECK(near(elastica.thrust(), table.number(row, "thrust_PL2_over_EI")));
    CHECK(near(elastica.crown_curvature(), table.number(row, "crown_curvature_times_L")));
    CHECK(near(elastica.energy(), table.number(row, "strain_energy_UL_over_EI")));
    CHECK(elastica.foot_curvature() == 0);
  }
}

TEST_CASE("points of the arch lie where the published shape has them") {
  const ReferenceTable table("elastica_shape.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const Elastica elastica(Feet::upright, table.number(row, "span_over_L"));
    const ArchPoint point = elastica.point(table.number(row, "s_over_L"));
    CAPTURE(elastica.span());
    CHECK(std::abs(point.x + elastica.span() / 2 - table.number(row, "x_over_L")) < 2e-9);
    CHECK(std::abs(point.z - table.number(row, "y_over_L")) < 2e-9);
    CHECK(std::abs(point.slope - table.number(row, "theta_rad")) < 2e-9);
  }
}

TEST_CASE("between the published spans the closed form meets the far foot when the rod's equation is integrated") {
  // Nearly straight arches are left out: there the equation blows any error up by e^√|P|.
  for (double span = 0; span < 0.9; span += 0.0173) {
    CAPTURE(span);
    CHECK(miss_of_the_far_foot(Elastica(Feet::upright, span), pi / 2) < 1e-8);
  }
  for (double span = 0.03; span < 0.97; span += 0.0171) {
    CAPTURE(span);
    const Elastica elastica(Feet::pinned, span);
    CHECK(miss_of_the_far_foot(elastica, elastica.point(0).slope) < 1e-8);
  }
}

TEST_CASE("the work of the thrust is the change of bending energy, up to the nearly straight arch") {
  // Castigliano: dU/dS = −P, by central differences.
  for (double span = 0.02; span <= 0.95; span += 0.0031) {
    CAPTURE(span);
    const double h = 1e-5 * (1 - span);
    const double slope =
        (Elastica(Feet::upright, span + h).energy() - Elastica(Feet::upright, span - h).energy()) / (2 * h);
    CHECK(near(-slope, Elastica(Feet::upright, span).thrust(), 1e-6, 1e-5));
  }
}

TEST_CASE("there is no jump at the special spans") {
  // Where the foot moment vanishes, where the inflectional form has its separatrix, and at the semicircle.
  for (const double span : {0.4569465810, 0.6045563234, 2 / pi}) {
    CAPTURE(span);
    const Elastica before(Feet::upright, span - 1e-9), at(Feet::upright, span), after(Feet::upright, span + 1e-9);
    for (const auto value : {&Elastica::height, &Elastica::widest, &Elastica::thrust, &Elastica::crown_curvature,
                             &Elastica::foot_curvature, &Elastica::energy}) {
      CHECK(std::abs((at.*value)() - (before.*value)()) < 2e-7);
      CHECK(std::abs((after.*value)() - (at.*value)()) < 2e-7);
    }
    CHECK(std::abs(after.point(0.2).z - before.point(0.2).z) < 1e-8);
  }
}

TEST_CASE("an arch flops over sideways at the published weight") {
  const ReferenceTable table("elastica_toppling.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double span = table.number(row, "span_over_L");
    const auto limit = sideways_limit(span);
    CAPTURE(span);
    REQUIRE(limit.has_value());
    CHECK(near(*limit, table.number(row, "gamma_crit_sideways_wL3_over_EI"), 1e-6));
  }
}
