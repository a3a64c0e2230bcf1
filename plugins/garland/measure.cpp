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

/// Where a ball is in the elevation: along the line and aside of it.
struct Aside {
  double along = 0, off = 0, radius = 0;
};

std::vector<Aside> asides_of(const std::vector<Ball>& balls) {
  std::vector<Aside> asides;
  asides.reserve(balls.size());
  for (const Ball& ball : balls) asides.push_back({ball.along, ball.off, ball.radius});
  std::ranges::stable_sort(asides, {}, &Aside::along);
  return asides;
}

/// How far the garland reaches beyond the asked outline on either side [m], negative where it stays within.
struct Reach {
  double above = 0, below = 0;
};

/// The farthest reach within half a thickness to either side of a place, also of balls that only lean into that stretch;
/// a whole half thickness is lacking where nothing is.
Reach reach_at(const std::vector<Aside>& asides, const Request& request, const Curve& line, double along) {
  const double half = request.thickness_at(along / line.length_m()) / 2, farthest = half + request.largest() / 2;
  Reach reach{-half, -half};
  auto aside = std::ranges::lower_bound(asides, along - farthest, {}, &Aside::along);
  for (; aside != asides.end() && aside->along <= along + farthest; ++aside) {
    const double inside = std::clamp(aside->along, along - half, along + half), outside = aside->along - inside;
    if (std::abs(outside) >= aside->radius) continue;
    const double tall = std::sqrt(aside->radius * aside->radius - outside * outside);
    const double asked = request.thickness_at(std::clamp(inside / line.length_m(), 0.0, 1.0)) / 2;
    reach.above = std::max(reach.above, tall + aside->off - asked);
    reach.below = std::max(reach.below, tall - aside->off - asked);
  }
  return reach;
}

}  // namespace

Balloon balloon_of(const Ball& ball, const Request& request) {
  return {ball.centre, ball.neck,    2 * ball.radius, request.mix[ball.size].nominal_in,
          ball.slot,   ball.cluster, ball.place,      ball.role};
}

bool covers(const Ball& ball, const Vec3& place) {
  Balloon balloon;
  balloon.centre = ball.centre;
  balloon.neck = ball.neck;
  balloon.diameter_m = 2 * ball.radius;
  return hides(balloon, place);
}

std::vector<BarePlace> bare_stations(const std::vector<Ball>& balls, const Curve& line) {
  double largest = 0.01;
  for (const Ball& ball : balls) largest = std::max(largest, 2 * ball.radius);
  Grid grid(largest, balls.size());
  for (std::uint32_t i = 0; i < balls.size(); ++i) grid.insert(flat(balls[i].centre), i);
  std::vector<BarePlace> bare;
  const int steps = std::max(1, static_cast<int>(std::ceil(line.length_m() / 0.01)));
  for (int i = 0; i < steps; ++i) {
    const double at = line.length_m() * (i + 0.5) / steps;
    const Vec3 place = line.point(at);
    if (!grid.near_seen(flat(place), [&](std::uint32_t j) { return covers(balls[j], place); }))
      bare.push_back({at, place});
  }
  return bare;
}

Overlaps overlaps_of(const std::vector<Ball>& balls, const Request& request) {
  Overlaps overlaps;
  std::vector<int> touches(balls.size());
  Grid grid(request.largest(), balls.size());
  double total = 0;
  for (std::uint32_t i = 0; i < balls.size(); ++i) {
    grid.near(balls[i].centre, [&](std::uint32_t j) {
      const double depth = press(balls[i], balls[j]);
      if (depth <= 0) return false;
      ++touches[i];
      ++touches[j];
      ++overlaps.touching;
      total += depth;
      overlaps.deepest = std::max(overlaps.deepest, depth);
      if (balls[i].cluster != 0 && balls[j].cluster != 0)
        overlaps.deepest_core = std::max(overlaps.deepest_core, depth);
      return false;
    });
    grid.insert(balls[i].centre, i);
  }
  if (overlaps.touching > 0) overlaps.mean = total / static_cast<double>(overlaps.touching);
  for (std::size_t i = 0; i < balls.size(); ++i)
    if (balls[i].cluster == 0 && touches[i] < 2) ++overlaps.loose;
  return overlaps;
}

Vec3 across(const Vec3& tangent) {
  const Vec3 side(-tangent.z(), 0, tangent.x());
  const double length = side.norm();
  return length > 1e-9 ? Vec3(side / length) : Vec3::UnitZ();
}

double side_of_line(const Vec3& point, const Curve& line, double at) {
  return across(line.tangent(at)).dot(point - line.point(at));
}

double nearest_along(const Vec3& point, const Curve& line, double at, double within) {
  double along = at;
  // Newton's steps towards where the line stands upright to the way from it; few are needed on gentle bends.
  for (int step = 0; step < 3; ++step) {
    const double before = along;
    along = std::clamp(along + line.tangent(along).dot(point - line.point(along)), std::max(0.0, at - within),
                       std::min(line.length_m(), at + within));
    if (std::abs(along - before) < 1e-4) break;
  }
  return to_nanometre(along);
}

void locate(Ball& ball, const Curve& line) {
  ball.along = nearest_along(ball.centre, line, ball.at, 2 * ball.radius);
  ball.off = side_of_line(ball.centre, line, ball.along);
}

std::vector<Shortfall> shortfalls(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  const std::vector<Aside> asides = asides_of(balls);
  std::vector<Shortfall> found;
  const double mean = (request.thickness + request.thickness_end) / 2;
  const int stations = std::max(20, static_cast<int>(std::ceil(10 * line.length_m() / mean)));
  for (int i = 0; i < stations; ++i) {
    const double along = (i + 0.5) / stations * line.length_m();
    const double allowed = -0.03 * request.thickness_at(along / line.length_m()) / 2;
    const Reach reach = reach_at(asides, request, line, along);
    if (reach.above < allowed) found.push_back({along, 1});
    if (reach.below < allowed) found.push_back({along, -1});
  }
  return found;
}

std::vector<double> thickness_along(const std::vector<Ball>& balls, const Request& request, const Curve& line,
                                    const std::vector<double>& places) {
  const std::vector<Aside> asides = asides_of(balls);
  std::vector<double> measured;
  for (const double along : places) {
    const Reach reach = reach_at(asides, request, line, along);
    measured.push_back(request.thickness_at(along / line.length_m()) + reach.above + reach.below);
  }
  return measured;
}

double largest_gap(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  Grid grid(request.largest(), balls.size());
  for (std::uint32_t i = 0; i < balls.size(); ++i) grid.insert(flat(balls[i].centre), i);
  double largest = 0;
  const int steps = std::max(1, static_cast<int>(std::ceil(line.length_m() / 0.01)));
  for (int i = 0; i < steps; ++i) {
    const double share = (i + 0.5) / steps;
    const Vec3 place = line.point(share * line.length_m()), side = across(line.tangent(share * line.length_m()));
    for (int lane = -3; lane <= 3; ++lane) {
      const Vec3 seen = flat(Vec3(place + lane / 10.0 * request.thickness_at(share) * side));
      double clear = request.largest();
      grid.near_seen(seen, [&](std::uint32_t j) {
        clear = std::min(clear, (flat(balls[j].centre) - seen).norm() - balls[j].radius);
        return clear <= largest / 2;  // no larger than one that was seen
      });
      largest = std::max(largest, 2 * clear);
    }
  }
  return largest;
}

}  // namespace quadrille::garland
