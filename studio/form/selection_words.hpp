// What several selected pieces are called, and the state they share.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/step_subject.hpp"

namespace quadrille {

/// Names of piece types by id.
using TypeNames = std::map<std::string, std::string, std::less<>>;

/// "Arch"; "3 arches"; "4 pieces of 2 types". A type without a name goes by its id and is said not to be available. Ids
/// that are not in the event do not count; empty where none is.
std::string selection_heading(const Event& event, const PieceIds& pieces, const TypeNames& types);

/// "arches" of "Arch", "organic garlands" of "Organic garland": in lower case, with the plural's ending.
std::string plural_of(std::string_view name);

/// The names of the pieces, drawn together: "Column 1 to 4 and Gate arch".
std::string selection_names(const Event& event, const PieceIds& pieces);

/// What all of the pieces are, such as &PlacedPiece::locked; nothing where they differ or there is none.
std::optional<bool> shared_flag(const Event& event, const PieceIds& pieces, bool PlacedPiece::*flag);

}  // namespace quadrille
