// Rows as closures: measured when they are made, drawn where the flow puts them.
#include "studio/paper/table_rows.hpp"

#include <algorithm>

#include "studio/drawing/elevation.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {

double wrapped(const std::string& text, const TextStyle& style, double width) {
  return std::max(line_height, text_height(text, style, width, 3));
}

double below(double height) { return height > line_height ? 2.2 : 1.2; }

Row paragraph(Part part, const std::string& text, const TextStyle& style, double width, double air) {
  const double height = text_height(text, style, width, 4);
  return {height + air, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(part, {at.x, at.y, at.width, height}, text, style));
          }};
}

Row rule(Part part, double above, double air) {
  return {above + air, [=](Marks& marks, const Rect& at) {
            const double y = at.y + above;
            marks.push_back(line_mark(part, {at.x, y}, {at.right(), y}, mm_hair, ink_rule));
          }};
}

Row heading_row(Part part, const std::string& text, double width) {
  return paragraph(part, text, type(pt_heading, ink_text, Face::bold), width, 1.6);
}

void add_swatch(Marks& marks, Part part, double x, double y, const Colour* colour) {
  constexpr double radius = 1.9;
  BalloonMark swatch;
  swatch.centre = swatch.neck = {x + radius, y + capital_middle(table_body)};
  swatch.radius = radius;
  swatch.ink = ink_of(colour);
  swatch.finish = colour ? colour->finish : Finish::matte;
  Mark& mark = marks.emplace_back();
  mark.part = part;
  mark.shape = swatch;
}

}  // namespace quadrille
