#include "studio/arrange/depth_order.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "studio/model/edit_parts.hpp"

namespace quadrille {
namespace {

constexpr double same_depth_m = 1e-6;

std::vector<Shared<PlacedPiece>> sorted_pieces(const Area& area) {
  std::vector<Shared<PlacedPiece>> pieces = area.pieces;
  // Depths to the micrometre, so that the last bits of a sum order nothing.
  std::ranges::stable_sort(pieces, [](const auto& a, const auto& b) {
    return std::round(a->y_m / same_depth_m) > std::round(b->y_m / same_depth_m);
  });
  return pieces;
}

/// Puts the piece right before (or behind) the one it passes, at that one's depth.
void put_past(Event& event, std::string_view piece_id, std::string_view passed, bool to_front) {
  const double depth = find_piece(event, passed)->y_m;
  edit_piece(event, piece_id, [&](PlacedPiece& piece) { piece.y_m = depth; });
  edit_area(event, area_of(event, piece_id)->id, [&](Area& changed) {
    auto& pieces = changed.pieces;
    const auto place_of = [&](std::string_view id) {
      return std::ranges::find_if(pieces, [&](const auto& piece) { return piece->id == id; });
    };
    const auto mine = place_of(piece_id);
    const Shared<PlacedPiece> piece = *mine;
    pieces.erase(mine);
    pieces.insert(place_of(passed) + (to_front ? 1 : 0), piece);
  });
}

bool is_one_of(const PieceIds& pieces, std::string_view id) { return std::ranges::find(pieces, id) != pieces.end(); }

/// The piece that `id` passes; empty where it passes none. `order` runs from the piece's side of the area to the other.
std::string passed_by(const Event& event, PieceIds order, std::string_view id, const PieceIds& pieces, bool one) {
  std::erase_if(order, [&](const std::string& other) { return other != id && find_piece(event, other)->hidden; });
  const auto before = std::ranges::find(order, id);
  if (one) return before + 1 == order.end() || is_one_of(pieces, *(before + 1)) ? std::string() : *(before + 1);
  const auto last = std::find_if(order.rbegin(), std::make_reverse_iterator(before + 1),
                                 [&](const std::string& other) { return !is_one_of(pieces, other); });
  return last == std::make_reverse_iterator(before + 1) ? std::string() : *last;
}

}  // namespace

PieceIds back_to_front(const Area& area) {
  PieceIds ids;
  for (const auto& piece : sorted_pieces(area)) ids.push_back(piece->id);
  return ids;
}

Event in_depth(Event event, std::string_view piece_id, DepthStep step) {
  return in_depth(std::move(event), PieceIds{std::string(piece_id)}, step);
}

Event in_depth(Event event, const PieceIds& pieces, DepthStep step) {
  const bool to_front = step == DepthStep::to_front || step == DepthStep::forward;
  const bool one = step == DepthStep::forward || step == DepthStep::backward;
  const Event before = event;
  for (const auto& area : before.areas) {
    PieceIds going = back_to_front(*area);
    std::erase_if(going,
                  [&](const std::string& id) { return !is_one_of(pieces, id) || find_piece(event, id)->locked; });
    // The one that goes ahead goes first, so that each makes room for the next and all keep their order.
    if (to_front) std::ranges::reverse(going);
    for (const std::string& id : going) {
      PieceIds order = back_to_front(*area_of(event, id));
      if (!to_front) std::ranges::reverse(order);
      const std::string passed = passed_by(event, std::move(order), id, going, one);
      if (!passed.empty()) put_past(event, id, passed, to_front);
    }
  }
  return event;
}

}  // namespace quadrille
