// Laying out the drawing: how much room the dimensions take decides the scale, and the scale decides how many of them
// are needed; a few rounds settle both.
#include "studio/paper/elevation_panel.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>
#include <variant>

#include "sdk/units.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/room.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/site_marks.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/panel_dimensions.hpp"
#include "studio/paper/piece_numbers.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double first_row = 10.5;               // from the floor to the first dimension line
constexpr double below_rows = 2.5, bar_gap = 6;  // under the last dimension line, and above the scale bar
constexpr double border = 3, ring_headroom = 3;
constexpr std::size_t most_left_columns = 4;
constexpr double bar_share = 0.45;  // of the panel's width, at most, for the scale bar

SceneLook look_of(const PanelPlan& plan, bool letters) {
  SceneLook look;
  look.letters = letters;
  look.line = ink_text;
  look.measures = lengths_in(plan.units);
  look.photo = PhotoLook::cut;
  return look;
}

Marks scene_on(const Scene& scene, const PanelPlan& plan, bool letters, const Marks& behind) {
  return scene_marks(scene, plan.placement, look_of(plan, letters), plan.room.x, plan.room.right(), behind);
}

double label_rows(const PanelPlan& plan) { return static_cast<double>(plan.walkway_rows) * site_label_row; }

double below_floor(const PanelPlan& plan) {
  const double rows = static_cast<double>(plan.width_rows);
  const double dimensions = plan.width_rows > 0 ? first_row + (rows - 1) * dimension_row + below_rows : ground_depth;
  return dimensions + label_rows(plan) + bar_gap + scale_bar_height;
}

void place(const Scene& scene, PanelPlan& plan) {
  const Rect& room = plan.room;
  const double left = border + static_cast<double>(plan.left_columns) * plan.column_width;
  const double numbers = scene.pieces.size() > 1 ? ring_headroom : 0;
  const double above = border + std::max(scene.structures.empty() ? 0 : site_label_headroom, numbers);
  const double below = below_floor(plan);
  const double width = room.width - left - border, height = room.height - below - above;
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

/// What stands on the page before there are heights: labels that their figures must keep off.
std::vector<Rect> labels_on(const Scene& scene, const PanelPlan& plan) {
  Marks marks;
  add_site_labels(scene, plan.placement, look_of(plan, false), {plan.room.x, plan.room.right()}, marks);
  return text_boxes(marks);
}

PanelPlan plan_with(const Scene& scene, const Rect& room, Units units, bool floor_widths) {
  PanelPlan plan;
  plan.room = room, plan.units = units, plan.floor_widths = floor_widths;
  plan.left_columns = scene.wall || scene.pieces_extent ? 1 : 0;
  for (int round = 0; round < 12; ++round) {
    place(scene, plan);
    const std::size_t rows = width_lines(scene, plan).rows;
    const std::size_t labels = walkway_rows(scene, plan.placement, look_of(plan, false), {room.x, room.right()});
    const bool complete =
        plan.left_columns >= most_left_columns || height_lines(scene, plan, labels_on(scene, plan)).complete;
    if (rows <= plan.width_rows && labels <= plan.walkway_rows && complete) break;
    plan.width_rows = std::max(plan.width_rows, rows), plan.walkway_rows = std::max(plan.walkway_rows, labels);
    if (!complete) ++plan.left_columns;
  }
  return plan;
}

void add_ground(const PanelPlan& plan, Marks& marks) {
  const double y = plan.placement.origin.y, left = plan.room.x, right = plan.room.right();
  HatchMark hatch;
  hatch.outline = {{left, y}, {right, y}, {right, y + ground_depth}, {left, y + ground_depth}};
  hatch.spacing = 1.9;
  hatch.pen = {ink_rule, mm_hair, {}, false};
  marks.push_back({Part::floor, std::move(hatch)});
}

void add_widths(const Scene& scene, const PanelPlan& plan, Marks& marks) {
  const double floor = plan.placement.origin.y + label_rows(plan), object = floor + ground_depth + 0.8;
  auto all = width_lines(scene, plan);
  // From the outermost row inwards, so that no extension line runs over a figure.
  std::stable_sort(all.lines.begin(), all.lines.end(),
                   [](const WidthLine& a, const WidthLine& b) { return a.row > b.row; });
  for (const WidthLine& line : all.lines) {
    const double left = plan.placement.on_page(line.from_m, 0).x, right = plan.placement.on_page(line.to_m, 0).x;
    const Span span = label_span(left, right, label_width(line.label), plan.room.x, plan.room.right(), line.leftwards);
    const double y = floor + first_row + static_cast<double>(line.row) * dimension_row;
    add_width_dimension(marks, left, right, y, object, line.label, span);
  }
}

/// Whether some balloon of a colour would have a letter, and is too small for it.
bool some_unlettered(const Scene& scene, const PanelPlan& plan) {
  const double least = look_of(plan, true).letter_radius;
  return std::ranges::any_of(scene.items, [&](const SceneItem& item) {
    const auto* const balloon = std::get_if<SceneBalloon>(&item.shape);
    return balloon != nullptr && plan.placement.length(balloon->radius_m) < least;
  });
}

void add_bar(const PanelPlan& plan, bool has_unlettered, Marks& marks) {
  const double y = plan.bar_y;
  const ScaleBar bar = scale_bar(plan.scale, plan.units, {plan.room.x + 1, y}, plan.room.width * bar_share);
  marks.insert(marks.end(), bar.marks.begin(), bar.marks.end());
  const double x = plan.room.x + bar.length_mm + 14;
  const std::string text = "Scale " + print_scale(plan.scale, plan.units) +
                           ". Print at actual size, not fitted to the page. The figure is " +
                           print_length(figure_height_m, lengths_in(plan.units)) + " tall." +
                           (has_unlettered ? " Letters that are too small here are on the build sheet." : "");
  marks.push_back(text_mark(Part::scale_bar, {x, y - 0.6, plan.room.right() - x, scale_bar_height + 0.6}, text,
                            type(pt_caption, ink_quiet)));
}

}  // namespace

