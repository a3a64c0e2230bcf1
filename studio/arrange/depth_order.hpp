// Which piece stands before which.
#pragma once

#include "studio/model/piece_edits.hpp"

namespace quadrille {

enum class DepthStep { to_front, forward, backward, to_back };

/// The pieces of `area` from back to front: by the depth of their places, and at one depth by their order in the area.
PieceIds back_to_front(const Area& area);

/// Puts the piece before or behind others of its area: past the next one that shows, or past all. What the eye sees in
/// front must stand in front, so a piece that changes places with one at another depth takes that one's depth; at the same
/// depth only the order changes. A locked piece, and one that has nothing left to pass, stays.
Event in_depth(Event event, std::string_view piece_id, DepthStep step);

/// The same for several: they pass what is not one of them and stay in their order among themselves. Those of them that
/// have nothing left to pass stay, as do locked ones.
Event in_depth(Event event, const PieceIds& pieces, DepthStep step);

}  // namespace quadrille
