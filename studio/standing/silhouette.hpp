// What the wind sees of a piece: the outline of its balloons, each place counted once, and the frame that shows.
#pragma once

#include <limits>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// Areas [m²] square to one way of the wind.
struct Silhouette {
  /// Of each balloon, in the piece's order: the part of the outline that lies in its disc and in no other's power cell.
  /// Without a bound on sheltering they add up to the outline's area exactly, whatever stands before what.
  std::vector<double> balloons_m2;
  /// Length [m] of each member of the frame that shows outside the balloons' outline, measured along the member.
  std::vector<double> bare_m;
  /// Balloons, and the bare frame by its diameters; bare members are not set off against each other.
  double total_m2 = 0;
};

/// `direction_deg` as in wind_way(); the wind is level. Balloons count as spheres. Exact up to rounding for the balloons.
/// What lies farther apart along the wind than `shelter_m` does not hide each other: the far leg of an arch blown at from
/// the side is seen beside the near one. Without a bound it is the outline of all.
Silhouette silhouette(const Piece& piece, double direction_deg,
                      double shelter_m = std::numeric_limits<double>::infinity());

/// A disc in the plane square to the wind [m].
struct WindDisc {
  double x = 0, y = 0, radius = 0;
  double depth = 0;  ///< along the wind
};

/// The share of each disc in the area [m²] of the union of all: the union is cut along the discs' power diagram
/// (F. Aurenhammer, "Power diagrams", 1987, from memory), in which each point belongs to the disc of least power. Discs of
/// radius 0 have no share; of equal discs the first has it all. A disc is cut only by those within `shelter_m` of its depth.
std::vector<double> union_shares(const std::vector<WindDisc>& discs,
                                 double shelter_m = std::numeric_limits<double>::infinity());

}  // namespace quadrille
