// To which sides a piece is tied: the third way of securing it outdoors is by lines to its front and to its back.
#pragma once

#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

struct SidesTied {
  bool front = false, back = false, any = false;
};

/// To which sides lines go that hold anything: an anchor right under its tie point, a level run of less than `level_share`
/// of the tie's height, holds to no side; one within 30° of straight sideways holds neither to the front nor to the back.
SidesTied sides_tied(const std::vector<SecuringLine>& lines, const PlacedPiece& placed, const Piece& piece,
                     const Area& area, double level_share);

/// Whether the piece type asks for lines to the front and to the back where it stands outdoors.
bool asks_front_and_back(const Piece& piece);

}  // namespace quadrille
