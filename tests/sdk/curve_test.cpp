// Curves by arc length.
#include "sdk/curve.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace quadrille;

TEST_CASE("a curve measures its points and finds them by arc length") {
  const Curve curve({{0, 0, 0}, {3, 0, 0}, {3, 0, 4}});
  CHECK(curve.length_m() == doctest::Approx(7));
  CHECK(curve.point(1.5).isApprox(Vec3(1.5, 0, 0)));
  CHECK(curve.point(5).isApprox(Vec3(3, 0, 2)));
  CHECK(curve.point(-1).isApprox(Vec3(0, 0, 0)));
  CHECK(curve.point(9).isApprox(Vec3(3, 0, 4)));
  CHECK(curve.spine().size() == 3);
}

TEST_CASE("tangents of a finely drawn circle are those of the circle") {
  std::vector<Vec3> points;
  for (int i = 0; i <= 400; ++i) points.emplace_back(std::cos(pi * i / 400), 0, std::sin(pi * i / 400));
  const Curve curve(points);
  CHECK(curve.length_m() == doctest::Approx(pi).epsilon(1e-5));
  for (double share = 0.05; share < 1; share += 0.05) {
    const double angle = pi * share;
    CHECK((curve.tangent(share * curve.length_m()) - Vec3(-std::sin(angle), 0, std::cos(angle))).norm() < 1e-4);
  }
}
