#include "plugins/arch/dressing.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/overlap.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

int fit(double length, double spacing) {
  return length <= 0 ? 0 : static_cast<int>(std::floor(length / spacing + 1e-9));
}

void fill(std::vector<double>& stations, double from, int count, double spacing) {
  for (int i = 0; i < count; ++i) stations.push_back(from + (i + 0.5) * spacing);
}

/// How near the centres of two balloons of neighbouring clusters come on the inner side of an arc of this radius: the one
/// at `lean` to the inner direction, the other a half step of the ring farther round, a spacing along the arc.
double nearest_inside(double radius_m, double lean, const DressingPlan& plan) {
  const double ring = plan.ring_radius_m(), step = pi / plan.make.size;
  const double r = radius_m - ring * std::cos(lean), q = radius_m - ring * std::cos(lean - step);
  const double aside = ring * (std::sin(lean) - std::sin(lean - step));
  return std::sqrt(r * r + q * q - 2 * r * q * std::cos(plan.spacing_m() / radius_m) + aside * aside);
}

/// Clusters follow each other round a corner as long as their balloons press no deeper on its inner side than they give,
/// with one or with two of them on the inner side.
bool is_tight(double radius_m, const DressingPlan& plan) {
  if (radius_m <= plan.ring_radius_m()) return true;
  const double step = pi / plan.make.size;
  const double nearest = std::min(nearest_inside(radius_m, 0, plan), nearest_inside(radius_m, step / 2, plan));
  return nearest < (1 - deepest_press) * plan.make.inflated_m * 1.001;
}

/// From the cluster at a corner to the next on either side: the inner balloons, one ring radius off both legs, then lie
/// three quarters of a diameter apart across the corner.
double corner_clearance(const DressingPlan& plan) {
  return std::max(plan.spacing_m(), plan.ring_radius_m() + 0.75 / std::sqrt(2.0) * plan.make.inflated_m);
}

/// The stretch of the frame that may be dressed, and the corners within it at which a cluster sits.
struct Dressable {
  double from_m = 0, to_m = 0;
  std::vector<double> corners;
};

Dressable dressable(const Outline& outline, const DressingPlan& plan) {
  const double reach = corner_clearance(plan) - plan.spacing_m() / 2;
  Dressable found{plan.bare_m, outline.length_m - plan.bare_m, {}};
  for (const Corner& corner : outline.corners) {
    if (!is_tight(corner.radius_m, plan)) continue;
    const double at = to_nanometre((corner.from_m + corner.to_m) / 2);
    // A corner within the bare ends gets no cluster; the dressing begins clear of it all the same.
    if (at < plan.bare_m)
      found.from_m = std::max(found.from_m, at + reach);
    else if (at > outline.length_m - plan.bare_m)
      found.to_m = std::min(found.to_m, at - reach);
    else
      found.corners.push_back(at);
  }
  return found;
}

std::vector<double> round_corners(const Dressable& frame, const DressingPlan& plan) {
  const double spacing = plan.spacing_m(), reach = corner_clearance(plan) - spacing / 2;
  std::vector<double> stations;
  for (std::size_t run = 0; run <= frame.corners.size(); ++run) {
    const bool first = run == 0, last = run == frame.corners.size();
    const double from = first ? frame.from_m : frame.corners[run - 1] + reach;
    const double to = last ? frame.to_m : frame.corners[run] - reach;
    const int count = fit(to - from, spacing);
    const double left_over = to - from - count * spacing;
    fill(stations, from + (first ? left_over : last ? 0 : left_over / 2), count, spacing);
    if (!last) stations.push_back(frame.corners[run]);
  }
  return stations;
}

}  // namespace

std::vector<double> cluster_stations(const Outline& outline, const DressingPlan& plan, int& most) {
  const Dressable frame = dressable(outline, plan);
  const double spacing = plan.spacing_m();
  if (frame.corners.empty()) {
    most = fit(frame.to_m - frame.from_m, spacing);
    const int count = plan.clusters == 0 ? most : std::min(plan.clusters, most);
    std::vector<double> stations;
    fill(stations, (outline.length_m - count * spacing) / 2, count, spacing);
    return stations;
  }
  std::vector<double> stations = round_corners(frame, plan);
  most = static_cast<int>(stations.size());
  if (plan.clusters > 0 && plan.clusters < most) {
    const int dropped = most - plan.clusters;
    stations.erase(stations.end() - dropped / 2, stations.end());
    stations.erase(stations.begin(), stations.begin() + (dropped - dropped / 2));
  }
  return stations;
}

double least_corner_m(const DressingPlan& plan) {
  double radius = up_to_centimetre(plan.ring_radius_m());
  while (is_tight(radius, plan)) radius = up_to_centimetre(radius + 0.01);
  return radius;
}

Dressing dress(const Outline& outline, const DressingPlan& plan) {
  Dressing dressing;
  const std::vector<double> stations = cluster_stations(outline, plan, dressing.most_clusters);
  const auto laid = lay_pattern(plan.pattern, static_cast<int>(stations.size()));
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const Station here = outline.at(stations[i]);
    // At a sharp corner the tangent jumps: the cluster there sits across it.
    const Vec3 axis = (outline.at(stations[i] - 1e-6).tangent + outline.at(stations[i] + 1e-6).tangent).normalized();
    const double turn = laid[i].half_steps * pi / plan.make.size;
    const Cluster cluster{static_cast<std::uint32_t>(i + 1), stations[i], to_nanometre(here.point), to_picounit(axis),
                          turn};
    dressing.clusters.push_back(cluster);
    const auto ring = ring_balloons(cluster, plan.make, laid[i].slots);
    dressing.balloons.insert(dressing.balloons.end(), ring.begin(), ring.end());
  }
  return dressing;
}

}  // namespace quadrille::arch
