// The line of a garland: smooth, straight or hanging.
#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>

#include "plugins/garland/ball.hpp"
#include "sdk/units.hpp"

namespace quadrille::garland {
namespace {

constexpr double step_m = 0.01;

/// Centripetal Catmull-Rom: passes through all points without loops or overshoot between near ones. Square roots only.
Vec3 catmull_rom(const Vec3& a, const Vec3& b, const Vec3& c, const Vec3& d, double share) {
  const auto knot = [](double from, const Vec3& p, const Vec3& q) {
    return from + std::sqrt(std::sqrt((q - p).squaredNorm()));
  };
  const double t0 = 0, t1 = knot(t0, a, b), t2 = knot(t1, b, c), t3 = knot(t2, c, d), t = t1 + share * (t2 - t1);
  const auto between = [t](const Vec3& p, const Vec3& q, double from, double to) {
    return Vec3(((to - t) * p + (t - from) * q) / (to - from));
  };
  const Vec3 ab = between(a, b, t0, t1), bc = between(b, c, t1, t2), cd = between(c, d, t2, t3);
  return between(between(ab, bc, t0, t2), between(bc, cd, t1, t3), t1, t2);
}

/// The polygon of the points in small steps, so that its direction is that of the side everywhere but at the corners.
std::vector<Vec3> straight(const std::vector<Vec3>& points) {
  std::vector<Vec3> line{points.front()};
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Vec3 side = points[i] - points[i - 1];
    const int steps = std::max(1, static_cast<int>(std::ceil(side.norm() / step_m)));
    for (int k = 1; k < steps; ++k) line.push_back(to_nanometre(Vec3(points[i - 1] + side * k / steps)));
    line.push_back(points[i]);
  }
  return line;
}

std::vector<Vec3> smooth(const std::vector<Vec3>& points) {
  if (points.size() == 2) return straight(points);
  const std::size_t last = points.size() - 1;
  // The ends are continued straight on.
  const auto at = [&](std::size_t i, bool before, bool after) -> Vec3 {
    if (before) return 2 * points[0] - points[1];
    if (after) return 2 * points[last] - points[last - 1];
    return points[i];
  };
  std::vector<Vec3> line{points.front()};
  for (std::size_t i = 0; i < last; ++i) {
    const Vec3 a = at(i - 1, i == 0, false), d = at(i + 2, false, i + 2 > last);
    const int steps = std::max(2, static_cast<int>(std::ceil((points[i + 1] - points[i]).norm() / step_m)));
    for (int k = 1; k <= steps; ++k)
      line.push_back(to_nanometre(catmull_rom(a, points[i], points[i + 1], d, static_cast<double>(k) / steps)));
  }
  return line;
}

/// A chain between the ends, `slack` times as long as their distance: z = a cosh(u/a) with the a for which the arc over
/// the horizontal distance l has its length s: √(s² − h²) = 2a sinh(l/2a). Source: the catenary, any handbook of statics.
std::vector<Vec3> hanging(const Vec3& from, const Vec3& to, double slack) {
  const Vec3 along(to.x() - from.x(), to.y() - from.y(), 0);
  const double l = along.norm(), h = to.z() - from.z(), s = slack * (to - from).norm();
  if (l < 1e-3)
    throw Infeasible("course",
                     "A hanging garland needs ends apart from each other along the wall: they lie above each other.");
  const double wanted = std::sqrt(s * s - h * h) / l;  // sinh(x)/x with x = l/2a
  std::uintmax_t rounds = 100;
  const auto miss = [wanted](double x) { return std::sinh(x) / x - wanted; };
  const auto bracket =
      boost::math::tools::toms748_solve(miss, 1e-6, 20.0, boost::math::tools::eps_tolerance<double>(50), rounds);
  const double a = l / (bracket.first + bracket.second);
  // Lowest point at u0 from the first end: h = a (cosh((l−u0)/a) − cosh(u0/a)).
  const double u0 = l / 2 - a * std::asinh(h / (2 * a * std::sinh(l / (2 * a))));
  const int steps = std::max(8, static_cast<int>(std::ceil(s / step_m)));
  std::vector<Vec3> line;
  for (int k = 0; k <= steps; ++k) {
    // Even in arc length: a sinh((u − u0)/a) runs evenly.
    const double start = std::sinh(-u0 / a), end = std::sinh((l - u0) / a);
    const double w = start + (end - start) * k / steps, u = u0 + a * std::asinh(w);
    const double z = from.z() + a * (std::sqrt(1 + w * w) - std::cosh(u0 / a));
    line.push_back(to_nanometre(Vec3(from.x() + along.x() * u / l, from.y() + along.y() * u / l, z)));
  }
  return line;
}

}  // namespace

Curve course_of(const Request& request) {
  const Curve curve(request.hanging    ? hanging(request.points.front(), request.points.back(), request.slack)
                    : request.straight ? straight(request.points)
                                       : smooth(request.points));
  double lowest = 0;
  for (const Vec3& point : curve.points()) lowest = std::min(lowest, point.z());
  if (lowest < 0 && request.hanging)
    throw Infeasible("slack", "The garland would hang " + print_both(-lowest) +
                                  " below the floor: give it less slack or hang its ends higher.");
  if (lowest < 0)
    throw Infeasible("path", "The path runs " + print_both(-lowest) + " below the floor: raise its points.");
  if (curve.length_m() < request.mix.front().inflated_m)
    throw Infeasible("path", "The path is " + print_both(curve.length_m()) +
                                 " long and carries no cluster of balloons of " +
                                 print_both(request.mix.front().inflated_m) + ": make it longer.");
  return curve;
}

}  // namespace quadrille::garland
