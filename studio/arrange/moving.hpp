// Moving pieces along the floor, one or several as a body.
#pragma once

#include "studio/arrange/piece_box.hpp"
#include "studio/arrange/snapping.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// Those of `pieces` that may be moved: in the event and not locked.
PieceIds movable(const Event& event, const PieceIds& pieces);

struct Moved {
  Event event;
  double right_m = 0, back_m = 0;  ///< how far they went
  std::vector<Guide> guides;       ///< what they came to lie against
};

/// Moves the movable ones of `pieces` as one body by `way` from where they stand in `event`, which is the event as it was
/// when the drag began, and to what lies near in the area of the first of them. Pieces of other areas go the same way.
Moved dragged(const Event& event, const PieceIds& pieces, const BuiltEvent& built, const Way& way,
              const SnapRules& rules);

}  // namespace quadrille
