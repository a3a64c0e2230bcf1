// The hidden share of a spine and the depth of overlaps, against hand calculation.
#include "sdk/hidden.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "sdk/overlap.hpp"

using namespace quadrille;

namespace {
const std::vector<SpinePoint> metre{{0, Vec3::Zero()}, {1, Vec3(0, 0, 1)}};

Balloon ball(const Vec3& centre, double diameter, const Vec3& neck) {
  Balloon balloon;
  balloon.centre = centre;
  balloon.neck = neck;
  balloon.diameter_m = diameter;
  return balloon;
}
}  // namespace

TEST_CASE("a ball in front hides the chord it covers, a ball behind nothing") {
  // At an offset of 0.03 m a ball of radius 0.05 m covers a chord of 2 √(0.05² − 0.03²) = 0.08 m.
  const Vec3 front(0.03, -0.2, 0.5), behind(0.03, 0.2, 0.5);
  const HiddenSpine seen = hidden_spine(metre, std::vector{ball(front, 0.1, front)});
  CHECK(std::abs(seen.share - 0.08) <= 0.002);
  REQUIRE(seen.bare.size() == 2);
  CHECK(std::abs(seen.bare[0].to_m - 0.46) <= 0.0011);
  CHECK(std::abs(seen.bare[1].from_m - 0.54) <= 0.0011);
  CHECK(hidden_spine(metre, std::vector{ball(behind, 0.1, behind)}).share == 0);
}

TEST_CASE("overlapping balls are counted once, and a rod inside a ball is hidden") {
  const std::vector<Balloon> balls{ball({0, -0.1, 0.3}, 0.2, {0, -0.1, 0.3}),
                                   ball({0, -0.1, 0.4}, 0.2, {0, -0.1, 0.4})};
  CHECK(hidden_spine(metre, balls).share == doctest::Approx(0.3).epsilon(0.01));  // from 0.2 to 0.5
  // Its front lies before the rod where √(0.1² − d²) > 0.05: over 2 √(0.1² − 0.05²) = 0.1732.
  const HiddenSpine inside = hidden_spine(metre, std::vector{ball({0, 0.05, 0.5}, 0.2, {0, 0, 0.5})});
  CHECK(std::abs(inside.share - 0.1732) <= 0.002);
}

TEST_CASE("the taper to the neck hides too") {
  // Seen from the front a ball of radius 0.1 m at 0.2 m beside the rod, its neck on the rod: the tangent cone closes at
  // the rod itself, so nothing is hidden there; moved so that the cone crosses the rod it hides 2·t·tan(asin(1/2)),
  // where t = 0.05 m is how far the neck lies beyond the rod: 0.0577 m.
  CHECK(hidden_spine(metre, std::vector{ball({0.2, -0.01, 0.5}, 0.2, {0, 0, 0.5})}).share < 0.002);
  const HiddenSpine seen = hidden_spine(metre, std::vector{ball({0.15, -0.01, 0.5}, 0.2, {-0.05, 0, 0.5})});
  CHECK(std::abs(seen.share - 0.1 / std::sqrt(3)) <= 0.002);
}

TEST_CASE("a spine without length has nothing to hide") {
  CHECK(hidden_spine({}, {}).share == 1);
  CHECK(hidden_spine(std::vector<SpinePoint>{{0, Vec3::Zero()}}, {}).bare.empty());
}

TEST_CASE("the deepest overlap is the depth over the smaller diameter") {
  const std::vector<Balloon> balls{ball({0, 0, 0}, 0.3, Vec3::Zero()), ball({0.24, 0, 0}, 0.2, Vec3::Zero()),
                                   ball({5, 5, 5}, 0.3, Vec3::Zero()), ball({5.29, 5, 5}, 0.3, Vec3::Zero())};
  const Overlap deepest = deepest_overlap(balls);
  CHECK(deepest.share == doctest::Approx(0.05));  // (0.15 + 0.10 − 0.24) / 0.2
  CHECK(deepest.first == 0);
  CHECK(deepest.second == 1);
  CHECK(deepest_overlap(std::vector{balls[0], balls[2]}).share == 0);
}

TEST_CASE("one huge balloon made all the small ones neighbours of each other: now each is looked for at its own size") {
  // 20 × 20 × 20 balls of 0.1 m, 0.2 m apart: each has 27 cells of its own size about it, one or two balls in each.
  SizedGrid<3> grid;
  std::vector<std::array<double, 3>> small;
  for (int i = 0; i < 8000; ++i) small.push_back({i % 20 * 0.2, i / 20 % 20 * 0.2, i / 400 * 0.2});
  for (std::size_t i = 0; i < small.size(); ++i) grid.add(i, small[i], 0.1);
  grid.add(small.size(), {2, 2, 2}, 10);
  std::size_t visited = 0, huge = 0;
  for (const auto& point : small)
    grid.any_near(point, 0.1, [&](std::size_t item) {
      ++visited;
      huge += item == small.size();
      return false;
    });
  CHECK(huge == small.size());  // which every one of them may touch
  CHECK(visited < 40 * small.size());
  CHECK_FALSE(grid.any_near(small[0], 10, [&](std::size_t item) { return item != small.size(); }));
}

TEST_CASE("the deepest overlap is that of looking at every pair") {
  std::vector<Balloon> balls;
  std::uint32_t state = 1;
  const auto random = [&] { return (state = state * 1664525u + 1013904223u) / 4294967296.0; };
  for (int i = 0; i < 300; ++i) {
    const double x = random() * 3, y = random() * 3, z = random() * 3 - 1.5;
    balls.push_back(ball({x, y, z}, 0.05 + 0.3 * random(), Vec3::Zero()));
  }
  balls.push_back(ball({9, 9, 0}, 12.5, Vec3::Zero()));  // a huge one that reaches to some of them
  double worst = 0;
  for (std::size_t i = 0; i < balls.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      worst = std::max(worst,
                       ((balls[i].diameter_m + balls[j].diameter_m) / 2 - (balls[i].centre - balls[j].centre).norm()) /
                           std::min(balls[i].diameter_m, balls[j].diameter_m));
  CHECK(worst > 0.3);
  CHECK(deepest_overlap(balls).share == worst);
}
