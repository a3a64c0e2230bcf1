// Marks to Cairo calls.
#include "studio/paint/painter.hpp"

#include <cairo.h>

#include <algorithm>
#include <cmath>

#include "sdk/vec.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

void set_ink(cairo_t* cairo, const Ink& ink) {
  cairo_set_source_rgba(cairo, ink.red, ink.green, ink.blue, ink.opacity);
}

void append(cairo_t* cairo, const PathSteps& steps) {
  cairo_new_path(cairo);
  for (const PathStep& s : steps) switch (s.kind) {
      case PathStep::Kind::move:
        cairo_move_to(cairo, s.to.x, s.to.y);
        break;
      case PathStep::Kind::line:
        cairo_line_to(cairo, s.to.x, s.to.y);
        break;
      case PathStep::Kind::curve:
        cairo_curve_to(cairo, s.first.x, s.first.y, s.second.x, s.second.y, s.to.x, s.to.y);
        break;
      case PathStep::Kind::close:
        cairo_close_path(cairo);
        break;
    }
}

void set_pen(cairo_t* cairo, const Pen& pen) {
  set_ink(cairo, pen.ink);
  cairo_set_line_width(cairo, pen.width);
  cairo_set_dash(cairo, pen.dashes.data(), static_cast<int>(pen.dashes.size()), 0);
  cairo_set_line_cap(cairo, pen.round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join(cairo, pen.round ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
}

void paint(cairo_t* cairo, const PathMark& path, BalloonStamps&) {
  append(cairo, path.steps);
  for (const Ink& ink : path.fill) {
    set_ink(cairo, ink);
    cairo_fill_preserve(cairo);
  }
  for (const Pen& pen : path.stroke) {
    set_pen(cairo, pen);
    cairo_stroke_preserve(cairo);
  }
  cairo_new_path(cairo);
}

void paint(cairo_t* cairo, const HatchMark& hatch, BalloonStamps&) {
  if (hatch.outline.size() < 3 || !(hatch.spacing > 0)) return;
  cairo_save(cairo);
  append(cairo, polygon_path(hatch.outline));
  cairo_clip(cairo);
  // Lines in the direction d, counted along the normal n; y runs down, so a rising line has a negative y.
  const Point2 d{std::cos(hatch.angle), -std::sin(hatch.angle)}, n{-d.y, d.x};
  double least = 1e300, most = -1e300, from = 1e300, to = -1e300;
  for (const Point2& p : hatch.outline) {
    least = std::min(least, p.x * n.x + p.y * n.y), most = std::max(most, p.x * n.x + p.y * n.y);
    from = std::min(from, p.x * d.x + p.y * d.y), to = std::max(to, p.x * d.x + p.y * d.y);
  }
  cairo_new_path(cairo);
  const double first = std::ceil(least / hatch.spacing), last = std::floor(most / hatch.spacing);
  for (double i = first; i <= last && last - first < 20000; ++i) {
    const double s = i * hatch.spacing;
    cairo_move_to(cairo, s * n.x + from * d.x, s * n.y + from * d.y);
    cairo_line_to(cairo, s * n.x + to * d.x, s * n.y + to * d.y);
  }
  set_pen(cairo, hatch.pen);
  cairo_stroke(cairo);
  cairo_restore(cairo);
}

void paint(cairo_t* cairo, const BalloonMark& balloon, BalloonStamps& stamps) { stamps.paint(cairo, balloon); }
void paint(cairo_t* cairo, const PictureMark& picture, BalloonStamps& stamps) {
  stamps.pictures().paint(cairo, picture);
}
void paint(cairo_t* cairo, const TextMark& text, BalloonStamps&) { paint_text(cairo, text); }

}  // namespace

void paint_marks(cairo_t* cairo, const Marks& marks, BalloonStamps& stamps, double units_per_mm) {
  cairo_save(cairo);
  cairo_scale(cairo, units_per_mm, units_per_mm);
  for (const Mark& mark : marks) std::visit([&](const auto& shape) { paint(cairo, shape, stamps); }, mark.shape);
  cairo_restore(cairo);
}

void paint_page(cairo_t* cairo, const Page& page, BalloonStamps& stamps) {
  cairo_save(cairo);
  set_ink(cairo, {1, 1, 1, 1});
  cairo_rectangle(cairo, 0, 0, page.width, page.height);
  cairo_fill(cairo);
  paint_marks(cairo, page.marks, stamps);
  cairo_restore(cairo);
}

void paint_page_within(cairo_t* cairo, const Page& page, BalloonStamps& stamps, const Rect& room) {
  const double scale = std::min(room.width / page.width, room.height / page.height);
  cairo_save(cairo);
  cairo_translate(cairo, room.middle().x - scale * page.width / 2, room.middle().y - scale * page.height / 2);
  cairo_scale(cairo, scale, scale);
  paint_page(cairo, page, stamps);
  cairo_restore(cairo);
}

void paint_upright(cairo_t* cairo, const Page& page, BalloonStamps& stamps, double units_per_mm) {
  cairo_save(cairo);
  cairo_scale(cairo, units_per_mm, units_per_mm);
  if (page.width > page.height) {
    cairo_translate(cairo, 0, page.width);
    cairo_rotate(cairo, -pi / 2);
  }
  paint_page(cairo, page, stamps);
  cairo_restore(cairo);
}

}  // namespace quadrille
