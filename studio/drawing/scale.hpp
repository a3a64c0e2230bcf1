// Drawing scales and the bar that shows them.
#pragma once

#include <string>

#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// The first of a series at which `width_m` × `height_m` fits into `width_mm` × `height_mm`. Metric: 1:10, 15, 20, 25,
/// 30, 40, 50, 75, 100 and so on by tens: the reduction scales of ISO 5455 (from memory) with steps between them that
/// figures are easily reckoned at. Feet: 1 1/2", 1", 3/4", 1/2", 3/8", 1/4", 3/16", 1/8", 3/32", 1/16" to the foot, then
/// 1" to 20', 30', 40', 50', 60' and by tens (the architect's and engineer's scale rulers, common practice, no source).
/// Sizes are above 0 and finite.
double fitting_scale(double width_m, double height_m, double width_mm, double height_mm, Units units);

/// How a scale is written: "1:25", or `1/2" = 1'  (1:24)`.
std::string print_scale(double scale, Units units);

/// A bar of 1, 2, 5, 10… m (or of 5, 10, 25… ft) as long as is handy, its left end at `corner`, alternately filled,
/// with figures beneath. Its parts, the outline first, bear Part::scale_bar. It is at most `most_mm` long, which is 40
/// at least: where 1 m (5 ft) would be longer, it is of 0.5, 0.2 or 0.1 m (2 or 1 ft).
struct ScaleBar {
  double length_m = 0;  ///< of the whole bar
  double length_mm = 0;
  Marks marks;
};
ScaleBar scale_bar(double scale, Units units, Point2 corner, double most_mm);

/// Height that a scale bar takes with its figures [mm].
inline constexpr double scale_bar_height = 6.4;

}  // namespace quadrille
