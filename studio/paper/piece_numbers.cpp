#include "studio/paper/piece_numbers.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "studio/drawing/dimension.hpp"
#include "studio/drawing/room.hpp"
#include "studio/paper/piece_groups.hpp"

namespace quadrille {
namespace {

constexpr double ring_height = 4.2, air = 0.7;

/// Each balloon as the square around it, by the piece it belongs to.
struct Covered {
  Rect rect;
  std::size_t piece = 0;
};

std::vector<Covered> covered_by(const Scene& scene, const Placement& at) {
  std::vector<Covered> all;
  for (const SceneItem& item : scene.items)
    if (const auto* b = std::get_if<SceneBalloon>(&item.shape))
      all.push_back({at.rect({b->x_m - b->radius_m, b->x_m + b->radius_m, b->z_m - b->radius_m, b->z_m + b->radius_m}),
                     b->piece});
  return all;
}

/// Finds a place for one ring after the other.
struct Numbering {
  const Scene& scene;
  const PanelPlan& plan;
  std::vector<Rect> taken;
  std::vector<Covered> covered;
  Marks marks = {};

  Rect ring_at(Point2 centre, double half) const {
    return {centre.x - half, centre.y - ring_height / 2, 2 * half, ring_height};
  }
  bool is_within(const Rect& r) const {
    return r.x >= plan.room.x && r.right() <= plan.room.right() && r.y >= plan.room.y &&
           r.bottom() <= plan.placement.origin.y - 0.3;
  }
  bool covers_others(const Rect& r, const PieceGroup& group) const {
    return std::ranges::any_of(covered, [&](const Covered& c) {
      return overlap(c.rect, r) && std::ranges::find(group.pieces, c.piece) == group.pieces.end();
    });
  }

  /// Over the crown, beside the upper half, under what hangs.
  std::vector<Point2> places_around(const ScenePiece& piece, double half) const {
    const Rect r = plan.placement.rect(piece.body());
    const double up = ring_height / 2 + air, crown_left = plan.placement.on_page(piece.crown_left_m, 0).x;
    const double crown_right = plan.placement.on_page(piece.crown_right_m, 0).x;
    std::vector<Point2> places;
    // A sagging garland is as high at both ends, and between these is nothing of it.
    if (crown_right - crown_left < 4 * half) places.push_back({(crown_left + crown_right) / 2, r.y - up});
    for (const double x : {crown_left, crown_right}) places.push_back({x, r.y - up});
    for (const double share : {0.15, 0.35, 0.55})
      for (const double x : {r.x - half - air, r.right() + half + air}) places.push_back({x, r.y + share * r.height});
    if (piece.hangs()) places.push_back({plan.placement.on_page(piece.lowest_x_m, 0).x, r.bottom() + up});
    return places;
  }

  /// On its balloons, spread over the piece, the middle first.
  std::vector<Point2> places_on(std::size_t piece) const {
    std::vector<Point2> middles;
    for (const Covered& c : covered)
      if (c.piece == piece) middles.push_back(c.rect.middle());
    const Rect r = plan.placement.rect(scene.pieces[piece].body());
    std::ranges::stable_sort(middles, {}, [&](const Point2& p) { return r.width > r.height ? p.x : p.y; });
    std::vector<Point2> places;
    for (const double share : {0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875, 0.06, 0.94})
      if (!middles.empty()) places.push_back(middles[static_cast<std::size_t>(share * double(middles.size()))]);
    return places;
  }

  std::optional<Point2> place_for(const PieceGroup& group, double half) const {
    const std::size_t first = group.pieces.front();
    const std::vector<Point2> around = places_around(scene.pieces[first], half), on = places_on(first);
    const auto is_free = [&](Point2 p) {
      const Rect r = ring_at(p, half);
      return is_within(r) && !meets_any(r, taken);
    };
    const auto clear = [&](Point2 p) { return is_free(p) && !covers_others(ring_at(p, half), group); };
    for (const auto* places : {&around, &on})
      if (const auto p = std::ranges::find_if(*places, clear); p != places->end()) return *p;
    if (const auto p = std::ranges::find_if(on, is_free); p != on.end()) return *p;
    return std::nullopt;
  }

  void add(const PieceGroup& group) {
    const double half = ring_half_width(group.ring);
    const auto place = place_for(group, half);
    if (!place) return;
    taken.push_back(ring_at(*place, half));
    add_ring(marks, Part::drawing, *place, group.ring);
  }
};

}  // namespace

Marks piece_numbers(const Scene& scene, const PanelPlan& plan, std::span<const Rect> taken) {
  if (scene.pieces.size() < 2) return {};
  Numbering numbering{scene, plan, {taken.begin(), taken.end()}, covered_by(scene, plan.placement)};
  const double half = figure_width_m / 2;
  numbering.taken.push_back(
      plan.placement.rect({scene.figure_x_m - half, scene.figure_x_m + half, 0, figure_height_m}));
  for (const PieceGroup& group : groups_together(scene))
    if (scene.pieces[group.pieces.front()].shown == Shown::built) numbering.add(group);
  return numbering.marks;
}

}  // namespace quadrille
