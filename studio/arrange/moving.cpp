#include "studio/arrange/moving.hpp"

#include <utility>

#include "studio/model/edits.hpp"

namespace quadrille {

PieceIds movable(const Event& event, const PieceIds& pieces) {
  PieceIds free;
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece != nullptr && !piece->locked) free.push_back(id);
  }
  return free;
}

Moved dragged(const Event& event, const PieceIds& pieces, const BuiltEvent& built, const Way& way,
              const SnapRules& rules) {
  Moved answer{event, 0, 0, {}};
  const PieceIds free = movable(event, pieces);
  if (free.empty()) return answer;
  Snapped snapped = snap(*area_of(event, free.front()), built, free, way, rules, event.units);
  answer.right_m = snapped.way.right_m, answer.back_m = snapped.way.back_m;
  answer.guides = std::move(snapped.guides);
  for (const std::string& id : free) {
    const PlacedPiece& piece = *find_piece(event, id);
    answer.event =
        moved(std::move(answer.event), id, tidy(piece.x_m + answer.right_m), tidy(piece.y_m + answer.back_m));
  }
  return answer;
}

}  // namespace quadrille
