#include "studio/arrange/selecting.hpp"

#include <algorithm>

#include "studio/arrange/picking.hpp"

namespace quadrille {
namespace {

bool is_in(const PieceIds& pieces, const std::string& id) { return std::ranges::find(pieces, id) != pieces.end(); }

}  // namespace

PieceIds pressed(const PieceIds& selected, const PieceIds& under, bool adds) {
  if (under.empty()) return selected;
  if (adds) return with_more(selected, {under.front()});
  const bool holds = std::ranges::any_of(under, [&](const std::string& id) { return is_in(selected, id); });
  return holds ? selected : PieceIds{under.front()};
}

PieceIds clicked(const PieceIds& before, const PieceIds& under, bool adds, bool again) {
  if (under.empty()) return adds ? before : PieceIds{};
  if (adds) {
    PieceIds left = before;
    if (std::erase(left, under.front()) == 0) left.push_back(under.front());
    return left;
  }
  if (again && before.size() == 1) return {next_under(under, before.front())};
  return {under.front()};
}

PieceIds with_more(PieceIds selected, const PieceIds& more) {
  for (const std::string& id : more)
    if (!is_in(selected, id)) selected.push_back(id);
  return selected;
}

PieceIds shown_pieces(const Area& area) {
  std::vector<const PlacedPiece*> standing;
  for (const auto& piece : area.pieces)
    if (!piece->hidden) standing.push_back(&*piece);
  std::ranges::stable_sort(standing, [](const PlacedPiece* a, const PlacedPiece* b) {
    return a->x_m != b->x_m ? a->x_m < b->x_m : a->y_m < b->y_m;
  });
  PieceIds ids;
  for (const PlacedPiece* piece : standing) ids.push_back(piece->id);
  return ids;
}

std::string piece_beside(const Area& area, const PieceIds& selected, int by) {
  const PieceIds all = shown_pieces(area);
  if (all.empty() || by == 0) return {};
  const auto at = selected.empty() ? all.end() : std::ranges::find(all, selected.back());
  if (at == all.end()) return by > 0 ? all.front() : all.back();
  const auto next = at - all.begin() + by;
  return next < 0 || next >= std::ssize(all) ? std::string() : all[static_cast<std::size_t>(next)];
}

}  // namespace quadrille
