// The geometry of a column: clusters in creases, balls seated on rings, collars that touch what they lean on.
#include "plugins/column/stack.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace quadrille;
using namespace quadrille::column;

namespace {

Request plain(double height, double inflated) {
  Request request;
  request.height_m = height;
  request.dressing.make.inflated_m = inflated;
  return request;
}

Vec3 on_ring(double radius, double angle, double height) {
  return {radius * std::cos(angle), radius * std::sin(angle), height};
}

}  // namespace

TEST_CASE("equal rings in each other's creases are those of the uniform antiprism") {
  for (int n = 2; n <= 6; ++n) CHECK(std::abs(crease_height(n, 0.28, 0.28) - hard_spacing(n, 0.28)) < 1e-15);
}

TEST_CASE("unequal rings in each other's creases touch") {
  for (int n = 2; n <= 6; ++n) {
    CAPTURE(n);
    const double d = 0.28, e = 0.24, height = crease_height(n, d, e);
    const Vec3 below = on_ring(hard_ring_radius(n, d), 0, 0), above = on_ring(hard_ring_radius(n, e), pi / n, height);
    CHECK((above - below).norm() == doctest::Approx((d + e) / 2).epsilon(1e-12));
  }
}

TEST_CASE("a ball rests on three and on four others at the height of solid geometry") {
  // R = 0.14, ρ = 0.065: on three touching √((R+ρ)² − 4R²/3) = 0.1260621540, on a square of four √((R+ρ)² − 2R²) =
  // 0.0531507291. Source: solid geometry, recomputed from coordinates.
  CHECK(seat_height(0.13, 0.28, hard_ring_radius(3, 0.28)) == doctest::Approx(0.1260621540).epsilon(1e-9));
  CHECK(seat_height(0.13, 0.28, hard_ring_radius(4, 0.28)) == doctest::Approx(0.0531507291).epsilon(1e-8));
  CHECK(seat_height(0.1, 0.28, hard_ring_radius(6, 0.28)) == 0);  // falls through
}

TEST_CASE("a collar's balls touch both balloons of their crease, and the topper or the floor") {
  for (int n = 3; n <= 6; ++n) {
    CAPTURE(n);
    const double d = 0.23, c = 0.10, radius = 0.88 * hard_ring_radius(n, d), D = 0.53;
    const double topper = seat_height(D, d, radius);
    const auto below_topper = collar_below_topper(n, d, radius, c, D, topper);
    REQUIRE(below_topper.has_value());
    const Vec3 ball = on_ring(below_topper->radius_m, pi / n, below_topper->height_m);
    CHECK((ball - on_ring(radius, 0, 0)).norm() == doctest::Approx((d + c) / 2).epsilon(1e-9));
    CHECK((ball - on_ring(radius, 2 * pi / n, 0)).norm() == doctest::Approx((d + c) / 2).epsilon(1e-9));
    CHECK((ball - Vec3(0, 0, topper)).norm() == doctest::Approx((D + c) / 2).epsilon(1e-9));
    CHECK(below_topper->radius_m > 0.7 * radius);  // outside, where it is seen

    const auto foot = collar_at_foot(n, d, radius, c, d / 2);
    REQUIRE(foot.has_value());
    const Vec3 low = on_ring(foot->radius_m, pi / n, d / 2 + foot->height_m);
    CHECK(low.z() == doctest::Approx(c / 2));
    CHECK((low - on_ring(radius, 0, d / 2)).norm() == doctest::Approx((d + c) / 2).epsilon(1e-9));
  }
  CHECK_FALSE(collar_at_foot(4, 0.23, 0.14, 0.02, 0.5).has_value());  // far too small to reach up
}

TEST_CASE("the usual column of six and a half feet takes eight to ten quads") {
  // Common practice, no source beyond a page for decorators, "How to Make a 6 1/2' Balloon Column": 11 in balloons at 10 in.
  const Stack stack = stack_of(plain(6.5 * 0.3048, 10 * 0.0254));
  CHECK(stack.layers.size() >= 8);
  CHECK(stack.layers.size() <= 10);
}

TEST_CASE("the stack stands on the floor, stays below its height and keeps its spacing") {
  const Stack stack = stack_of(plain(2, 0.25));
  CHECK(stack.layers.front().centre_m == doctest::Approx(0.125));
  for (std::size_t i = 1; i < stack.layers.size(); ++i)
    CHECK(stack.layers[i].centre_m - stack.layers[i - 1].centre_m ==
          doctest::Approx(hard_spacing(4, 0.25)).epsilon(1e-12));
  CHECK(stack.layers.back().centre_m + 0.125 <= 2);
  CHECK(stack.layers.back().centre_m + 0.125 + hard_spacing(4, 0.25) > 2);
}

TEST_CASE("a taper shrinks the balloons steadily in steps of the sizer") {
  Request request = plain(2.4, 0.27);
  request.taper = 0.6;
  const Stack stack = stack_of(request);
  REQUIRE(stack.layers.size() > 10);
  for (std::size_t i = 1; i < stack.layers.size(); ++i) {
    CHECK(stack.layers[i].inflated_m <= stack.layers[i - 1].inflated_m);
    const double steps = stack.layers[i].inflated_m / 0.0127;  // half an inch
    CHECK(std::abs(steps - std::round(steps)) < 1e-9);
    // Within a step of the straight line from 0.27 at the floor to 0.162 at the top, at the height of its seat.
    const double line = 0.27 * (1 - 0.4 * stack.layers[i].centre_m / 2.4);
    CHECK(std::abs(stack.layers[i].inflated_m - line) < 0.0127);
  }
}
