// Lining pieces up: edges, centres, depths; equal gaps and equal steps.
#pragma once

#include "sdk/result.hpp"
#include "studio/arrange/piece_box.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

enum class Alignment {
  left,        ///< left edges at that of the leftmost
  centre,      ///< middles at the middle between the outermost edges
  right,       ///< right edges at that of the rightmost
  front,       ///< places at the depth of the frontmost
  back,        ///< places at the depth of the one farthest back
  front_line,  ///< places on the area's front line
};

/// Lines the pieces up, each area by itself. Locked pieces stay where they are; the others come to them as to any.
Event aligned(Event event, const PieceIds& pieces, const BuiltEvent& built, Alignment alignment);

enum class Spacing {
  gaps,     ///< the same room between neighbours, which is below 0 where they overlap
  centres,  ///< the same step from middle to middle
};
enum class FloorAxis { along, depth };

/// Spreads three pieces or more of one area evenly between the outermost two, which stay. Fails with a sentence where
/// there are fewer, they stand in several areas, or one that would have to move is locked.
Result<Event> distributed(const Event& event, const PieceIds& pieces, const BuiltEvent& built, Spacing spacing,
                          FloorAxis axis = FloorAxis::along);

}  // namespace quadrille
