// Mirror images of pieces, left for right.
#pragma once

#include "studio/arrange/piece_box.hpp"
#include "studio/model/parameter.hpp"
#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// The values of the mirror image of a piece that has `values`, as far as its table tells: a path's points go to the other
/// side of its place; a choice that offers both "left" and "right" (or "left-…" and "right-…") changes to the other, where
/// it matters; rows of slot letters run the other way round the rod, the first place staying. What no table can tell, such
/// as the end of an arch from which stripes are counted, stays. What then stands at its default is left out.
ValueMap mirrored_values(const ParameterTable& table, const ValueMap& values);

/// Puts each of `pieces` to the other side of the line x = `axis_m` of its area and turns it into its mirror image, lines
/// and anchors too: a stake goes to the other side, a line to a structure still ends there. A line goes on from the tie
/// point that lies where the mirror image of its own does. Locked pieces stay. A type without a table in `tables` only
/// changes its place. Mirroring twice about the same axis gives the same event, up to rounding of the places and up to
/// values that stood in the piece although they are the default.
Event mirrored(Event event, const PieceIds& pieces, double axis_m, const ParameterTables& tables,
               const BuiltEvent& built);

/// As mirrored, each about the middle of its own box, so that it turns where it stands.
Event mirrored_in_place(Event event, const PieceIds& pieces, const ParameterTables& tables, const BuiltEvent& built);

/// The middle of the room that the pieces take along the front line; nothing where there are none.
std::optional<double> middle_of(const Event& event, const PieceIds& pieces, const BuiltEvent& built);

}  // namespace quadrille
