#include "studio/arrange/selection.hpp"

#include <algorithm>
#include <utility>

#include "studio/model/edits.hpp"
#include "studio/model/step_subject.hpp"

namespace quadrille {

Grasp grasp(const Event& event, const PieceIds& pieces) {
  Grasp held;
  for (const std::string& id : pieces)
    if (const PlacedPiece* piece = find_piece(event, id)) (piece->locked ? held.locked : held.free).push_back(id);
  return held;
}

std::string step_name(std::string_view verb, const Event& event, const PieceIds& pieces) {
  return std::string(verb) + " " + step_subject(event, pieces);
}

std::string left_out_words(const Event& event, const PieceIds& locked) {
  if (locked.empty()) return {};
  if (locked.size() > 1) return std::to_string(locked.size()) + " locked pieces were left out.";
  const PlacedPiece* piece = find_piece(event, locked.front());
  return (piece == nullptr || piece->name.empty() ? std::string("A piece") : piece->name) +
         " is locked and was left out.";
}

PieceIds hidden_in(const Area& area) {
  PieceIds hidden;
  for (const auto& piece : area.pieces)
    if (piece->hidden) hidden.push_back(piece->id);
  return hidden;
}

Event renamed_all(Event event, const PieceIds& pieces, const std::string& name) {
  if (pieces.size() == 1) return renamed(std::move(event), pieces.front(), name);
  PieceIds from_left = pieces;
  std::erase_if(from_left, [&](const std::string& id) { return find_piece(event, id) == nullptr; });
  std::ranges::stable_sort(from_left, {}, [&](const std::string& id) { return find_piece(event, id)->x_m; });
  // Their present names must not be in the way of the new ones.
  for (const std::string& id : from_left) event = renamed(std::move(event), id, {});
  for (const std::string& id : from_left) {
    std::string free = free_name(event, name);
    event = renamed(std::move(event), id, std::move(free));
  }
  return event;
}

}  // namespace quadrille
