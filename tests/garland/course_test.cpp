// The line of a garland: through its points, straight, or hanging as a chain hangs.
#include <doctest/doctest.h>

#include <cmath>

#include "plugins/garland/ball.hpp"

using namespace quadrille;
using namespace quadrille::garland;

namespace {

Request through(std::vector<Vec3> points) {
  Request request;
  request.points = std::move(points);
  request.mix = {{11, 0.24, 1}};
  request.thickness = request.thickness_end = 0.5;
  return request;
}

double nearest(const Curve& curve, const Vec3& point) {
  double least = 1e300;
  for (const Vec3& p : curve.points()) least = std::min(least, (p - point).norm());
  return least;
}

}  // namespace

TEST_CASE("a smooth course passes through all its points and turns evenly") {
  const std::vector<Vec3> points{{-1.6, 0, 0.5}, {-1.35, 0.2, 1.5}, {-0.5, 0, 2.2}, {0.6, 0, 2.3}, {1.9, 0, 1.15}};
  const Curve curve = course_of(through(points));
  for (const Vec3& point : points) CHECK(nearest(curve, point) < 1e-8);
  for (double at = 0.01; at < curve.length_m(); at += 0.01)
    CHECK(curve.tangent(at).dot(curve.tangent(at - 0.01)) > 0.99);  // less than 8° in a centimetre
}

TEST_CASE("a straight course is the polygon of its points") {
  Request request = through({{0, 0, 1}, {3, 0, 1}, {3, 0, 5}});
  request.straight = true;
  CHECK(course_of(request).length_m() == doctest::Approx(7));
}

TEST_CASE("a hanging course is the catenary") {
  // z = a cosh(x/a) with a = 1 between x = -1 and 1: half the length is sinh 1 = 1.1752011936, the sag cosh 1 − 1 =
  // 0.5430806348. Source: the catenary, any handbook of statics; values of sinh and cosh from the C library.
  Request request = through({{-1, 0, 3}, {1, 0, 3}});
  request.hanging = true;
  request.slack = std::sinh(1.0);
  const Curve level = course_of(request);
  CHECK(level.length_m() == doctest::Approx(2 * std::sinh(1.0)).epsilon(1e-5));  // chords of a centimetre
  CHECK(level.point(level.length_m() / 2).z() == doctest::Approx(3 - (std::cosh(1.0) - 1)).epsilon(1e-6));

  // Ends at different heights, on the same chain: x from -1 to 1.5.
  const double length = std::sinh(1.5) + std::sinh(1.0);
  const Vec3 low(-1, 0, 1 + std::cosh(1.0)), high(1.5, 0, 1 + std::cosh(1.5));
  request.points = {low, high};
  request.slack = length / (high - low).norm();
  const Curve tilted = course_of(request);
  CHECK(tilted.length_m() == doctest::Approx(length).epsilon(1e-5));
  for (const Vec3& p : tilted.points()) CHECK(p.z() == doctest::Approx(1 + std::cosh(p.x())).epsilon(1e-6));
}

// On a straight course of few long sides the clusters turned with the path long before its corner.
TEST_CASE("the direction of a straight course is that of its side up to its corners") {
  Request request = through({{0, 0, 1}, {3, 0, 1}, {3, 0, 5}});
  request.straight = true;
  const Curve curve = course_of(request);
  CHECK(curve.tangent(2.9).isApprox(Vec3::UnitX(), 1e-6));
  CHECK(curve.tangent(3.1).isApprox(Vec3::UnitZ(), 1e-6));
}
