// Dimension lines.
#include "studio/drawing/dimension.hpp"

#include <algorithm>

#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double clearance = 0.8;  // to the sides of a label
constexpr double overshoot = 1.4, tick = 1.0, ring_radius = 2.1, ring_gap = 1.2;

void add_tick(Marks& marks, Point2 at) {
  marks.push_back(line_mark(Part::dimension, {at.x - tick, at.y + tick}, {at.x + tick, at.y - tick}, mm_strong));
}

TextStyle figure_style() { return type(pt_body, ink_text, Face::regular, Across::centre, Down::bottom); }

TextStyle turned_style() {
  TextStyle style = figure_style();
  style.turned = true;
  return style;
}

/// What the ring takes of a height's figure.
double ring_room(const HeightLine& line) { return line.ring.empty() ? 0 : 2 * ring_half_width(line.ring) + ring_gap; }

/// Of the figure and its ring. One longer than its line begins at the line's foot and stands out above, never below.
Rect figure_box(const HeightLine& line) {
  const double length = text_width(line.text, turned_style()) + ring_room(line);
  const double y = std::min((line.top + line.bottom - length) / 2, line.bottom - 1 - length);
  return {line.x - 0.4 - dimension_text_height, y, dimension_text_height, length};
}

TextStyle ring_style() { return type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle); }

}  // namespace

double label_width(const DimensionLabel& label) {
  return text_width(label.text, figure_style()) + (label.ring.empty() ? 0 : 2 * ring_half_width(label.ring) + ring_gap);
}

double ring_half_width(const std::string& number) {
  return std::max(ring_radius, text_width(number, ring_style()) / 2 + 0.9);
}

void add_ring(Marks& marks, Part part, Point2 c, const std::string& number, bool turned) {
  const double half = ring_half_width(number), r = ring_radius;
  PathSteps ring = circle_path(c, r);
  // The two halves are moved apart: the first and last quarter of the circle belong to the right one.
  const auto apart = [&](double at, double middle) { return at < middle ? r - half : at > middle ? half - r : 0; };
  for (PathStep& s : ring)
    for (Point2* p : {&s.to, &s.first, &s.second})
      (turned ? p->y : p->x) += turned ? apart(p->y, c.y) : apart(p->x, c.x);
  marks.push_back(shape_mark(part, std::move(ring), ink_paper, {ink_text, mm_line, {}, false}));
  TextStyle style = ring_style();
  style.turned = turned;
  const double across = (turned ? r : half) - 0.1, down = (turned ? half : r) - 0.1;
  marks.push_back(text_mark(part, {c.x - across, c.y - down, 2 * across, 2 * down}, number, style));
}

Span label_span(double from, double to, double width, double least, double most, bool leftwards) {
  constexpr double beside = 2.2;
  double left = (from + to - width) / 2;
  if (width > to - from - 2) {
    const bool room_left = from - beside - width >= least, room_right = to + beside + width <= most;
    left = (leftwards ? room_left : !room_right) ? from - beside - width : to + beside;
  }
  left = std::max(std::min(left, most - clearance - width), least + clearance);
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
  // Extension lines of rows further down pass behind the label, and keep a little off it.
  const double top = y - 0.4 - dimension_text_height, ground_width = span.to - span.from + 2 * clearance;
  marks.push_back(filled_mark(Part::dimension,
                              rect_path({span.from - clearance, top, ground_width, dimension_text_height}), ink_paper));
  double x = span.from;
  if (!label.ring.empty()) {
    const double half = ring_half_width(label.ring);
    add_ring(marks, Part::dimension, {x + half, y - dimension_text_height / 2 - 0.35}, label.ring);
    x += 2 * half + ring_gap;
  }
  const Rect box{x, top, span.to - x, dimension_text_height};
  marks.push_back(text_mark(Part::dimension, box, label.text, figure_style()));
}

Rect room_of(const HeightLine& line) {
  const Rect box = figure_box(line);
  const double top = std::min(line.top - overshoot, box.y), bottom = std::max(line.bottom, box.bottom());
  return {box.x - 0.6, top, line.x + overshoot - box.x + 0.6, bottom - top};
}

void add_height_extension(Marks& marks, const HeightLine& line) {
  for (const double from : line.from_x) {
    const double to = line.x + (from < line.x ? overshoot : -overshoot);
    marks.push_back(line_mark(Part::dimension, {from, line.top}, {to, line.top}, mm_hair, ink_quiet));
  }
}

void add_height_dimension(Marks& marks, const HeightLine& line, const Ink& ground) {
  marks.push_back(line_mark(Part::dimension, {line.x, line.top}, {line.x, line.bottom}, mm_hair));
  add_tick(marks, {line.x, line.top});
  add_tick(marks, {line.x, line.bottom});
  Rect box = figure_box(line);
  marks.push_back(filled_mark(Part::dimension, rect_path({box.x, box.y - 0.4, box.width, box.height + 0.8}), ground));
  if (!line.ring.empty())
    add_ring(marks, Part::dimension, {box.x + box.width / 2, box.bottom() - ring_half_width(line.ring)}, line.ring,
             true);
  box.height -= ring_room(line);
  marks.push_back(text_mark(Part::dimension, box, line.text, turned_style()));
}

}  // namespace quadrille
