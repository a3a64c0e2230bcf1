// Which walkway a line crosses too low.
#pragma once

#include "sdk/vec.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// The walkway of the area that a line from `from` to `to` (in the piece's frame) crosses lower than `headroom_m`, or that
/// its anchor stands in; null where there is none.
const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m);

}  // namespace quadrille
