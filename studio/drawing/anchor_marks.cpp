#include "studio/drawing/anchor_marks.hpp"

#include "studio/paint/style.hpp"

namespace quadrille {

void add_anchor_mark(Marks& marks, AnchorKind kind, Point2 at) {
  constexpr double r = 1.3;
  if (kind == AnchorKind::stake) {
    marks.push_back(line_mark(Part::drawing, {at.x - r, at.y - r}, {at.x + r, at.y + r}, mm_strong));
    marks.push_back(line_mark(Part::drawing, {at.x - r, at.y + r}, {at.x + r, at.y - r}, mm_strong));
  } else if (kind == AnchorKind::dead_weight) {
    marks.push_back(filled_mark(Part::drawing, rect_path({at.x - r, at.y - r, 2 * r, 2 * r}), ink_text));
  } else {
    const PathSteps diamond = polygon_path({{at.x, at.y - r}, {at.x + r, at.y}, {at.x, at.y + r}, {at.x - r, at.y}});
    marks.push_back(shape_mark(Part::drawing, diamond, ink_paper, {ink_text, mm_strong, {}, false}));
  }
}

}  // namespace quadrille
