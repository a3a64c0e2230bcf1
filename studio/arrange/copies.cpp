#include "studio/arrange/copies.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/arrange/piece_box.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

constexpr int most_places = 200;

}  // namespace

namespace copies_detail {
int places_of(const Steps& steps) { return std::clamp(steps.count, 1, most_places); }
}  // namespace copies_detail

Copies duplicated(const Event& event, const PieceIds& pieces, double right_m, double back_m) {
  Copies copies{event, {}};
  for (const std::string& id : pieces) {
    const PlacedPiece* piece = find_piece(event, id);
    if (piece == nullptr) continue;
    PlacedPiece copy = *piece;
    copy.id = free_id(copies.event, "p");
    copy.name = free_name(copies.event, piece->name);
    copy.x_m = tidy(piece->x_m + right_m);
    copy.y_m = tidy(piece->y_m + back_m);
    copy.locked = copy.hidden = false;
    copies.ids.push_back(copy.id);
    copies.event = with_piece(std::move(copies.event), area_of(event, id)->id, std::move(copy));
  }
  return copies;
}

Steps steps_of(int count, double spacing_m) {
  const int places = std::clamp(count, 1, most_places);
  return {places, spacing_m * (places - 1)};
}

Steps steps_within(double over_m, double spacing_m) {
  if (!(spacing_m > 0) || !std::isfinite(over_m)) return {};
  // A billionth of a step keeps a length that is a whole number of steps from losing its last one to rounding.
  const double most = std::min(std::floor(std::abs(over_m) / spacing_m + 1e-9), most_places - 1.0);
  return {static_cast<int>(most) + 1, std::copysign(most * spacing_m, over_m)};
}

Copies arrayed(const Event& event, const PieceIds& pieces, const ArrayPlan& plan) {
  return arrayed(event, pieces, plan, [](Event made, const PieceIds&) { return made; });
}

}  // namespace quadrille
