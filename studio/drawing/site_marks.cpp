// Light lines for what the site has, and labels that keep out of each other's way.
#include "studio/drawing/site_marks.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "studio/drawing/room.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr Ink ink_site{0.60, 0.62, 0.66, 1}, ink_site_face{0.90, 0.92, 0.94, 0.4}, ink_walkway{0.87, 0.90, 0.94, 1};

TextStyle label_style(Across across = Across::centre, Down down = Down::bottom) {
  return type(pt_caption, ink_quiet, Face::regular, across, down);
}

Pen light_pen(double width = mm_line) { return {ink_site, width, {}, false}; }

void add_line(Marks& marks, Point2 from, Point2 to, double width = mm_line) {
  marks.push_back(stroked_mark(Part::site, line_path(from, to), light_pen(width)));
}

/// A face whose top edge is missing where the structure is broken off.
void add_face(Marks& marks, const Rect& r, bool open) {
  marks.push_back(filled_mark(Part::site, rect_path(r), ink_site_face));
  std::vector<Point2> outline{{r.x, r.bottom()}, {r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}};
  if (!open) {
    marks.push_back(stroked_mark(Part::site, polyline_path(outline), light_pen()));
    return;
  }
  add_line(marks, outline[0], outline[1]);
  add_line(marks, outline[3], outline[2]);
}

/// The usual sign for something that goes on: a slanted pair of strokes across its end.
void add_break(Marks& marks, const Rect& r) {
  const double reach = std::max(r.width / 2, 0.8) + 0.6, x = r.middle().x;
  for (const double y : {r.y, r.y + 0.9}) add_line(marks, {x - reach, y + 0.5}, {x + reach, y - 0.5}, mm_hair);
}

void add_tree(Marks& marks, const Rect& r, bool open) {
  const double trunk = std::max(r.width * 0.12, 0.5), x = r.middle().x, crown = r.height * 0.62;
  add_face(marks, {x - trunk / 2, r.y + crown * 0.8, trunk, r.height - crown * 0.8}, true);
  PathSteps round = circle_path({0, 0}, 1);
  for (PathStep& s : round)
    for (Point2* p : {&s.to, &s.first, &s.second}) *p = {x + p->x * r.width / 2, r.y + crown / 2 + p->y * crown / 2};
  marks.push_back(shape_mark(Part::site, std::move(round), ink_site_face, light_pen()));
  if (open) add_break(marks, {x - trunk, r.y, 2 * trunk, r.height});
}

void add_railing(Marks& marks, const Rect& r) {
  const int bays = std::max(4, static_cast<int>(std::min(std::round(r.width / std::max(r.height, 1.0)), 60.0)));
  for (int i = 0; i <= bays; ++i)
    add_line(marks, {r.x + i * r.width / bays, r.y}, {r.x + i * r.width / bays, r.bottom()}, mm_hair);
  add_line(marks, {r.x, r.y}, {r.right(), r.y}, mm_strong);
  add_line(marks, {r.x, r.y + r.height * 0.5}, {r.right(), r.y + r.height * 0.5}, mm_hair);
}

/// A beam's height is that of its underside, which is where one ties to.
void add_beam(Marks& marks, const Rect& r, double depth) {
  add_face(marks, {r.x, r.y, r.width, depth}, false);
  for (const double x : {r.x, r.right()}) add_line(marks, {x - 0.5, r.y + depth + 0.6}, {x + 0.5, r.y - 0.6}, mm_hair);
}

void add_vehicle(Marks& marks, const Rect& r) {
  const double wheel = std::min(r.height * 0.16, r.width * 0.12), body = r.height - wheel;
  add_face(marks, {r.x, r.y, r.width, body}, false);
  for (const double share : {0.22, 0.78})
    marks.push_back(shape_mark(Part::site, circle_path({r.x + share * r.width, r.bottom() - wheel}, wheel), ink_paper,
                               light_pen()));
}

/// A top with its cloth down to the floor.
void add_table(Marks& marks, const Rect& r, double top) {
  add_face(marks, r, false);
  add_line(marks, {r.x, r.y + top}, {r.right(), r.y + top}, mm_hair);
}

std::string length_after(const std::optional<LengthStyle>& style, double metres, const char* what) {
  return style && metres > 0 ? ", " + print_length(metres, *style) + what : std::string();
}

struct WalkwayLabel {
  std::string text;
  Rect box;
  std::size_t row = 0;
};

constexpr std::size_t most_walkway_rows = 3;

/// Labels of the walkways that can be seen, in rows in which none meets another; what fits in no row has none.
std::vector<WalkwayLabel> walkway_labels(const Scene& scene, const Placement& at, const SceneLook& look,
                                         const Reach& reach) {
  std::vector<WalkwayLabel> labels;
  for (const SceneWalkway& walkway : scene.walkways) {
    const double left = std::max(at.on_page(walkway.left_m, 0).x, reach.from);
    const double right = std::min(at.on_page(walkway.right_m, 0).x, reach.to);
    if (left >= right || walkway.name.empty()) continue;
    WalkwayLabel label{walkway.name + length_after(look.measures, walkway.right_m - walkway.left_m, " wide"), {}, 0};
    const double width = std::min(text_width(label.text, label_style()), reach.to - reach.from);
    const double x = std::clamp((left + right - width) / 2, reach.from, std::max(reach.from, reach.to - width));
    const auto meets = [&](const WalkwayLabel& other) {
      return other.row == label.row && overlap(other.box, label.box);
    };
    for (; label.row < most_walkway_rows; ++label.row) {
      label.box = {x, at.origin.y + ground_depth + 0.5 + static_cast<double>(label.row) * site_label_row, width, 3.4};
      if (std::ranges::none_of(labels, meets)) break;
    }
    if (label.row < most_walkway_rows) labels.push_back(std::move(label));
  }
  return labels;
}

