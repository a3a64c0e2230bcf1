#include "studio/drawing/floor_plan_marks.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/room.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/model/lengths.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr Ink ink_selected{0.118, 0.361, 0.659, 1}, ink_face{0.88, 0.89, 0.91, 1}, ink_body{0.93, 0.93, 0.95, 1};
constexpr Ink ink_way{0.72, 0.74, 0.78, 1}, ink_spine{0.5, 0.51, 0.55, 1};
constexpr double grip_mm = 1.8, row_mm = 3.8;

class PlanPainter {
 public:
  PlanPainter(const FloorPlan& plan, const Placement& at, const PlanLook& look) : plan_(plan), at_(at), look_(look) {}

  Marks paint() {
    for (const PlanWalkway& it : plan_.walkways) add_walkway(it);
    add_front();
    if (plan_.outlet) add_outlet(*plan_.outlet);
    for (const PlanPiece& it : plan_.pieces) add_piece(it);
    for (const PlanStructure& it : plan_.structures) add_structure(it);
    for (const PlanLine& it : plan_.lines) add_line(it);
    add_labels();
    return std::move(marks_);
  }

 private:
  bool is_selected(SiteObjectKind kind, const std::string& id) const {
    return look_.selected && look_.selected->kind == kind && look_.selected->id == id;
  }
  /// What of the rectangle can be seen; nothing where none of it can.
  std::optional<Rect> seen(const Rect& r) const {
    const double x = std::max(r.x, look_.room.x), y = std::max(r.y, look_.room.y);
    const double right = std::min(r.right(), look_.room.right()), bottom = std::min(r.bottom(), look_.room.bottom());
    if (x > right || y > bottom) return std::nullopt;
    return Rect{x, y, right - x, bottom - y};
  }
  Pen pen(bool selected, double width = mm_line, Ink ink = ink_text) const {
    return {selected ? ink_selected : ink, selected ? 2 * mm_strong : width, {}, false};
  }
  void add_grip(Point2 p) {
    marks_.push_back(shape_mark(Part::site, rect_path({p.x - grip_mm / 2, p.y - grip_mm / 2, grip_mm, grip_mm}),
                                ink_paper, {ink_selected, mm_strong, {}, false}));
  }
  void label(const std::string& text, const Point2& at, bool selected = false);
  void add_walkway(const PlanWalkway& it);
  void add_front();
  void add_outlet(const PlanOutlet& outlet);
  void add_piece(const PlanPiece& it);
  void add_structure(const PlanStructure& it);
  void add_line(const PlanLine& it);
  void add_labels();
  std::optional<Point2> selected_at() const;

  const FloorPlan& plan_;
  const Placement& at_;
  const PlanLook& look_;
  Marks marks_;
  std::vector<Rect> taken_;
};

/// Text about `at` on the ground's white, kept within the room; where something is written already, beneath or above it.
void PlanPainter::label(const std::string& text, const Point2& at, bool selected) {
  if (text.empty()) return;
  const TextStyle style = type(pt_caption, selected ? ink_selected : ink_text, selected ? Face::bold : Face::regular,
                               Across::centre, Down::middle);
  const Rect& room = look_.room;
  const double width = std::min(text_width(text, style) + 1.2, room.width);
  if (!selected && (at.x < room.x || at.x > room.right() || at.y < room.y || at.y > room.bottom())) return;
  const auto put = [&](const Rect& box) {
    Ink ground = ink_paper;
    ground.opacity = 0.85;
    marks_.push_back(filled_mark(Part::site, rect_path(box), ground));
    marks_.push_back(text_mark(Part::site, box, text, style));
    taken_.push_back(box);
  };
  Rect box{std::clamp(at.x - width / 2, room.x, std::max(room.x, room.right() - width)), 0, width, row_mm};
  for (const double off : {0.0, row_mm, -row_mm, 2 * row_mm, -2 * row_mm, 3 * row_mm, -3 * row_mm}) {
    if (std::abs(off) > 2.5 * row_mm && !selected) continue;
    box.y = at.y + off - row_mm / 2;
    if (box.y >= room.y && box.bottom() <= room.bottom() && !meets_any(box, taken_)) return put(box);
  }
  if (!selected) return;
  box.y = std::clamp(at.y - row_mm / 2, room.y, std::max(room.y, room.bottom() - row_mm));
  put(box);
}

