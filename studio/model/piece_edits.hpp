// Edits of one or several pieces beyond the simplest, which are in edits.hpp. As there, an id that is not in the event
// changes nothing.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// Ids of pieces, each once.
using PieceIds = std::vector<std::string>;

/// `name` where no piece bears it, else with the least free number from 2 behind it: "Column 2". A number that it ends in
/// counts on: "Column 2" becomes "Column 3".
std::string free_name(const Event& event, std::string_view name);

/// The area in which the piece stands, or null.
const Area* area_of(const Event& event, std::string_view piece_id);

Event without_pieces(Event event, const PieceIds& pieces);
/// Moves all of them by the same way [m], locked ones too.
Event moved_by(Event event, const PieceIds& pieces, double right_m, double back_m);
Event with_values(Event event, const PieceIds& pieces, const std::string& key, const Value& value);
/// Back to the default.
Event without_values(Event event, const PieceIds& pieces, std::string_view key);
/// Makes the change that a finding proposes.
Event with_change(Event event, const ValueChange& change);
Event with_colours(Event event, const PieceIds& pieces, std::size_t slot, const ColourReference& colour);
Event with_lock(Event event, const PieceIds& pieces, bool locked);
Event with_hidden(Event event, const PieceIds& pieces, bool hidden);
Event with_note(Event event, std::string_view piece_id, std::string note);
/// The decorator's own price, 0 or more; nothing: as it is reckoned.
Event with_price(Event event, std::string_view piece_id, std::optional<std::int64_t> price_minor);
/// Another type: values whose keys it does not have wait in the piece until they are removed.
Event with_type(Event event, std::string_view piece_id, std::string type);
/// To another area, in front of its pieces, at the same x and y. Lines to structures go along; where they end must then be
/// chosen anew.
Event in_area(Event event, std::string_view piece_id, std::string_view area_id);

Event with_line(Event event, std::string_view piece_id, SecuringLine line);
/// `index` in the piece's lines; beyond them nothing changes.
Event with_changed_line(Event event, std::string_view piece_id, std::size_t index, SecuringLine line);
Event without_line(Event event, std::string_view piece_id, std::size_t index);
Event with_lines(Event event, std::string_view piece_id, std::vector<SecuringLine> lines);

}  // namespace quadrille
