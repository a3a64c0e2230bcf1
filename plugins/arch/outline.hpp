// The line of an arch's frame in the elevation, for every kind of frame, by arc length from the left foot.
#pragma once

#include <functional>
#include <vector>

#include "plugins/arch/elastica.hpp"
#include "sdk/built.hpp"

namespace quadrille::arch {

struct Station {
  Vec3 point = Vec3::Zero();
  Vec3 tangent = Vec3::UnitZ();  ///< unit
};

/// A stretch where the frame turns too sharply for clusters to follow each other round it at their usual spacing.
struct Corner {
  double from_m = 0, to_m = 0;  ///< equal for a sharp corner
  double radius_m = 0;
};

/// From (−span/2, 0, 0) to (span/2, 0, 0) in the plane y = 0; lengths in metres. Arc lengths (length_m and those of the corners)
/// are rounded to the nanometre, so that what is laid out by them is the same on every machine.
struct Outline {
  double length_m = 0;
  std::function<Station(double at_m)> at;  ///< 0 to length_m
  std::vector<Corner> corners;
  double height_m = 0, widest_m = 0;
};

/// A rod of `length_m` bent as `elastica`.
Outline bent_rod(const Elastica& elastica, double length_m);
/// Half a circle on uprights of equal length where height_m > span_m/2. height_m is at least span_m/2.
Outline half_circle(double span_m, double height_m);
/// Half an ellipse standing on its axis.
Outline half_ellipse(double span_m, double height_m);
/// Two uprights and a beam; corner_m is the radius of the corners, 0 for sharp ones, at most span_m/2 and height_m.
Outline square(double span_m, double height_m, double corner_m);

}  // namespace quadrille::arch
