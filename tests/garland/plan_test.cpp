// The plan of a garland, and taking out fillers of which there are too many.
#include "plugins/garland/plan.hpp"

#include <doctest/doctest.h>

#include <numeric>

#include "plugins/garland/surplus.hpp"

using namespace quadrille;
using namespace quadrille::garland;

namespace {

Request level_line() {
  Request request;
  request.points = {{0, 0, 2}, {4, 0, 2}};
  request.mix = {{16, 0.33, 0.12}, {11, 0.24, 0.36}, {5, 0.10, 0.52}};
  request.filler = 0.5;
  request.thickness = request.thickness_end = 0.68;
  return request;
}

Ball at(const Vec3& centre, double radius, std::size_t size, std::uint32_t cluster, const Curve& line) {
  Ball ball;
  ball.centre = centre;
  ball.neck = Vec3(centre.x(), 0, 2);
  ball.radius = radius;
  ball.size = size;
  ball.cluster = cluster;
  ball.at = ball.along = centre.x();
  ball.off = centre.z() - line.point(centre.x()).z();
  return ball;
}

}  // namespace

TEST_CASE("how many balloons there are to be does not depend on the seed") {
  Request request = level_line();
  const Curve line = course_of(request);
  const Plan first = plan_of(request, line);
  request.seed = 99;
  const Plan second = plan_of(request, line);
  CHECK(first.counts == second.counts);
  CHECK(std::accumulate(first.counts.begin(), first.counts.end(), 0L) > 60);
}

TEST_CASE("of too many fillers those go on which nothing rests and which carry no outline") {
  const Request request = level_line();
  const Curve line = course_of(request);
  // Two of the core above the line, which touch; then fillers: one on both, one on that and on the left, one at the
  // outline that is alone there, and one before the line.
  const std::vector<Ball> balls{at({1, 0, 2.17}, 0.12, 1, 1, line),         at({1.23, 0, 2.17}, 0.12, 1, 1, line),
                                at({1.115, -0.12, 2.17}, 0.05, 2, 0, line), at({1.03, -0.16, 2.17}, 0.05, 2, 0, line),
                                at({1.115, -0.05, 2.28}, 0.05, 2, 0, line), at({1.1, -0.12, 2.04}, 0.05, 2, 0, line)};
  std::vector<Ball> left = balls;
  take_out(left, {0, 0, 1}, request, line);
  REQUIRE(left.size() == 5);
  // The latest that may go is the one that rests on another filler; nothing rests on it.
  CHECK(left[2].centre == balls[2].centre);
  CHECK(left[3].centre == balls[4].centre);

  // With it gone the one below may go too; the others are needed, however many there are too many.
  left = balls;
  take_out(left, {5, 5, 5}, request, line);
  REQUIRE(left.size() == 4);
  CHECK(left[2].centre == balls[4].centre);
  CHECK(left[3].centre == balls[5].centre);

  // Of another size, of which there are not too many, it stays, and so does the one that it rests on.
  std::vector<Ball> resting = balls;
  resting[3].size = 1;
  left = resting;
  take_out(left, {0, 0, 5}, request, line);
  CHECK(left.size() == resting.size());

  left = balls;
  take_out(left, {0, 0, 0}, request, line);
  CHECK(left.size() == balls.size());
}
