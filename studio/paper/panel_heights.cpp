// Placing heights: beside the pieces, in columns at the left, inside the openings, beneath what hangs.
#include "studio/paper/panel_dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "studio/drawing/room.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/piece_groups.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double aside = 3.6;        // from a piece to the line of its height
constexpr double most_further = 24;  // as far as that, where something else stands beside it

std::string length_text(double metres, Units units) { return print_length(metres, lengths_in(units)); }

/// What the page knows to be in the way of a figure: all that stands, but for one piece and what lies over that.
std::vector<Rect> standing_but(const Scene& scene, const PanelPlan& plan, std::size_t piece) {
  const auto belongs = [&](std::size_t i) {
    return piece < scene.pieces.size() && lie_together(scene.pieces[i], scene.pieces[piece]);
  };
  std::vector<Rect> rects;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (!belongs(i)) rects.push_back(plan.placement.rect(scene.pieces[i].body()));
  for (const SceneStructure& s : scene.structures) rects.push_back(plan.placement.rect(s.extent()));
  const double half = figure_width_m / 2;
  rects.push_back(plan.placement.rect({scene.figure_x_m - half, scene.figure_x_m + half, 0, figure_height_m}));
  return rects;
}

HeightLine line_at(const Extent& e, double x, std::string text, std::vector<double> from_x, const PanelPlan& plan,
                   std::string ring = {}) {
  return {plan.placement.on_page(0, e.top).y,
          plan.placement.on_page(0, 0).y,
          x,
          std::move(text),
          std::move(from_x),
          std::move(ring)};
}

/// Collects lines and keeps what they take.
struct HeightPlacing {
  const Scene& scene;
  const PanelPlan& plan;
  std::vector<Rect> taken;
  HeightLines all = {};
  std::vector<std::string> stated = {};
  std::size_t columns = 0;  ///< used at the left, the wall's among them

  double column_x() const {
    const double outermost = plan.placement.on_page(scene.extent.left, 0).x - aside;
    return outermost - static_cast<double>(plan.left_columns - 1 - columns) * plan.column_width;
  }
  bool is_free(const Rect& room, std::size_t piece) const {
    if (room.x < plan.room.x || room.right() > plan.room.right() || room.y < plan.room.y) return false;
    return !lies_on_edge_of_wall(room) && !meets_any(room, taken) && !meets_any(room, standing_but(scene, plan, piece));
  }
  /// A figure on both the wall and the paper would need two grounds.
  bool lies_on_edge_of_wall(const Rect& room) const {
    if (!scene.wall) return false;
    const Rect wall = plan.placement.rect(*scene.wall);
    const bool on_wall = overlap(room, wall), within = room.x >= wall.x && room.right() <= wall.right();
    return on_wall && !within;
  }
  void take(const HeightLine& line, std::vector<HeightLine>& where) {
    taken.push_back(room_of(line));
    stated.push_back(line.text);
    where.push_back(line);
  }

  void add_wall() {
    if (!scene.wall) return;
    const double corner = plan.placement.on_page(scene.wall->left, 0).x - 1.2;
    const std::string text = length_text(scene.wall->height(), plan.units) + " wall";
    take(line_at(*scene.wall, column_x(), text, {corner}, plan), all.behind);
    ++columns;
  }

  /// Whether the extension line crosses nothing but the piece it belongs to.
  bool extends_freely(const HeightLine& line, std::size_t piece) const {
    const double from = std::min(line.from_x.front(), line.x), to = std::max(line.from_x.front(), line.x);
    const Rect path{from, line.top - 0.3, to - from, 0.6};
    return !meets_any(path, taken) && !meets_any(path, standing_but(scene, plan, piece));
  }

  /// As near to the piece as there is room, on the side that faces away from the middle rather than on the other.
  bool add_beside(std::size_t index, const PieceGroup& group) {
    const ScenePiece& piece = scene.pieces[index];
    const Extent standing = piece.standing();
    const std::string &text = group.text, &ring = group.ring;
    const double crown_left = plan.placement.on_page(piece.crown_left_m, 0).x - 1.2;
    const double crown_right = plan.placement.on_page(piece.crown_right_m, 0).x + 1.2;
    const bool left_first = faces_left(scene, piece.extent) || scene.pieces.size() == 1;
    for (double further = 0; further <= most_further; further += 1.5) {
      const double left = plan.placement.on_page(standing.left, 0).x - aside - further;
      const double right = plan.placement.on_page(standing.right, 0).x + 2.2 + dimension_text_height + further;
      HeightLine lines[] = {line_at(piece.extent, left, text, {crown_left}, plan, ring),
                            line_at(piece.extent, right, text, {crown_right}, plan, ring)};
      if (!left_first) std::swap(lines[0], lines[1]);
      for (const HeightLine& line : lines)
        if (is_free(room_of(line), index) && extends_freely(line, index)) {
          take(line, all.beside);
          return true;
        }
    }
    return false;
  }