PanelPlan plan_panel(const Scene& scene, const Rect& room, Units units) {
  // The key states how far plates stand out; the drawing does so too where that costs it no size.
  PanelPlan plain = plan_with(scene, room, units, false), full = plan_with(scene, room, units, true);
  return full.scale > plain.scale ? plain : full;
}

Marks panel_marks(const Scene& scene, const PanelPlan& plan, bool letters) {
  Marks marks, behind;
  add_ground(plan, marks);
  const HeightLines heights = height_lines(scene, plan, labels_on(scene, plan));
  for (const HeightLine& line : heights.behind) add_height_extension(behind, line);
  Marks drawn = scene_on(scene, plan, letters, behind);
  std::move(drawn.begin(), drawn.end(), std::back_inserter(marks));
  add_widths(scene, plan, marks);
  const double wall_left = scene.wall ? plan.placement.on_page(scene.wall->left, 0).x : 1e300;
  const double wall_right = scene.wall ? plan.placement.on_page(scene.wall->right, 0).x : -1e300;
  const Ink wall = look_of(plan, letters).wall;
  for (const HeightLine& line : heights.behind) add_height_dimension(marks, line, ink_paper);
  for (const HeightLine& line : heights.beside) {
    add_height_extension(marks, line);
    add_height_dimension(marks, line, line.x > wall_left && line.x < wall_right ? wall : ink_paper);
  }
  std::vector<Rect> taken = text_boxes(marks);
  for (const auto* lines : {&heights.behind, &heights.beside})
    for (const HeightLine& line : *lines) taken.push_back(room_of(line));
  Marks numbers = piece_numbers(scene, plan, taken);
  std::move(numbers.begin(), numbers.end(), std::back_inserter(marks));
  add_bar(plan, letters && some_unlettered(scene, plan), marks);
  return marks;
}

}  // namespace quadrille
