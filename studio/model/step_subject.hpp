// What the names of steps call the pieces that they change.
#pragma once

#include <string>

#include "studio/model/piece_edits.hpp"

namespace quadrille {

/// "Door arch" of one piece, "piece" where it has no name; "3 pieces" of several. Ids that are not in the event do not
/// count.
inline std::string step_subject(const Event& event, const PieceIds& pieces) {
  const PlacedPiece* last = nullptr;
  std::size_t count = 0;
  for (const std::string& id : pieces)
    if (const PlacedPiece* piece = find_piece(event, id)) last = piece, ++count;
  if (count != 1) return std::to_string(count) + " pieces";
  return last->name.empty() ? "piece" : last->name;
}

}  // namespace quadrille
