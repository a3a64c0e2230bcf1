// Everything around a body that may draw it, as shifts it would have to make.
#pragma once

#include <vector>

#include "studio/arrange/snapping.hpp"

namespace quadrille {

/// One place at which the body would lie against something.
struct SnapTarget {
  double shift_m = 0;  ///< from where the drag would leave it
  Guide guide;
};

/// What the body lies among: the boxes of the others in the area that show.
struct Neighbourhood {
  const Area& area;
  std::vector<const PlacedPiece*> pieces;  ///< the others, those that show
  std::vector<PieceBox> boxes;             ///< theirs, in the same order
  Units units = Units::metric;
};

/// Along x; `body` is where the drag would leave it.
std::vector<SnapTarget> targets_along(const Neighbourhood& around, const PieceBox& body);

/// In depth; `place_m` is the depth of the body's place where the drag would leave it.
std::vector<SnapTarget> targets_in_depth(const Neighbourhood& around, double place_m);

}  // namespace quadrille