  /// In a column at the left.
  bool add_in_column(const HeightLine& line) {
    const Rect room = room_of(line);  // a figure may be longer than its line
    if (columns >= plan.left_columns || room.y < plan.room.y || meets_any(room, taken)) return false;
    take(line, all.behind);
    ++columns;
    return true;
  }

  void add_heights(const PieceGroup& group) {
    for (const std::size_t index : group.pieces)
      if (add_beside(index, group)) return;
    if (std::ranges::find(stated, group.text) != stated.end()) return;
    const ScenePiece& first = scene.pieces[group.pieces.front()];
    const double crown = plan.placement.on_page(first.crown_left_m, 0).x - 1.2;
    if (!add_in_column(line_at(first.extent, column_x(), group.text, {crown}, plan, group.ring))) all.complete = false;
  }

  /// Under the lowest place of what hangs, or as near to it as there is room; nowhere rather than far off.
  void add_underside(const PieceGroup& group) {
    const ScenePiece& piece = scene.pieces[group.pieces.front()];
    const Extent e{piece.extent.left, piece.extent.right, 0, piece.underside_m};
    const double lowest = plan.placement.on_page(piece.lowest_x_m, 0).x;
    for (double off = 0; off <= plan.placement.length(e.width()) / 2; off += 1.5)
      for (const double x : {lowest - off, lowest + off}) {
        std::vector<double> from;
        if (off > 0) from.push_back(lowest);
        const HeightLine line = line_at(e, x, group.text + " beneath", from, plan, group.ring);
        if (!is_free_beneath(line, lowest)) continue;
        take(line, all.beside);
        return;
      }
  }

  /// Whether the line, with its extension line from `lowest`, has room under the piece that it touches.
  bool is_free_beneath(const HeightLine& line, double lowest) const {
    constexpr double apart = 0.2;
    Rect room = room_of(line);
    if (room.y < line.top - 1.5) return false;  // the figure is longer than the line
    const double top = line.top + apart;
    room.height -= top - room.y, room.y = top;
    const Rect path{std::min(line.x, lowest), top, std::abs(line.x - lowest), apart};
    const std::size_t none = scene.pieces.size();
    return is_free(room, none) && !meets_any(path, taken) && !meets_any(path, standing_but(scene, plan, none));
  }

  void add_clear_height(std::size_t index) {
    const auto& opening = scene.pieces[index].opening;
    if (!opening || !opening->height_m || !(*opening->height_m > 0)) return;
    const Extent e{opening->left_m, opening->right_m, 0, *opening->height_m};
    const std::string text = length_text(*opening->height_m, plan.units) + " clear";
    const HeightLine line = line_at(e, plan.placement.on_page(opening->middle_m(), 0).x, text, {}, plan);
    const Rect room = room_of(line);
    const double left = plan.placement.on_page(opening->left_m, 0).x;
    if (room.y < line.top - 1.5 || room.x < left || !is_free(room, index)) return;
    take(line, all.beside);
  }
};

}  // namespace

HeightLines height_lines(const Scene& scene, const PanelPlan& plan, std::vector<Rect> taken) {
  HeightPlacing placing{scene, plan, std::move(taken)};
  placing.add_wall();
  auto groups = groups_by(scene, plan.units, true, [](const ScenePiece& p) { return p.extent.height(); });
  std::stable_sort(groups.begin(), groups.end(), [&](const PieceGroup& a, const PieceGroup& b) {
    return scene.pieces[a.pieces.front()].extent.top > scene.pieces[b.pieces.front()].extent.top;
  });
  for (const PieceGroup& group : groups) placing.add_heights(group);
  for (std::size_t index = 0; index < scene.pieces.size(); ++index) placing.add_clear_height(index);
  for (const PieceGroup& group : groups_by(scene, plan.units, true, [](const ScenePiece& p) { return p.underside_m; }))
    placing.add_underside(group);
  return placing.all;
}

}  // namespace quadrille