void PlanPainter::add_walkway(const PlanWalkway& it) {
  const Rect whole = at_.rect(it.body);
  const auto rect = seen(whole);
  if (!rect) return;
  const bool selected = is_selected(SiteObjectKind::walkway, it.id);
  HatchMark hatch;
  hatch.outline = {
      {rect->x, rect->y}, {rect->right(), rect->y}, {rect->right(), rect->bottom()}, {rect->x, rect->bottom()}};
  hatch.spacing = 2.4, hatch.pen = {ink_way, mm_hair, {}, false};
  if (rect->width > 0.2 && rect->height > 0.2) marks_.push_back({Part::site, std::move(hatch)});
  marks_.push_back(stroked_mark(Part::site, rect_path(*rect), pen(selected, mm_line, ink_quiet)));
  if (!selected) return;
  const Point2 middle = whole.middle();
  for (const Point2& p : {Point2{whole.x, middle.y}, Point2{whole.right(), middle.y}, Point2{middle.x, whole.y},
                          Point2{middle.x, whole.bottom()}})
    add_grip(p);
}

void PlanPainter::add_front() {
  const double y = at_.on_page(0, 0).y;
  if (y > look_.room.y && y < look_.room.bottom())
    marks_.push_back(stroked_mark(Part::floor, line_path({look_.room.x, y}, {look_.room.right(), y}),
                                  {ink_rule, mm_strong, {3, 1.5}, false}));
  if (plan_.wall)
    if (const auto rect = seen(at_.rect(*plan_.wall)))
      marks_.push_back(shape_mark(Part::site, rect_path(*rect), ink_face, pen(false, mm_line, ink_quiet)));
}

void PlanPainter::add_outlet(const PlanOutlet& outlet) {
  const bool selected = is_selected(SiteObjectKind::outlet, "");
  const Point2 from = at_.on_page(outlet.from.x, outlet.from.y);
  const Point2 grip = at_.on_page(outlet.grip().x, outlet.grip().y);
  const Pen ring{selected ? ink_selected : ink_quiet, selected ? mm_strong : mm_line, {1.2, 1.2}, false};
  const double radius = at_.length(outlet.distance_m);
  // A ring far beyond the room is a line all round that nobody sees, and costs a painter much.
  if (radius < 5000) marks_.push_back(stroked_mark(Part::site, circle_path(from, radius), ring));
  marks_.push_back(stroked_mark(Part::site, line_path(from, grip), ring));
  // The sign of an outlet: a ring with two pins.
  marks_.push_back(shape_mark(Part::site, circle_path(grip, 1.7), ink_paper, pen(selected)));
  for (const double aside : {-0.6, 0.6})
    marks_.push_back(filled_mark(Part::site, circle_path({grip.x + aside, grip.y}, 0.3), ink_text));
}

void PlanPainter::add_piece(const PlanPiece& it) {
  const bool selected = is_selected(SiteObjectKind::piece, it.id);
  const auto rect = seen(at_.rect(it.body));
  if (!rect) return;
  marks_.push_back(shape_mark(Part::drawing, rect_path(*rect), ink_body, pen(selected, mm_line, ink_quiet)));
  std::vector<Point2> spine;
  for (const Point2& p : it.spine) spine.push_back(at_.on_page(p.x, p.y));
  if (spine.size() > 1) marks_.push_back(stroked_mark(Part::drawing, polyline_path(spine), {ink_spine, 0.7, {}, true}));
  for (const Extent& foot : it.feet) {
    const Rect plate = at_.rect(foot);
    const double wide = std::max(plate.width, 1.2), deep = std::max(plate.height, 1.2);
    const Point2 middle = plate.middle();
    marks_.push_back(shape_mark(Part::drawing, rect_path({middle.x - wide / 2, middle.y - deep / 2, wide, deep}),
                                ink_face, pen(false)));
  }
}

void PlanPainter::add_structure(const PlanStructure& it) {
  const bool selected = is_selected(SiteObjectKind::structure, it.id);
  const Rect rect = at_.rect(it.body);
  if (!seen(rect)) return;
  const Point2 middle = rect.middle();
  const double wide = std::max(rect.width, 1.6), deep = std::max(rect.height, 1.6);
  const PathSteps shape = it.kind == StructureKind::tree
                              ? circle_path(middle, std::max(wide, deep) / 2)
                              : rect_path({middle.x - wide / 2, middle.y - deep / 2, wide, deep});
  Pen outline = pen(selected);
  if (!it.size_known && !selected) outline.dashes = {1.0, 0.7};
  marks_.push_back(shape_mark(Part::site, shape, {0.78, 0.79, 0.82, 1}, outline));
  taken_.push_back({middle.x - 0.8, middle.y - 0.8, 1.6, 1.6});
}

