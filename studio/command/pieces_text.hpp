// Piece types as text for people and as JSON.
#pragma once

#include <iosfwd>

#include "studio/command/json.hpp"
#include "studio/host/piece_type.hpp"

namespace quadrille {

/// Every type with its whole parameter table, then every refused file with its reason.
Json json_of(const PieceTypes& types);
void print_text(const PieceTypes& types, std::ostream& out);

}  // namespace quadrille
