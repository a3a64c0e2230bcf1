#include "studio/model/anchor_place.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

std::string name_of_foot(std::size_t index, std::size_t count) {
  if (count == 1) return "foot";
  if (count == 2) return index == 0 ? "left foot" : "right foot";
  return "foot " + std::to_string(index + 1) + " of " + std::to_string(count);
}

}  // namespace

std::vector<Foot> feet_of(const Piece& piece) {
  std::vector<Foot> feet;
  for (std::size_t i = 0; i < piece.supports.size(); ++i) {
    const Support& support = piece.supports[i];
    if (support.node >= piece.frame.nodes.size()) continue;
    if (support.kind != SupportKind::plate && support.kind != SupportKind::socket) continue;
    feet.push_back({i, "", piece.frame.nodes[support.node]});
  }
  std::ranges::stable_sort(feet, {}, [](const Foot& foot) { return foot.place.x(); });
  for (std::size_t i = 0; i < feet.size(); ++i) feet[i].name = name_of_foot(i, feet.size());
  return feet;
}

AnchorPlace anchor_place(const Piece& piece, double x_m, double y_m) {
  const auto distance = [&](const Foot& foot) { return std::hypot(x_m - foot.place.x(), y_m - foot.place.y()); };
  const std::vector<Foot> feet = feet_of(piece);
  const Foot* nearest = nullptr;
  for (const Foot& foot : feet)
    if (nearest == nullptr || distance(foot) < distance(*nearest) - 1e-9) nearest = &foot;
  if (nearest == nullptr) return {"", x_m, y_m};
  return {nearest->name, x_m - nearest->place.x(), y_m - nearest->place.y()};
}

}  // namespace quadrille
