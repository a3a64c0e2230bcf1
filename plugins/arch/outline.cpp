#include "plugins/arch/outline.hpp"

#include <algorithm>
#include <boost/math/policies/policy.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <cmath>
#include <memory>
#include <utility>

#include "sdk/curve.hpp"

namespace quadrille::arch {
namespace {

/// In double throughout: what long double is differs between machines.
using InDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

/// A straight line or an arc in the elevation.
struct Segment {
  double length_m = 0, curvature = 0;  ///< curvature in 1/m, negative = turning clockwise
  double start_m = 0, x = 0, z = 0, heading = 0;
};

Vec3 direction(double heading) { return {std::cos(heading), 0, std::sin(heading)}; }

Station on_segment(const Segment& segment, double along) {
  const double heading = segment.heading + segment.curvature * along;
  Station station{{segment.x, 0, segment.z}, direction(heading)};
  if (segment.curvature == 0)
    station.point += along * station.tangent;
  else
    station.point +=
        Vec3(std::sin(heading) - std::sin(segment.heading), 0, std::cos(segment.heading) - std::cos(heading)) /
        segment.curvature;
  return station;
}

/// Segments one after the other, upward from the left foot; between two straight ones the heading turns right by 90°.
class Chain {
 public:
  explicit Chain(double left_x) : x_(left_x) {}

  void add(double length_m, double curvature) {
    if (length_m <= 0) return;
    segments_.push_back({length_m, curvature, length_m_, x_, z_, heading_});
    const Station end = on_segment(segments_.back(), length_m);
    x_ = end.point.x();
    z_ = end.point.z();
    heading_ += curvature * length_m;
    length_m_ += length_m;
  }
  void turn(double by) { heading_ += by; }
  double length_m() const { return length_m_; }

  Outline outline(std::vector<Corner> corners, double height_m, double widest_m) const {
    const auto at = [segments = segments_](double at_m) {
      const auto after = std::upper_bound(segments.begin() + 1, segments.end(), at_m,
                                          [](double value, const Segment& segment) { return value < segment.start_m; });
      const Segment& segment = *(after - 1);
      return on_segment(segment, std::clamp(at_m - segment.start_m, 0.0, segment.length_m));
    };
    for (Corner& corner : corners) {
      corner.from_m = to_nanometre(corner.from_m);
      corner.to_m = to_nanometre(corner.to_m);
    }
    return {to_nanometre(length_m_), at, std::move(corners), height_m, widest_m};
  }

 private:
  std::vector<Segment> segments_;
  double length_m_ = 0, x_, z_ = 0, heading_ = pi / 2;
};

}  // namespace

Outline bent_rod(const Elastica& elastica, double length_m) {
  const auto at = [elastica, length_m](double at_m) {
    const ArchPoint point = elastica.point(at_m / length_m);
    return Station{length_m * Vec3(point.x, 0, point.z), direction(point.slope)};
  };
  return {length_m, at, {}, elastica.height() * length_m, elastica.widest() * length_m};
}

Outline half_circle(double span_m, double height_m) {
  const double radius = span_m / 2, upright = height_m - radius;
  Chain chain(-radius);
  chain.add(upright, 0);
  chain.add(pi * radius, -1 / radius);
  chain.add(upright, 0);
  return chain.outline({}, height_m, span_m);
}

Outline half_ellipse(double span_m, double height_m) {
  const double a = span_m / 2, b = height_m;
  // Legendre's E measures the arc from the end of the shorter axis: that is the foot where the ellipse is tall.
  const bool tall = b >= a;
  const double longer = std::max(a, b), shorter = std::min(a, b);
  const double k = std::sqrt(std::max(0.0, 1 - (shorter / longer) * (shorter / longer)));
  const double quarter = longer * boost::math::ellint_2(k, InDouble());
  constexpr int steps = 2000;
  std::vector<Vec3> points;
  std::vector<double> stations;
  for (int i = 0; i <= steps; ++i) {
    // `t` runs from 0 at the left foot over π/2 at the crown to π at the right foot.
    const double t = pi * i / steps, up = std::min(t, pi - t);
    const double from_foot = tall ? longer * boost::math::ellint_2(k, up, InDouble())
                                  : quarter - longer * boost::math::ellint_2(k, pi / 2 - up, InDouble());
    const double at = i * 2 <= steps ? from_foot : 2 * quarter - from_foot;
    points.emplace_back(-a * std::cos(t), 0, i == 0 || i == steps ? 0 : b * std::sin(t));
    stations.push_back(at);
  }
  const auto curve = std::make_shared<const Curve>(std::move(points), std::move(stations));
  const auto at = [curve](double at_m) { return Station{curve->point(at_m), curve->tangent(at_m)}; };
  return {to_nanometre(curve->length_m()), at, {}, height_m, span_m};
}

Outline square(double span_m, double height_m, double corner_m) {
  Chain chain(-span_m / 2);
  std::vector<Corner> corners;
  const auto corner = [&] {
    const double from = chain.length_m();
    if (corner_m > 0)
      chain.add(pi / 2 * corner_m, -1 / corner_m);
    else
      chain.turn(-pi / 2);
    corners.push_back({from, chain.length_m(), corner_m});
  };
  chain.add(height_m - corner_m, 0);
  corner();
  chain.add(span_m - 2 * corner_m, 0);
  corner();
  chain.add(height_m - corner_m, 0);
  return chain.outline(std::move(corners), height_m, span_m);
}

}  // namespace quadrille::arch
