// How much of a piece's spine its balloons hide from the audience, and where it is bare.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/sized_grid.hpp"

namespace quadrille {

/// Share of the frame that a dressed piece aims to hide. Common practice, no source.
inline constexpr double hidden_aim = 0.85;

struct Stretch {
  double from_m = 0, to_m = 0;  ///< arc lengths along the spine
  bool operator==(const Stretch&) const = default;
};

struct HiddenSpine {
  double share = 1;           ///< hidden length ÷ length, 0 to 1; 1 for a spine without length
  std::vector<Stretch> bare;  ///< what shows, in order
};

/// True where `balloon`, seen along y, covers the point `p` and is in front of it. A balloon is the hull of its sphere
/// and its neck; the taper counts as in front where the sphere's centre is no farther than the point.
inline bool hides(const Balloon& balloon, const Vec3& p) {
  const double radius = balloon.diameter_m / 2;
  const double x = p.x() - balloon.centre.x(), z = p.z() - balloon.centre.z();
  const double distance2 = x * x + z * z, radius2 = radius * radius;
  if (distance2 < radius2) return balloon.centre.y() - std::sqrt(radius2 - distance2) < p.y();
  if (balloon.centre.y() > p.y() + 1e-9) return false;
  const double a = balloon.neck.x() - balloon.centre.x(), b = balloon.neck.z() - balloon.centre.z();
  const double reach2 = a * a + b * b;
  if (reach2 <= radius2) return false;
  // In the taper: between the tangent points and the neck, seen from the neck within the angle of the tangents.
  const double to_neck_x = a - x, to_neck_z = b - z;
  const double along = to_neck_x * a + to_neck_z * b, across = to_neck_x * b - to_neck_z * a;
  const double tangent2 = reach2 - radius2;
  return along > 0 && along <= tangent2 && across * across * tangent2 <= along * along * radius2;
}

/// Seen along y on the elevation, sampled every millimetre of the spine or finer (coarser beyond 100 m), so that
/// `share` is within 1 mm per edge of a bare stretch. The spine needs two points or more; with fewer nothing is bare.
inline HiddenSpine hidden_spine(std::span<const SpinePoint> spine, std::span<const Balloon> balloons) {
  HiddenSpine hidden;
  if (spine.size() < 2 || spine.back().at_m <= 0) return hidden;
  SizedGrid<2> grid;
  for (std::size_t i = 0; i < balloons.size(); ++i) {
    const Balloon& balloon = balloons[i];
    const double reach = std::max(balloon.diameter_m, (balloon.neck - balloon.centre).norm());
    if (reach > 0) grid.add(i, {balloon.centre.x(), balloon.centre.z()}, reach);
  }
  const auto is_hidden = [&](const Vec3& p) {
    return grid.any_near({p.x(), p.z()}, [&](std::size_t i) { return hides(balloons[i], p); });
  };

  const double length = spine.back().at_m;
  const auto samples = static_cast<std::size_t>(std::clamp(std::ceil(length / 0.001), 1.0, 100'000.0));
  std::size_t segment = 0, seen = 0;
  for (std::size_t i = 0; i < samples; ++i) {
    const double at = (static_cast<double>(i) + 0.5) / static_cast<double>(samples) * length;
    while (segment + 2 < spine.size() && spine[segment + 1].at_m < at) ++segment;
    const SpinePoint &from = spine[segment], &to = spine[segment + 1];
    const double share = to.at_m > from.at_m ? (at - from.at_m) / (to.at_m - from.at_m) : 0;
    if (is_hidden(from.point + share * (to.point - from.point))) continue;
    ++seen;
    const double start = static_cast<double>(i) / static_cast<double>(samples) * length;
    const double end = static_cast<double>(i + 1) / static_cast<double>(samples) * length;
    if (!hidden.bare.empty() && start - hidden.bare.back().to_m < 1e-9)
      hidden.bare.back().to_m = end;
    else
      hidden.bare.push_back({start, end});
  }
  hidden.share = 1 - static_cast<double>(seen) / static_cast<double>(samples);
  return hidden;
}

}  // namespace quadrille
