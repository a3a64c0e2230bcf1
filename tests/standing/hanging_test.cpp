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
  const Equilibrium state = hung(piece, {{0, {0, 0, -1}}, {1, {0, 0, -2}}, {2, {0, 3, -1}}}, 0.02);
  REQUIRE(state.converged());
  CHECK(state.supports[1].force_n.z() == 2);
  CHECK(state.supports[2].force_n == Vec3(0, -3, 1));
  piece.supports.pop_back();
  CHECK_FALSE(hung(piece, {{2, {0, 0, -1}}}, 0.02).converged());
}

/// A level garland between two hooks 6 m apart, `length_m` long along its spine.
Piece spanning(double length_m) {
  Piece piece;
  piece.frame.nodes = {{0, 0, 2}, {6, 0, 2}};
  for (std::uint32_t node = 0; node < 2; ++node) piece.supports.push_back({SupportKind::hook, node, true});
  piece.spine = {{0, {0, 0, 2}}, {length_m, {6, 0, 2}}};
  return piece;
}

TEST_CASE("a garland pulled taut was taken to hang down from its hooks: each end was told a thirteenth of its pull") {
  // Parabola of a shallow chain: length over span is 1 + 8/3 (f/l)², thrust W l/(8 f). By hand for 1.001 and 99 N:
  // f/l = √(0.001·3/8) = 0.019365, thrust 99/(8·0.019365) = 639.0 N, with 49.5 N down 641 N at each end.
  const auto end_of = [](double length_m) {
    const Equilibrium state = hung(spanning(length_m), {{0, {0, 0, -49.5}}, {1, {0, 0, -49.5}}}, 0.02);
    REQUIRE(state.converged());
    return state.supports[0].force_n.norm();
  };
  CHECK(end_of(6.006) == doctest::Approx(641).epsilon(5e-3));
  CHECK(end_of(6) == doctest::Approx(641).epsilon(5e-3));  // no garland is tauter than its line
  // It stepped by a factor of three where the slack passed two hundredths.
  CHECK(end_of(6 * 1.019) / end_of(6 * 1.021) == doctest::Approx(std::sqrt(21.0 / 19)).epsilon(0.01));
}

TEST_CASE(
    "the end hooks of a garland on many hooks bear the line's pull too, and those between only what hangs there") {
  // Slack of 0.02: f/l = √(0.02·3/8) = 0.0866 and W/(8·0.0866) = 1.443 W of thrust, W = 2 N in each field; the parabola
  // is within two hundredths of the catenary there.
  Piece piece;
  piece.frame.nodes = {{0, 0, 2}, {1, 0, 2}, {2, 0, 2}};
  for (std::uint32_t node = 0; node < 3; ++node) {
    piece.supports.push_back({SupportKind::hook, node, true});
    piece.spine.push_back({static_cast<double>(node), piece.frame.nodes[node]});
  }
  const Equilibrium state = hung(piece, {{0, {0, 0, -1}}, {1, {0, 0, -2}}, {2, {0, 0, -1}}}, 0.02);
  REQUIRE(state.converged());
  CHECK(state.supports[0].force_n.x() == doctest::Approx(-2.887).epsilon(0.02));
  CHECK(state.supports[2].force_n.x() == doctest::Approx(2.887).epsilon(0.02));
  CHECK(std::abs(state.supports[1].force_n.x()) < 1e-9);
  CHECK(state.supports[1].force_n.z() == doctest::Approx(2));
}

}  // namespace
}  // namespace quadrille
