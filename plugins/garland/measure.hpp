// What a packed garland measures: thickness along it, how much of the line shows, gaps, overlaps, and whether all holds.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// True where the ball, seen from the front, hides the place and is before it.
bool covers(const Ball& ball, const Vec3& place);

/// A place of the line that no balloon hides from the front.
struct BarePlace {
  double at = 0;  ///< arc length [m]
  Vec3 place = Vec3::Zero();
};
/// Looked for every centimetre or nearer.
std::vector<BarePlace> bare_stations(const std::vector<Ball>& balls, const Curve& line);

/// One balloon as the studio takes it.
Balloon balloon_of(const Ball& ball, const Request& request);

struct Overlaps {
  double deepest_core = 0;  ///< share of the smaller diameter
  double deepest = 0;
  double mean = 0;           ///< over the pairs that touch
  std::size_t touching = 0;  ///< pairs
  std::size_t loose = 0;     ///< fillers that touch fewer than two others
};
Overlaps overlaps_of(const std::vector<Ball>& balls, const Request& request);

/// Unit vector across the line in the elevation, upward where the line runs to the right or in depth.
Vec3 across(const Vec3& tangent);

/// How far a point lies to the side of the line at arc length `at`, in the elevation: up positive where the line runs to
/// the right [m].
double side_of_line(const Vec3& point, const Curve& line, double at);

/// Arc length [m] of the place of the line nearest to a point, looked for from `at` on, `within` to either side.
double nearest_along(const Vec3& point, const Curve& line, double at, double within);

/// Finds where along the line and how far aside a ball lies, from its `at` on.
void locate(Ball& ball, const Curve& line);

/// Thickness [m] at arc lengths `places`: how far the garland's silhouette reaches across the line to both sides in the
/// elevation, within half a thickness to either side along the line, which is what the eye takes for the thickness of
/// something uneven. Where a taper is asked, a balloon counts by what it reaches beyond the outline at its own place.
/// Beyond its ends the line goes on straight, so that a garland ends in a cap.
std::vector<double> thickness_along(const std::vector<Ball>& balls, const Request& request, const Curve& line,
                                    const std::vector<double>& places);

/// A place where the garland reaches less far to one side (+1 up, −1 down) than 97 % of what is asked.
struct Shortfall {
  double at = 0;
  double side = 1;
};
std::vector<Shortfall> shortfalls(const std::vector<Ball>& balls, const Request& request, const Curve& line);

/// Diameter [m] of the largest disc of background that is seen within the inner 60 % of the garland.
double largest_gap(const std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
