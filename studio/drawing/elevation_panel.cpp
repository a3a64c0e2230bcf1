// Laying out the drawing: how much room the dimensions take decides the scale, and the scale decides how many rows of
// dimensions are needed; a few rounds settle both.
#include "studio/drawing/elevation_panel.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "sdk/units.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/sheet_style.hpp"
#include "studio/drawing/text.hpp"

namespace quadrille {
namespace {

constexpr double ground = 2.6;                   // depth of the hatch under the floor line
constexpr double first_row = 10.5;               // from the floor to the first dimension line
constexpr double below_rows = 2.5, bar_gap = 6;  // under the last dimension line, and above the scale bar
constexpr double column_width = 8.2;             // of one column of height dimensions
constexpr double border = 3;
constexpr std::size_t most_rows = 6;  // more would leave no room to draw in; the key has every measure anyway

std::string length_text(double metres, Units units) {
  return print_length(metres, units == Units::feet ? LengthStyle::feet_inches : LengthStyle::metres);
}

struct Measured {
  std::size_t piece;
  DimensionLabel label;
};

/// The pieces whose size is known, with what stands on their dimension line.
std::vector<Measured> measured(const Scene& scene, Units units) {
  std::vector<Measured> result;
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (scene.pieces[i].size_known)
      result.push_back({i, {length_text(scene.pieces[i].extent.width(), units), piece_number(scene, i)}});
  return result;
}

std::size_t known_pieces(const Scene& scene) {
  return static_cast<std::size_t>(
      std::count_if(scene.pieces.begin(), scene.pieces.end(), [](const ScenePiece& p) { return p.size_known; }));
}

/// Labels that do not fit between their ticks stand on the side that faces away from the middle.
bool is_on_left(const Scene& scene, const Extent& e) {
  return scene.pieces_extent && e.left + e.right < scene.pieces_extent->left + scene.pieces_extent->right;
}

std::size_t extra_rows(const Scene& scene) { return (known_pieces(scene) > 1 ? 1u : 0u) + (scene.wall ? 1u : 0u); }
std::size_t height_columns(const Scene& scene) { return (scene.pieces_extent ? 1u : 0u) + (scene.wall ? 1u : 0u); }

double below_floor(const Scene& scene, std::size_t rows) {
  const std::size_t all = rows + extra_rows(scene);
  const double dimensions = all > 0 ? first_row + static_cast<double>(all - 1) * dimension_row + below_rows : ground;
  return dimensions + bar_gap + scale_bar_height;
}

/// Rows for the width dimensions, so that neither lines nor labels of one row meet.
void assign_rows(const Scene& scene, PanelPlan& plan) {
  std::vector<double> free_from(most_rows, -1e300);
  plan.rows.assign(scene.pieces.size(), most_rows);
  plan.row_count = 0;
  auto list = measured(scene, plan.units);
  std::stable_sort(list.begin(), list.end(), [&](const Measured& a, const Measured& b) {
    return scene.pieces[a.piece].extent.left < scene.pieces[b.piece].extent.left;
  });
  for (const Measured& m : list) {
    const Extent& e = scene.pieces[m.piece].extent;
    const double left = plan.placement.on_page(e.left, 0).x, right = plan.placement.on_page(e.right, 0).x;
    const Span label =
        label_span(left, right, label_width(m.label), plan.room.x, plan.room.right(), is_on_left(scene, e));
    const double from = std::min(left, label.from) - 1.6, to = std::max(right, label.to) + 1.6;
    for (std::size_t row = 0; row < most_rows; ++row) {
      if (free_from[row] > from) continue;
      free_from[row] = to;
      plan.rows[m.piece] = row;
      plan.row_count = std::max(plan.row_count, row + 1);
      break;
    }
  }
}

void place(const Scene& scene, PanelPlan& plan, std::size_t rows) {
  const Rect& room = plan.room;
  const double left = border + static_cast<double>(height_columns(scene)) * column_width,
               below = below_floor(scene, rows);
  const double width = room.width - left - border, height = room.height - below - border;
  const Extent& e = scene.extent;
  plan.scale = fitting_scale(e.width(), e.height(), std::max(width, 10.0), std::max(height, 10.0), plan.units);
  const double k = 1000 / plan.scale;
  plan.placement.mm_per_metre = k;
  plan.placement.origin.x = room.x + left + (width - e.width() * k) / 2 - e.left * k;
  // The air that is left goes half above the drawing and half under the scale bar.
  const double air = std::max(0.0, height - e.height() * k);
  plan.placement.origin.y = room.bottom() - below - air * 0.5 + e.floor * k;
  plan.bar_y = room.bottom() - scale_bar_height - air * 0.5;
}

void add_ground(const PanelPlan& plan, Marks& marks) {
  const double y = plan.placement.origin.y, left = plan.room.x, right = plan.room.right();
  HatchMark hatch;
  hatch.outline = {{left, y}, {right, y}, {right, y + ground}, {left, y + ground}};
  hatch.spacing = 1.9;
  hatch.pen = {ink_rule, mm_hair, {}, false};
  marks.push_back({Part::floor, std::move(hatch)});
}

void add_widths(const Scene& scene, const PanelPlan& plan, Marks& marks) {
  const double floor = plan.placement.origin.y, object = floor + ground + 0.8;
  const auto add = [&](const Extent& e, std::size_t row, const DimensionLabel& label) {
    const double left = plan.placement.on_page(e.left, 0).x, right = plan.placement.on_page(e.right, 0).x;
    const Span span = label_span(left, right, label_width(label), plan.room.x, plan.room.right(), is_on_left(scene, e));
    const double y = floor + first_row + static_cast<double>(row) * dimension_row;
    add_width_dimension(marks, left, right, y, object, label, span);
  };
  // From the outermost row inwards, so that no extension line runs over a figure.
  std::size_t row = plan.row_count + extra_rows(scene);
  if (scene.wall) add(*scene.wall, --row, {length_text(scene.wall->width(), plan.units) + " wall", ""});
  if (known_pieces(scene) > 1)
    add(*scene.pieces_extent, --row, {length_text(scene.pieces_extent->width(), plan.units) + " overall", ""});
  auto list = measured(scene, plan.units);
  std::stable_sort(list.begin(), list.end(),
                   [&](const Measured& a, const Measured& b) { return plan.rows[a.piece] > plan.rows[b.piece]; });
  for (const Measured& m : list)
    if (plan.rows[m.piece] < most_rows) add(scene.pieces[m.piece].extent, plan.rows[m.piece], m.label);
}

void add_heights(const Scene& scene, const PanelPlan& plan, Marks& marks) {
  const double inner = plan.placement.on_page(scene.extent.left, 0).x - 3.6;
  const auto add = [&](const Extent& e, double x, const std::string& what) {
    const Point2 top = plan.placement.on_page(e.left, e.top), bottom = plan.placement.on_page(e.left, e.floor);
    add_height_dimension(marks, top.y, bottom.y, x, top.x - 1.2, length_text(e.height(), plan.units) + what);
  };
  // The outer one first: its extension line passes behind the figure of the inner one.
  if (scene.wall) add(*scene.wall, inner - (scene.pieces_extent ? column_width : 0), " wall");
  if (scene.pieces_extent) add(*scene.pieces_extent, inner, "");
}

void add_bar(const PanelPlan& plan, Marks& marks) {
  const double y = plan.bar_y;
  const ScaleBar bar = scale_bar(plan.scale, plan.units, {plan.room.x + 1, y}, plan.room.width * 0.6);
  marks.insert(marks.end(), bar.marks.begin(), bar.marks.end());
  const double x = plan.room.x + bar.length_mm + 16;
  const std::string text = "Scale " + print_scale(plan.scale, plan.units) + ". The figure is " +
                           length_text(figure_height_m, plan.units) + " tall.";
  marks.push_back(
      text_mark(Part::scale_bar, {x, y - 1.4, plan.room.right() - x, 4.2}, text, type(pt_caption, ink_quiet)));
}

}  // namespace

PanelPlan plan_panel(const Scene& scene, const Rect& room, Units units) {
  PanelPlan plan{room, units, 0, {}, 0, {}, 0};
  std::size_t rows = scene.pieces.empty() ? 0 : 1;
  for (int round = 0; round < 6; ++round) {
    place(scene, plan, rows);
    assign_rows(scene, plan);
    if (plan.row_count <= rows) break;
    rows = plan.row_count;
  }
  return plan;
}

Marks panel_marks(const Scene& scene, const PanelPlan& plan, bool letters) {
  Marks marks;
  add_ground(plan, marks);
  SceneLook look;
  look.letters = letters;
  look.line = ink_text;
  Marks drawn = scene_marks(scene, plan.placement, look, plan.room.x, plan.room.right());
  std::move(drawn.begin(), drawn.end(), std::back_inserter(marks));
  add_widths(scene, plan, marks);
  add_heights(scene, plan, marks);
  add_bar(plan, marks);
  return marks;
}

}  // namespace quadrille
