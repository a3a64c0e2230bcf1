// The bent shape over the elevation.
#include "studio/drawing/deflection.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

namespace quadrille {
namespace {

double length_of(const std::vector<std::vector<Point2>>& runs) {
  double length = 0;
  for (const auto& run : runs)
    for (std::size_t i = 1; i < run.size(); ++i) length += std::hypot(run[i].x - run[i - 1].x, run[i].y - run[i - 1].y);
  return length;
}

}  // namespace

TEST_CASE("a disc alone is its circle; one inside another, and a second at the same place, do not show") {
  // Chords of 6° are shorter than their arcs by 0.05 %.
  CHECK(length_of(outline_of({{{1, 2}, 0.5}})) == doctest::Approx(2 * pi * 0.5).epsilon(0.001));
  CHECK(length_of(outline_of({{{1, 2}, 0.5}, {{1.1, 2}, 0.2}})) == doctest::Approx(2 * pi * 0.5).epsilon(0.001));
  CHECK(length_of(outline_of({{{1, 2}, 0.5}, {{1, 2}, 0.5}})) == doctest::Approx(2 * pi * 0.5).epsilon(0.001));
}

TEST_CASE("two equal discs whose centres are a radius apart hide a third of each other's circle") {
  // By hand: they meet at ±60° from the line of centres, so that 240° of each are left.
  const auto runs = outline_of({{{0, 0}, 1}, {{std::cos(0.7), std::sin(0.7)}, 1}});
  CHECK(length_of(runs) == doctest::Approx(2 * 2 * pi * 240 / 360).epsilon(0.001));
  for (const auto& run : runs)
    for (const Point2& point : run) {
      CHECK(std::hypot(point.x, point.y) > 1 - 1e-9);
      CHECK(std::hypot(point.x - std::cos(0.7), point.y - std::sin(0.7)) > 1 - 1e-9);
    }
}

TEST_CASE("discs without a place or a size are left out of the outline") {
  const double nowhere = std::numeric_limits<double>::quiet_NaN();
  CHECK(outline_of({{{nowhere, 0}, 1}, {{0, 0}, 0}, {{0, 0}, -1}}).empty());
}

TEST_CASE("the bent frame runs through the nodes it is given, set where the piece stands") {
  Piece piece;
  piece.frame.nodes = {{0, 0, 0}, {0, 0, 1}, {0, 0, 2}, {5, 0, 0}, {5, 0, 1}};
  for (const auto& [from, to] : {std::pair{0u, 1u}, {1u, 2u}, {3u, 4u}})
    piece.frame.members.push_back({from, to, Joint::rigid, Rest::as_drawn, 0.01, 0, 70e9, 1000, 1e8});
  piece.balloons.resize(1);
  piece.balloons[0].diameter_m = 0.4;
  const std::vector<Vec3> nodes{{0, 0, 0}, {0.1, 3, 0.9}, {0.3, 7, 1.7}, {5, 0, 0}, {5.2, 0, 1}},
      balloons{{0.3, 7, 1.7}};
  const Deflection bent = deflection_of(10, piece, nodes, balloons);
  REQUIRE(bent.frame_m.size() == 2);
  CHECK(bent.frame_m[0] == std::vector<Point2>{{10, 0}, {10.1, 0.9}, {10.3, 1.7}});
  CHECK(bent.frame_m[1].back() == Point2{15.2, 1});
  CHECK(length_of(bent.outline_m) == doctest::Approx(2 * pi * 0.2).epsilon(0.001));
  // True scale: at 50 mm to the metre the crown is 15 mm to the right of the foot, 85 mm above it.
  const Marks marks = deflection_marks(bent, {50, {0, 0}});
  const auto& steps = std::get<PathMark>(marks[bent.outline_m.size()].shape).steps;
  CHECK(steps.back().to.x - steps.front().to.x == doctest::Approx(15));
  CHECK(steps.back().to.y - steps.front().to.y == doctest::Approx(-85));
  CHECK(deflection_of(10, piece, {}, {}).frame_m.empty());
}

}  // namespace quadrille
