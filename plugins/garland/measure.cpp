#include "plugins/garland/measure.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/core.hpp"
#include "plugins/garland/grid.hpp"
#include "sdk/hidden.hpp"

namespace quadrille::garland {
namespace {

/// The elevation without its depth.
Vec3 flat(const Vec3& p) { return {p.x(), 0, p.z()}; }

Grid elevation_grid(const std::vector<Ball>& balls, const Request& request) {
  Grid grid(request.largest());
  for (std::uint32_t i = 0; i < balls.size(); ++i) grid.insert(flat(balls[i].centre), i);
  return grid;
}

/// Unit vector across the line in the elevation, upward where the line runs to the right; zero where it runs in depth.
Vec3 across(const Vec3& tangent) {
  const Vec3 side(-tangent.z(), 0, tangent.x());
  const double length = side.norm();
  return length > 1e-9 ? Vec3(side / length) : Vec3::Zero();
}

}  // namespace

Balloon balloon_of(const Ball& ball, const Request& request) {
  return {ball.centre, ball.neck,    2 * ball.radius, request.mix[ball.size].nominal_in,
          ball.slot,   ball.cluster, ball.place,      ball.role};
}

std::vector<BarePlace> bare_stations(const std::vector<Ball>& balls, const Curve& line) {
  double largest = 0.01;
  for (const Ball& ball : balls) largest = std::max(largest, 2 * ball.radius);
  Grid grid(largest);
  for (std::uint32_t i = 0; i < balls.size(); ++i) grid.insert(flat(balls[i].centre), i);
  std::vector<BarePlace> bare;
  const int steps = std::max(1, static_cast<int>(std::ceil(line.length_m() / 0.01)));
  for (int i = 0; i < steps; ++i) {
    const double at = line.length_m() * (i + 0.5) / steps;
    const Vec3 place = line.point(at);
    bool hidden = false;
    grid.near(flat(place), [&](std::uint32_t j) {
      if (hidden) return;
      Balloon balloon;
      balloon.centre = balls[j].centre;
      balloon.neck = balls[j].neck;
      balloon.diameter_m = 2 * balls[j].radius;
      hidden = hides(balloon, place);
    });
    if (!hidden) bare.push_back({at, place});
  }
  return bare;
}

Overlaps overlaps_of(const std::vector<Ball>& balls, const Request& request) {
  Overlaps overlaps;
  std::vector<int> touches(balls.size());
  Grid grid(request.largest());
  double total = 0;
  for (std::uint32_t i = 0; i < balls.size(); ++i) {
    grid.near(balls[i].centre, [&](std::uint32_t j) {
      const double depth = press(balls[i], balls[j]);
      if (depth <= 0) return;
      ++touches[i];
      ++touches[j];
      ++overlaps.touching;
      total += depth;
      overlaps.deepest = std::max(overlaps.deepest, depth);
      if (balls[i].cluster != 0 && balls[j].cluster != 0)
        overlaps.deepest_core = std::max(overlaps.deepest_core, depth);
    });
    grid.insert(balls[i].centre, i);
  }
  if (overlaps.touching > 0) overlaps.mean = total / static_cast<double>(overlaps.touching);
  for (std::size_t i = 0; i < balls.size(); ++i)
    if (balls[i].cluster == 0 && touches[i] < 2) ++overlaps.loose;
  return overlaps;
}

namespace {

struct Extent {
  double above = 0, below = 0;
};

/// How far balloons within half a thickness of a place reach to both sides.
Extent extent_at(const std::vector<Ball>& balls, const Grid& grid, const Request& request, const Curve& line,
                 double share) {
  const double at = share * line.length_m(), half_window = request.thickness_at(share) / 2;
  Extent extent;
  grid.near(flat(line.point(at)), [&](std::uint32_t j) {
    const Ball& ball = balls[j];
    if (std::abs(ball.at - at) > half_window) return;
    // Beside its own place on the line: the line may bend within the window.
    const double off = side_of_line(ball.centre, line, ball.at);
    extent.above = std::max(extent.above, off + ball.radius);
    extent.below = std::max(extent.below, ball.radius - off);
  });
  return extent;
}

}  // namespace

double side_of_line(const Vec3& point, const Curve& line, double at) {
  return across(line.tangent(at)).dot(point - line.point(at));
}

std::vector<Shortfall> shortfalls(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  const Grid grid = elevation_grid(balls, request);
  std::vector<Shortfall> found;
  const double mean = (request.thickness + request.thickness_end) / 2;
  const int stations = std::max(2, static_cast<int>(std::ceil(2 * line.length_m() / mean)));
  for (int i = 0; i < stations; ++i) {
    const double share = (i + 0.5) / stations, least = 0.97 * request.thickness_at(share) / 2;
    const Extent extent = extent_at(balls, grid, request, line, share);
    if (extent.above < least) found.push_back({share * line.length_m(), 1});
    if (extent.below < least) found.push_back({share * line.length_m(), -1});
  }
  return found;
}

std::vector<double> thickness_along(const std::vector<Ball>& balls, const Request& request, const Curve& line,
                                    int stations) {
  const Grid grid = elevation_grid(balls, request);
  std::vector<double> measured;
  for (int station = 0; station < stations; ++station) {
    const Extent extent = extent_at(balls, grid, request, line, (station + 0.5) / stations);
    measured.push_back(extent.above + extent.below);
  }
  return measured;
}

double largest_gap(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  const Grid grid = elevation_grid(balls, request);
  double largest = 0;
  const int steps = std::max(1, static_cast<int>(std::ceil(line.length_m() / 0.01)));
  for (int i = 0; i < steps; ++i) {
    const double share = (i + 0.5) / steps;
    const Vec3 place = line.point(share * line.length_m()), side = across(line.tangent(share * line.length_m()));
    for (int lane = -3; lane <= 3; ++lane) {
      const Vec3 seen = flat(Vec3(place + lane / 10.0 * request.thickness_at(share) * side));
      double clear = request.largest();
      grid.near(seen, [&](std::uint32_t j) {
        clear = std::min(clear, (flat(balls[j].centre) - seen).norm() - balls[j].radius);
      });
      largest = std::max(largest, 2 * clear);
    }
  }
  return largest;
}

}  // namespace quadrille::garland
