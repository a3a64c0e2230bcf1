// The outdoor-safety checklist: what to see to, why, on whose word, and whether it is done.
#pragma once

#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/piece_standing.hpp"

namespace quadrille {

struct ChecklistLine {
  std::string key;     ///< stable; what Event::ticked holds
  std::string area;    ///< id, or empty: of the whole event
  std::string piece;   ///< id, or empty
  std::string text;    ///< what to do
  std::string reason;  ///< why
  std::string source;  ///< on whose word, or "common practice, no source"; ends in planning_aid where a limit is told
  bool done = false;
  bool open = false;  ///< to be decided by whoever plans: what it asks for is drawn nowhere
};

/// For the event as it is: the cautions of the trade where they apply, what each area asks, then what each piece's type
/// asks under the conditions that hold there, its lines and its wind levels. `answers` is of stand_all(); pieces
/// without an answer have no wind levels.
std::vector<ChecklistLine> checklist(const Event& event, const BuiltEvent& built,
                                     const std::vector<PieceStanding>& answers);

/// A sentence for whoever reads a rule that asks for lines to the front and the back where the piece has none of them;
/// empty otherwise.
std::string lines_not_drawn(const AnchoringRule& rule, const PlacedPiece& placed, const Piece& piece);

/// True where the condition of a piece type's rule holds in the area.
bool holds(When when, const Area& area);

}  // namespace quadrille
