// Placing dimensions: in rows beneath the floor, beside the pieces, inside the openings.
#include "studio/drawing/panel_dimensions.hpp"

#include <algorithm>
#include <numeric>
#include <string>

#include "studio/drawing/room.hpp"
#include "studio/paint/text.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_rows = 6, most_clear_rows = 2, most_floor_rows = 2;
constexpr double aside = 3.6;              // from a piece to the line of its height
constexpr double most_further = 24;        // as far as that, where something else stands beside it
constexpr double least_clear_width = 5.0;  // on paper; smaller openings are stated in the key alone

std::string length_text(double metres, Units units) { return print_length(metres, lengths_in(units)); }

/// Labels that do not fit between their ticks stand on the side that faces away from the middle.
bool is_on_left(const Scene& scene, const Extent& e) {
  return scene.pieces_extent && e.left + e.right < scene.pieces_extent->left + scene.pieces_extent->right;
}

Span page_span(const WidthLine& line, const PanelPlan& plan) {
  return {plan.placement.on_page(line.from_m, 0).x, plan.placement.on_page(line.to_m, 0).x};
}

/// Gives the lines rows from `first` on, at most `most` of them, and takes those over that found one.
void assign_rows(std::vector<WidthLine> lines, std::size_t most, const PanelPlan& plan, WidthLines& all) {
  std::vector<double> free_from(most, -1e300);
  const std::size_t first = all.rows;
  std::stable_sort(lines.begin(), lines.end(),
                   [](const WidthLine& a, const WidthLine& b) { return a.from_m < b.from_m; });
  for (WidthLine& line : lines) {
    const Span on_page = page_span(line, plan);
    const Span label =
        label_span(on_page.from, on_page.to, label_width(line.label), plan.room.x, plan.room.right(), line.leftwards);
    const double from = std::min(on_page.from, label.from) - 1.6, to = std::max(on_page.to, label.to) + 1.6;
    const auto row = std::ranges::find_if(free_from, [&](double free) { return free <= from; });
    if (row == free_from.end()) continue;
    *row = to;
    line.row = first + static_cast<std::size_t>(row - free_from.begin());
    all.rows = std::max(all.rows, line.row + 1);
    all.lines.push_back(std::move(line));
  }
}

std::vector<WidthLine> clear_widths(const Scene& scene, const PanelPlan& plan) {
  std::vector<WidthLine> lines;
  for (const ScenePiece& piece : scene.pieces) {
    if (!piece.opening) continue;
    const Opening& o = *piece.opening;
    if (plan.placement.length(o.between_plates_m()) < least_clear_width) continue;
    const std::string text = length_text(o.between_plates_m(), plan.units) + " clear";
    lines.push_back({o.plates_left_m, o.plates_right_m, {text, ""}, 0, is_on_left(scene, piece.extent)});
  }
  return lines;
}

/// What the page knows to be in the way of a figure: all that stands, but for one piece.
std::vector<Rect> standing_but(const Scene& scene, const PanelPlan& plan, std::size_t piece) {
  std::vector<Rect> rects;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (i != piece) rects.push_back(plan.placement.rect(scene.pieces[i].standing()));
  for (const SceneStructure& s : scene.structures) rects.push_back(plan.placement.rect(s.extent()));
  const double half = figure_width_m / 2;
  rects.push_back(plan.placement.rect({scene.figure_x_m - half, scene.figure_x_m + half, 0, figure_height_m}));
  return rects;
}

HeightLine line_at(const Extent& e, double x, std::string text, std::vector<double> from_x, const PanelPlan& plan) {
  return {plan.placement.on_page(0, e.top).y, plan.placement.on_page(0, 0).y, x, std::move(text), std::move(from_x)};
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
  bool add_beside(std::size_t index, const std::string& text) {
    const ScenePiece& piece = scene.pieces[index];
    const Extent standing = piece.standing();
    const double crown_left = plan.placement.on_page(piece.crown_left_m, 0).x - 1.2;
    const double crown_right = plan.placement.on_page(piece.crown_right_m, 0).x + 1.2;
    const bool left_first = is_on_left(scene, piece.extent) || scene.pieces.size() == 1;
    for (double further = 0; further <= most_further; further += 1.5) {
      const double left = plan.placement.on_page(standing.left, 0).x - aside - further;
      const double right = plan.placement.on_page(standing.right, 0).x + 2.2 + dimension_text_height + further;
      HeightLine lines[] = {line_at(piece.extent, left, text, {crown_left}, plan),
                            line_at(piece.extent, right, text, {crown_right}, plan)};
      if (!left_first) std::swap(lines[0], lines[1]);
      for (const HeightLine& line : lines)
        if (is_free(room_of(line), index) && extends_freely(line, index)) {
          take(line, all.beside);
          return true;
        }
    }
    return false;
  }

  /// In a column at the left, with the number of its piece.
  bool add_in_column(std::size_t index, const std::string& text) {
    if (columns >= plan.left_columns) return false;
    const ScenePiece& piece = scene.pieces[index];
    const std::string number = piece_number(scene, index);
    const double crown = plan.placement.on_page(piece.crown_left_m, 0).x - 1.2;
    const HeightLine line =
        line_at(piece.extent, column_x(), text + (number.empty() ? "" : "  (" + number + ")"), {crown}, plan);
    if (meets_any(room_of(line), taken)) return false;
    take(line, all.behind);
    stated.push_back(text);
    ++columns;
    return true;
  }

  void add_piece(std::size_t index) {
    const std::string text = length_text(scene.pieces[index].extent.height(), plan.units);
    if (add_beside(index, text)) return;
    if (std::ranges::find(stated, text) != stated.end()) return;
    if (!add_in_column(index, text)) all.complete = false;
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

WidthLines width_lines(const Scene& scene, const PanelPlan& plan) {
  WidthLines all;
  assign_rows(clear_widths(scene, plan), most_clear_rows, plan, all);
  std::vector<WidthLine> widths, plates;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i) {
    const ScenePiece& piece = scene.pieces[i];
    if (!piece.size_known) continue;
    const bool left = is_on_left(scene, piece.extent);
    const Extent& e = piece.extent;
    widths.push_back({e.left, e.right, {length_text(e.width(), plan.units), piece_number(scene, i)}, 0, left});
    if (!plan.floor_widths || !piece.plates_stand_out()) continue;
    const Extent floor = piece.standing();
    plates.push_back({floor.left, floor.right, {length_text(floor.width(), plan.units) + " with plates", ""}, 0, left});
  }
  const bool several = widths.size() > 1;
  assign_rows(std::move(widths), most_rows, plan, all);
  assign_rows(std::move(plates), most_floor_rows, plan, all);
  if (several) {
    const Extent& e = *scene.pieces_extent;
    all.lines.push_back({e.left, e.right, {length_text(e.width(), plan.units) + " overall", ""}, all.rows++, false});
  }
  if (scene.wall) {
    const Extent& e = *scene.wall;
    all.lines.push_back({e.left, e.right, {length_text(e.width(), plan.units) + " wall", ""}, all.rows++, false});
  }
  return all;
}

HeightLines height_lines(const Scene& scene, const PanelPlan& plan, std::vector<Rect> taken) {
  HeightPlacing placing{scene, plan, std::move(taken)};
  placing.add_wall();
  std::vector<std::size_t> order(scene.pieces.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return scene.pieces[a].extent.top > scene.pieces[b].extent.top;
  });
  for (const std::size_t index : order)
    if (scene.pieces[index].size_known) placing.add_piece(index);
  for (const std::size_t index : order) placing.add_clear_height(index);
  return placing.all;
}

}  // namespace quadrille
