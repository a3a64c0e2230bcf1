// Where something is along a piece's spine, and to which side of it.
#pragma once

#include <string>

#include "sdk/built.hpp"

namespace quadrille {

/// A place along the spine, and how far a point lies off it.
struct SpinePlace {
  double at_m = 0;    ///< arc length of the nearest place of the spine
  double off_m = 0;   ///< aside of it in the elevation: upwards where the spine runs to the right
  double away_m = 0;  ///< behind it, seen from the front
  Vec3 place = Vec3::Zero();
  Vec3 tangent = Vec3::UnitX();  ///< unit
  bool beyond = false;           ///< the point lies past the end of the spine
};

/// The place of the spine nearest to `point`; with `within_m` above 0 only within so much of `near_m` along it, so that a
/// spine that comes back on itself is not left for its other strand. A piece without two spine points has the place 0.
SpinePlace place_along(const Piece& piece, const Vec3& point, double near_m = 0, double within_m = 0);

/// On which side of the spine that is, in words: "front", "above", "behind left", "on top" past the end of one that rises.
std::string print_side(const SpinePlace& place);

/// The same once the spine is drawn straight from left to right: "front", "above", "front below", "behind".
std::string print_straight_side(const SpinePlace& place);

/// Length of the spine [m], to its last point; 0 where it has none.
double spine_length_m(const Piece& piece);

/// The point of the spine at an arc length, drawn to its ends; the origin where there is none.
Vec3 spine_point(const Piece& piece, double at_m);

}  // namespace quadrille
