// Which pieces are selected after a press, a click or a key on the elevation. Selections keep the order of picking, the
// piece picked last at the end.
#pragma once

#include <string>

#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// What is selected while the button is down, of which nobody knows yet whether it clicks or drags: what was, where one
/// of `under` (as pieces_under lists them) belongs to it, so that it can be dragged as a whole; else the frontmost alone,
/// or, with `adds`, that one as well. With nothing under the pointer what was.
PieceIds pressed(const PieceIds& selected, const PieceIds& under, bool adds);

/// What a click selects where `before` was selected when the button went down: the frontmost; `again`, at the place of the
/// click before, the one below the one that is selected. With `adds` the frontmost is put in or taken out. Nothing lies
/// there: nothing, or with `adds` what was.
PieceIds clicked(const PieceIds& before, const PieceIds& under, bool adds, bool again);

/// `selected` and those of `more` that are not in it.
PieceIds with_more(PieceIds selected, const PieceIds& more);

/// All pieces of the area that show, locked ones too, as they stand from left to right; of two at one place the nearer
/// one first.
PieceIds shown_pieces(const Area& area);

/// The piece `by` places to the right (below 0: to the left) of the one selected last among shown_pieces; from nothing the
/// first, or the last. Empty beyond the ends.
std::string piece_beside(const Area& area, const PieceIds& selected, int by);

}  // namespace quadrille