/// Places for a structure's label, the best first: over its top, to the left or right of that, along its side.
std::vector<TextMark> places_for(const SceneStructure& s, const std::string& text, const Placement& at) {
  const Rect r = at.rect(s.extent());
  const double most = std::max(text_width(text, label_style()) * 0.52, 16.0);
  std::vector<TextMark> places;
  for (const double width : {text_width(text, label_style()), most}) {
    const double height = text_height(text, label_style(), width, 3), y = r.y - 1.2 - height, x = r.middle().x;
    places.push_back({{x - width / 2, y, width, height}, text, label_style()});
    places.push_back({{r.right() - width, y, width, height}, text, label_style(Across::right)});
    places.push_back({{r.x, y, width, height}, text, label_style(Across::left)});
  }
  const double length = text_width(text, label_style()), line = 3.4;
  for (const double x : {r.x - 0.8 - line, r.right() + 0.8}) {
    TextMark turned{{x, r.bottom() - 2 - length, line, length}, text, label_style(Across::left, Down::middle)};
    turned.style.turned = true;
    places.push_back(turned);
  }
  return places;
}

bool lies_on_photo(const Rect& box, const Scene& scene, const Placement& at, const SceneLook& look) {
  return scene.backdrop && look.photo != PhotoLook::none && overlap(box, at.rect(scene.backdrop->extent));
}

}  // namespace

void add_structure(const SceneStructure& s, const Placement& at, const SceneLook&, Marks& marks) {
  Rect r = at.rect(s.extent());
  if (r.width < 0.6) r.x -= (0.6 - r.width) / 2, r.width = 0.6;
  switch (s.kind) {
    case StructureKind::tree:
      add_tree(marks, r, s.is_broken_off());
      return;
    case StructureKind::railing:
      add_railing(marks, r);
      break;
    case StructureKind::beam:
      add_beam(marks, r, at.length(s.beam_depth_m()));
      return;
    case StructureKind::vehicle:
      add_vehicle(marks, r);
      break;
    case StructureKind::table:
      add_table(marks, r, at.length(0.04));
      return;
    case StructureKind::wall:
    case StructureKind::post:
    case StructureKind::other:
      add_face(marks, r, s.is_broken_off());
  }
  if (s.is_broken_off()) add_break(marks, r);
}

void add_walkways(const Scene& scene, const Placement& at, const Reach& reach, Marks& marks) {
  for (const SceneWalkway& walkway : scene.walkways) {
    const double left = std::max(at.on_page(walkway.left_m, 0).x, reach.from);
    const double right = std::min(at.on_page(walkway.right_m, 0).x, reach.to);
    if (left >= right) continue;
    const double y = at.origin.y;
    marks.push_back(filled_mark(Part::site, rect_path({left, y, right - left, ground_depth}), ink_walkway));
    for (const double x : {left, right}) add_line(marks, {x, y}, {x, y + ground_depth});
  }
}

std::size_t walkway_rows(const Scene& scene, const Placement& at, const SceneLook& look, const Reach& reach) {
  std::size_t rows = 0;
  for (const WalkwayLabel& label : walkway_labels(scene, at, look, reach)) rows = std::max(rows, label.row + 1);
  return rows;
}

void add_site_labels(const Scene& scene, const Placement& at, const SceneLook& look, const Reach& reach, Marks& marks) {
  for (WalkwayLabel& label : walkway_labels(scene, at, look, reach))
    marks.push_back(text_mark(Part::site, label.box, std::move(label.text), label_style(Across::centre, Down::middle)));
  std::vector<Rect> taken = text_boxes(marks);
  for (const ScenePiece& piece : scene.pieces) taken.push_back(at.rect(piece.body()));
  for (const SceneStructure& other : scene.structures) taken.push_back(at.rect(other.extent()));
  const double top = at.on_page(0, scene.extent.top).y - site_label_headroom;
  for (const SceneStructure& s : scene.structures) {
    if (s.name.empty()) continue;
    const std::string text = s.name + (s.width_known ? length_after(look.measures, 2 * s.half_width_m, " wide") : "") +
                             length_after(look.measures, s.height_m, s.width_known ? " high" : "");
    for (const TextMark& place : places_for(s, text, at)) {
      const Rect& box = place.box;
      if (box.x < reach.from || box.right() > reach.to || box.y < top || meets_any(box, taken)) continue;
      taken.push_back(box);
      if (lies_on_photo(box, scene, at, look)) marks.push_back(filled_mark(Part::site, rect_path(box), ink_paper));
      marks.push_back({Part::site, place});
      break;
    }
  }
}

}  // namespace quadrille
