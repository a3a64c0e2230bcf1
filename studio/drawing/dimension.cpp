// Dimension lines.
#include "studio/drawing/dimension.hpp"

#include <algorithm>

#include "studio/drawing/sheet_style.hpp"
#include "studio/drawing/text.hpp"

namespace quadrille {
namespace {

constexpr double overshoot = 1.4, tick = 1.0, ring_radius = 2.0, ring_gap = 1.2;

void add_tick(Marks& marks, Point2 at) {
  marks.push_back(line_mark(Part::dimension, {at.x - tick, at.y + tick}, {at.x + tick, at.y - tick}, mm_strong));
}

TextStyle figure_style() { return type(pt_body, ink_text, Face::regular, Across::centre, Down::bottom); }

}  // namespace

double label_width(const DimensionLabel& label) {
  return text_width(label.text, figure_style()) + (label.ring.empty() ? 0 : 2 * ring_radius + ring_gap);
}

void add_ring(Marks& marks, Part part, Point2 c, const std::string& number) {
  marks.push_back(shape_mark(part, circle_path(c, ring_radius), ink_paper, {ink_text, mm_line, {}, false}));
  const double half = ring_radius - 0.1;
  marks.push_back(
      text_mark(part, {c.x - half, c.y - half, 2 * half, 2 * half}, number,
                type(number.size() > 2 ? 5 : pt_caption, ink_text, Face::bold, Across::centre, Down::middle)));
}

Span label_span(double from, double to, double width, double least, double most, bool leftwards) {
  constexpr double beside = 2.2;
  double left = (from + to - width) / 2;
  if (width > to - from - 2) {
    const bool room_left = from - beside - width >= least, room_right = to + beside + width <= most;
    left = (leftwards ? room_left : !room_right) ? from - beside - width : to + beside;
  }
  left = std::max(std::min(left, most - width), least);
  return {left, left + width};
}

void add_width_dimension(Marks& marks, double from, double to, double y, double y_object, const DimensionLabel& label,
                         const Span& span) {
  for (double x : {from, to})
    marks.push_back(line_mark(Part::dimension, {x, y_object}, {x, y + overshoot}, mm_hair, ink_quiet));
  const double left = std::min(from - overshoot, span.from), right = std::max(to + overshoot, span.to);
  marks.push_back(line_mark(Part::dimension, {left, y}, {right, y}, mm_hair));
  add_tick(marks, {from, y});
  add_tick(marks, {to, y});
  // Extension lines of rows further down pass behind the label.
  const double top = y - 0.4 - dimension_text_height;
  marks.push_back(
      filled_mark(Part::dimension, rect_path({span.from, top, span.to - span.from, dimension_text_height}), ink_paper));
  double x = span.from;
  if (!label.ring.empty()) {
    add_ring(marks, Part::dimension, {x + ring_radius, y - dimension_text_height / 2 - 0.35}, label.ring);
    x += 2 * ring_radius + ring_gap;
  }
  const Rect box{x, top, span.to - x, dimension_text_height};
  marks.push_back(text_mark(Part::dimension, box, label.text, figure_style()));
}

void add_height_dimension(Marks& marks, double top, double bottom, double x, double x_object, const std::string& text) {
  for (double y : {top, bottom})
    marks.push_back(line_mark(Part::dimension, {x_object, y}, {x - overshoot, y}, mm_hair, ink_quiet));
  marks.push_back(line_mark(Part::dimension, {x, top - overshoot}, {x, bottom + overshoot}, mm_hair));
  add_tick(marks, {x, top});
  add_tick(marks, {x, bottom});
  TextStyle style = figure_style();
  style.turned = true;
  const double length = text_width(text, style);
  // A figure longer than its line begins at the floor and stands out above, never below.
  const double y = std::min((top + bottom - length) / 2, bottom - 1 - length);
  const Rect box{x - 0.4 - dimension_text_height, y, dimension_text_height, length};
  marks.push_back(
      filled_mark(Part::dimension, rect_path({box.x, box.y - 0.4, box.width, box.height + 0.8}), ink_paper));
  marks.push_back(text_mark(Part::dimension, box, text, style));
}

}  // namespace quadrille
