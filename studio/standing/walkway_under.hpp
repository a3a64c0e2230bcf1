// What a line runs into: walkways that it crosses too low, and structures.
#pragma once

#include <string>

#include "sdk/vec.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// The walkway of the area that a line from `from` to `to` (in the piece's frame) crosses lower than `headroom_m`, or that
/// its anchor stands in; null where there is none.
const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m);

/// The structure of the area that a line from `from` to `to` (in the piece's frame) runs through; null where there is none.
/// Looked at are those whose width or depth is known; not beams, which leave the way below free, nor the one with the id
/// `but`, at which the line ends, nor one in which it begins, as in a doorway.
const Structure* structure_in_way(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                                  const std::string& but);

}  // namespace quadrille
