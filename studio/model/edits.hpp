// Edits: each takes an event and returns the changed one. An id that is not there leaves the event as it is.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "studio/model/event.hpp"

namespace quadrille {

/// An id that no area, piece, structure or walkway bears: `stem` followed by the least free number, "p7".
std::string free_id(const Event& event, std::string_view stem);

Event with_area(Event event, Area area);
/// Adds `piece` to the area, in front of the others.
Event with_piece(Event event, std::string_view area_id, PlacedPiece piece);
Event without_piece(Event event, std::string_view piece_id);
/// Moves the piece to x, y [m] in its area.
Event moved(Event event, std::string_view piece_id, double x_m, double y_m);
Event with_value(Event event, std::string_view piece_id, const std::string& key, Value value);
/// Back to the parameter's default.
Event without_value(Event event, std::string_view piece_id, std::string_view key);
/// `slot` 0 = A; missing slots before it become empty references.
Event with_colour(Event event, std::string_view piece_id, std::size_t slot, ColourReference colour);
Event renamed(Event event, std::string_view piece_id, std::string name);
Event with_site(Event event, std::string_view area_id, Site site);
/// Says of a line of the safety checklist, by its key, whether it is done.
Event with_tick(Event event, std::string_view key, bool done);
/// Freezes the quote that the client is given, in the place of one that was issued before.
Event with_issued(Event event, IssuedQuote issued);

}  // namespace quadrille
