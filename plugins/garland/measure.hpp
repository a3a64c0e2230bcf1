// What a packed garland measures: thickness along it, how much of the line shows, gaps, overlaps, and whether all holds.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

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

/// Thickness [m] at `stations` places spread evenly along the line: across it in the elevation, over the balloons within
/// half a thickness to either side.
std::vector<double> thickness_along(const std::vector<Ball>& balls, const Request& request, const Curve& line,
                                    int stations);

/// How far a point lies to the side of the line at arc length `at`, in the elevation: up positive where the line runs to
/// the right [m].
double side_of_line(const Vec3& point, const Curve& line, double at);

/// A place where the garland reaches less far to one side (+1 up, −1 down) than 97 % of what is asked.
struct Shortfall {
  double at = 0;
  double side = 1;
};
std::vector<Shortfall> shortfalls(const std::vector<Ball>& balls, const Request& request, const Curve& line);

/// Diameter [m] of the largest disc of background that is seen within the inner 60 % of the garland.
double largest_gap(const std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
