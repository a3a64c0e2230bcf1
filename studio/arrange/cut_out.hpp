// What copy takes along and paste puts in, within an event and between two.
#pragma once

#include <optional>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/site_object.hpp"

namespace quadrille {

/// Pieces out of an event, with what they name outside themselves.
struct CutOut {
  std::vector<PlacedPiece> pieces;    ///< in their order; ids as they were
  std::vector<Structure> structures;  ///< that their lines are tied to
  std::vector<std::string> palettes;  ///< keys of the palettes that their colours are of
  std::string currency;               ///< of their prices
  bool operator==(const CutOut&) const = default;
};

/// Those of `pieces` that are in the event.
CutOut cut_out(const Event& event, const PieceIds& pieces);

/// The cut-out as a small event of one area, which holds the pieces and the structures, so that it can be written and read
/// like any other; `units` are those it is shown in. It reads back by event_cut_out.
Event event_of(const CutOut& cut, Units units);
/// All pieces of the event, of every area.
CutOut event_cut_out(const Event& event);

/// A place on the floor of an area, or a way from one to another [m].
using FloorPlace = SitePlace;

/// The middle of the places of the pieces, of which there is one at least.
FloorPlace middle_of(const CutOut& cut);

struct Pasted {
  Event event;
  PieceIds ids;       ///< of the new pieces, in the order of the cut-out
  Findings findings;  ///< what could not come along
};

/// Puts the pieces into the area, in front of the others, with ids that nothing bears and names of their own; neither
/// locked nor hidden. The middle of their places comes to `where`; without it they stand where they stood, or a step of
/// 0.3 m aside where a piece stands at just that place. The event draws from their palettes from then on.
/// - A line to a structure is kept where the area has that very structure. Elsewhere the structure is not: a tree does not
///   come along, and what would hold instead nobody knows. The line is left out, with a warning "line-left-out".
/// - A price of another currency is left out, with a note "price-left-out".
/// An area that is not there leaves the event as it is.
Pasted with_pasted(const Event& event, std::string_view area_id, const CutOut& cut,
                   std::optional<FloorPlace> where = std::nullopt);

}  // namespace quadrille
