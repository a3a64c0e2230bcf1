// A piece from above: where its feet and anchors stand.
#include <algorithm>
#include <cmath>

#include "studio/build_sheet/build_picture.hpp"
#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/room.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double caption = 6, foot = 6, aside = 12, most_height = 78;

/// Extent seen from above: x to the right, depth upwards. Nothing for a single plate without lines, which needs no plan.
std::optional<Extent> plan_extent(const BuildSubject& subject) {
  std::optional<Extent> extent;
  if (subject.lines.empty() && std::ranges::count(subject.supports, true, &NamedSupport::is_foot) < 2) return extent;
  const auto include = [&](double x, double y, double reach) {
    const Extent one{x - reach, x + reach, y - reach, y + reach};
    extent = extent ? around(*extent, one) : one;
  };
  for (const NamedSupport& support : subject.supports) {
    const Support& what = subject.piece().supports[support.support];
    if (support.is_foot)
      include(support.place.x(), support.place.y(), std::max({0.1, what.width_m / 2, what.depth_m / 2}));
  }
  for (const AnchoredLine& line : subject.lines) include(line.run.to.x(), line.run.to.y(), 0.1);
  if (!extent) return extent;
  for (const AnchoredLine& line : subject.lines) include(line.run.from.x(), line.run.from.y(), 0.05);
  return extent;
}

BuildPicture plan_in(const Extent& extent, const Rect& room, Units units) {
  BuildPicture plan{room, extent, 10, {}, false};
  const double width = std::max(10.0, room.width - 2 * aside), height = most_height - caption - foot - 6;
  plan.scale = fitting_scale(extent.width(), extent.height(), width, height, units);
  const double k = 1000 / plan.scale;
  plan.placement = {
      k, {room.x + room.width / 2 - (extent.left + extent.right) / 2 * k, room.y + caption + 3 + extent.top * k}};
  return plan;
}

}  // namespace

double plan_height(const BuildSubject& subject, double width, Units units) {
  const auto extent = plan_extent(subject);
  if (!extent) return 0;
  const BuildPicture plan = plan_in(*extent, {0, 0, width, most_height}, units);
  return caption + 3 + extent->height() * plan.placement.mm_per_metre + 4 + foot;
}

void add_plan(Marks& marks, const BuildSubject& subject, const Rect& room, Units units) {
  const auto extent = plan_extent(subject);
  if (!extent) return;
  const BuildPicture plan = plan_in(*extent, room, units);
  add_picture_caption(marks, plan, "From above", units);
  const auto on_page = [&](const Vec3& p) { return plan.placement.on_page(p.x(), p.y()); };
  std::vector<Point2> spine;
  for (const SpinePoint& point : subject.piece().spine) spine.push_back(on_page(point.point));
  if (spine.size() > 1)
    marks.push_back(stroked_mark(Part::drawing, polyline_path(spine), {{0.6, 0.61, 0.64, 1}, 0.7, {}, false}));
  for (const NamedSupport& support : subject.supports) {
    if (!support.is_foot) continue;
    const Support& what = subject.piece().supports[support.support];
    const double wide = std::max(2.0, plan.placement.length(what.width_m)),
                 deep = std::max(2.0, plan.placement.length(what.depth_m));
    const Point2 p = on_page(support.place);
    marks.push_back(shape_mark(Part::drawing, rect_path({p.x - wide / 2, p.y - deep / 2, wide, deep}),
                               {0.88, 0.88, 0.9, 1}, {ink_text, mm_strong, {}, false}));
    marks.push_back(filled_mark(Part::drawing, circle_path(p, 0.8), ink_text));
  }
  std::vector<Rect> taken;
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  for (std::size_t i = 0; i < subject.lines.size(); ++i) {
    const AnchoredLine& line = subject.lines[i];
    const Point2 from = on_page(line.run.from), to = on_page(line.run.to);
    marks.push_back(line_mark(Part::drawing, from, to, mm_line));
    add_anchor_mark(marks, subject.placed().lines[line.line].anchor, to);
    PicturePlace place{to, {to.x >= from.x ? 1.0 : -1.0, 0}};
    const std::string name = line_name(i);
    Rect box;
    if (find_room_for_label(plan, place, text_width(name, style), 3.5, 1.9, taken, box))
      marks.push_back(text_mark(Part::dimension, box, name, style));
  }
  const double y = room.bottom() - foot + 1;
  marks.push_back(text_mark(Part::dimension, {room.x, y, room.width, 3.8}, "Front: the audience stands here",
                            type(pt_caption, ink_quiet, Face::regular, Across::centre)));
}

}  // namespace quadrille
