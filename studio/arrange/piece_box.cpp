#include "studio/arrange/piece_box.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {

const BuiltPiece* standing_build(const PlacedPiece& piece, const BuiltEvent& built) {
  const auto found = built.find(piece.id);
  if (found == built.end() || found->second == nullptr || found->second->status != Status::ok) return nullptr;
  return found->second.get();
}

PieceBox box_of(const PlacedPiece& piece, const BuiltEvent& built) {
  const double x = piece.x_m, y = piece.y_m;
  if (const BuiltPiece* made = standing_build(piece, built)) {
    const Vec3 &least = made->box.least, &most = made->box.most;
    return {x + least.x(), x + most.x(), y + least.y(), y + most.y(), std::min(0.0, least.z()), most.z()};
  }
  const auto& last = piece.last_built;
  const bool known = last && last->width_m > 0 && last->height_m > 0;
  const double width = known ? last->width_m : 1, height = known ? last->height_m : 1;
  const double depth = known ? last->depth_m : 1;
  return {x - width / 2, x + width / 2, y - depth / 2, y + depth / 2, 0, height};
}

std::optional<PieceBox> box_around(std::span<const PieceBox> boxes) {
  if (boxes.empty()) return std::nullopt;
  PieceBox all = boxes.front();
  for (const PieceBox& box : boxes) {
    all.left = std::min(all.left, box.left), all.right = std::max(all.right, box.right);
    all.front = std::min(all.front, box.front), all.back = std::max(all.back, box.back);
    all.floor = std::min(all.floor, box.floor), all.top = std::max(all.top, box.top);
  }
  return all;
}

double tidy(double metres) {
  constexpr double steps = 1e10;
  return std::abs(metres) < 1e5 ? std::nearbyint(metres * steps) / steps : metres;
}

}  // namespace quadrille
