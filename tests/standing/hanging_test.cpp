// Hooks and chains.
#include "studio/standing/hanging.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace quadrille {
namespace {

TEST_CASE("a level chain pulls its ends as the catenary does") {
  // Catenary of parameter a: length 2a sinh(l/2a), thrust w·a, end tension w·a cosh(l/2a). Handbook, from memory.
  const double a = 1.3, apart = 3, weight_per_m = 4;
  const double length = 2 * a * std::sinh(apart / (2 * a));
  const ChainEnds ends = chain_ends({apart, 0, 0}, length, {0, 0, -weight_per_m * length});
  CHECK(ends.on_first.x() == doctest::Approx(-weight_per_m * a).epsilon(1e-9));
  CHECK(ends.on_second.x() == doctest::Approx(weight_per_m * a).epsilon(1e-9));
  CHECK(ends.on_first.norm() == doctest::Approx(weight_per_m * a * std::cosh(apart / (2 * a))).epsilon(1e-9));
  CHECK(ends.on_first.z() == doctest::Approx(weight_per_m * length / 2).epsilon(1e-9));
}

TEST_CASE("a chain between ends of different height has the catenary's tensions, which differ by weight times height") {
  // The tension at a point of a catenary is w times its height over the directrix: T2 − T1 = w·(z2 − z1).
  const double weight_per_m = 2.5, length = 4.2;
  const Vec3 chord(2.4, 1.0, -1.1);
  const ChainEnds ends = chain_ends(chord, length, {0, 0, -weight_per_m * length});
  CHECK(ends.on_first.norm() - ends.on_second.norm() == doctest::Approx(weight_per_m * 1.1).epsilon(1e-9));
  CHECK((ends.on_first + ends.on_second - Vec3(0, 0, weight_per_m * length)).norm() < 1e-9);
  CHECK((ends.on_first + ends.on_second).head<2>().norm() < 1e-9);
}

TEST_CASE("a chain from one hook holds half of it on each side, and wind turns it out of the upright") {
  const ChainEnds doubled = chain_ends({0, 0, 0}, 2, {0, 0, -10});
  CHECK(doubled.on_first.z() == doctest::Approx(5));
  const ChainEnds blown = chain_ends({3, 0, 0}, 3.4, {0, 8, -6});
  const ChainEnds still = chain_ends({3, 0, 0}, 3.4, {0, 0, -10});
  CHECK(blown.on_first.norm() == doctest::Approx(still.on_first.norm()).epsilon(1e-9));
  CHECK(blown.on_first.y() == doctest::Approx(-4).epsilon(1e-9));
}

TEST_CASE("hooks along a wall share the load by what hangs at each") {
  Piece piece;
  piece.frame.nodes = {{0, 0, 2}, {1, 0, 2}, {2, 0, 2}};
  for (std::uint32_t node = 0; node < 3; ++node) piece.supports.push_back({SupportKind::hook, node, true});
  const Equilibrium state = hung(piece, {{0, {0, 0, -1}}, {1, {0, 0, -2}}, {2, {0, 3, -1}}});
  REQUIRE(state.converged());
  CHECK(state.supports[1].force_n.z() == 2);
  CHECK(state.supports[2].force_n == Vec3(0, -3, 1));
  piece.supports.pop_back();
  CHECK_FALSE(hung(piece, {{2, {0, 0, -1}}}).converged());
}

}  // namespace
}  // namespace quadrille