/// Dark on a light edge, so that it shows over everything; dashed where it cannot run.
void PlanPainter::add_line(const PlanLine& it) {
  const bool selected = look_.selected && *look_.selected == it.object;
  const Point2 from = at_.on_page(it.from.x, it.from.y), to = at_.on_page(it.to.x, it.to.y);
  Mark mark = stroked_mark(Part::line, line_path(from, to), {ink_paper, 1.1, {}, false});
  Pen line = pen(selected, mm_strong);
  if (!it.runs) line.dashes = {1.6, 1.0};
  std::get<PathMark>(mark.shape).stroke.push_back(line);
  marks_.push_back(std::move(mark));
  if (selected && it.anchor != AnchorKind::structure)
    marks_.push_back(shape_mark(Part::line, circle_path(to, 2.2), ink_paper, {ink_selected, mm_strong, {}, false}));
  add_anchor_mark(marks_, it.anchor, to);
  taken_.push_back({to.x - 1.4, to.y - 1.4, 2.8, 2.8});
}

std::optional<Point2> PlanPainter::selected_at() const {
  if (!look_.selected) return std::nullopt;
  for (const PlanStructure& it : plan_.structures)
    if (is_selected(SiteObjectKind::structure, it.id)) return at_.rect(it.body).middle();
  for (const PlanWalkway& it : plan_.walkways)
    if (is_selected(SiteObjectKind::walkway, it.id)) return at_.rect(it.body).middle();
  for (const PlanPiece& it : plan_.pieces)
    if (is_selected(SiteObjectKind::piece, it.id)) return at_.rect(it.body).middle();
  for (const PlanLine& it : plan_.lines)
    if (*look_.selected == it.object) return at_.on_page(it.to.x, it.to.y);
  if (plan_.outlet && look_.selected->kind == SiteObjectKind::outlet)
    return at_.on_page(plan_.outlet->grip().x, plan_.outlet->grip().y);
  return std::nullopt;
}

/// What is selected first, so that it has its place whatever lies around it.
void PlanPainter::add_labels() {
  const Rect& room = look_.room;
  const TextStyle quiet = type(pt_caption, ink_quiet, Face::regular, Across::centre, Down::middle);
  double beside = room.x;  // where there is room beside the scale bar
  if (room.width > 90) {
    const ScaleBar bar =
        scale_bar(1000 / at_.mm_per_metre, look_.units, {room.x + 2, room.bottom() - scale_bar_height - 1}, 40);
    marks_.insert(marks_.end(), bar.marks.begin(), bar.marks.end());
    beside += bar.length_mm + 12;
    taken_.push_back({room.x, room.bottom() - scale_bar_height - 2, bar.length_mm + 12, scale_bar_height + 2});
  }
  const char* const front = "Front: the audience stands here";
  const double wide = text_width(front, quiet) + 1;
  const Rect words{std::max(room.x + (room.width - wide) / 2, beside), room.bottom() - row_mm - 0.5, wide, row_mm};
  if (words.right() <= room.right()) {
    marks_.push_back(text_mark(Part::note, words, front, quiet));
    taken_.push_back(words);
  }
  if (const auto at = selected_at())
    label(look_.selected_text, {at->x, at->y + (at->y + 6 < room.bottom() ? 4.5 : -4.5)}, true);
  for (const PlanPiece& it : plan_.pieces) label(it.name, at_.rect(it.body).middle());
  for (const PlanStructure& it : plan_.structures)
    label(it.name, {at_.rect(it.body).middle().x, at_.rect(it.body).y - row_mm / 2 - 0.6});
  for (const PlanWalkway& it : plan_.walkways)
    if (const auto rect = seen(at_.rect(it.body))) label(it.name, rect->middle());
  if (!plan_.outlet) return;
  const Point2 grip = at_.on_page(plan_.outlet->grip().x, plan_.outlet->grip().y);
  label("Outlet, " + print_length(plan_.outlet->distance_m, lengths_in(look_.units)) + " away",
        {std::clamp(grip.x, room.x, room.right()), grip.y - 4});
}

}  // namespace

Marks floor_plan_marks(const FloorPlan& plan, const Placement& placement, const PlanLook& look) {
  return PlanPainter(plan, placement, look).paint();
}

}  // namespace quadrille
