// Scene to marks.
#include "studio/drawing/scene_marks.hpp"

#include <algorithm>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/figure.hpp"
#include "studio/drawing/site_marks.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr double letter_height =
    1.5;  // mm, where the ball is large enough; small and quiet, so that it stays a balloon

void add_shape(const SceneBalloon& b, const Placement& at, const SceneLook& look, Marks& marks) {
  BalloonMark mark;
  mark.centre = at.on_page(b.x_m, b.z_m);
  mark.radius = at.length(b.radius_m);
  mark.neck = at.on_page(b.neck_x_m, b.neck_z_m);
  mark.ink = b.ink, mark.finish = b.finish;
  const bool has_letter = b.slot < std::uint32_t{most_slots};  // a slot beyond is a plugin's mistake
  if (look.letters && has_letter && mark.radius >= look.letter_radius) {
    mark.letter = slot_letter(b.slot);
    mark.letter_share = std::clamp(letter_height / mark.radius, 0.4, 0.7);
  }
  marks.push_back({Part::drawing, mark});
}

void add_shape(const SceneRod& rod, const Placement& at, const SceneLook&, Marks& marks) {
  std::vector<Point2> points;
  for (const Point2& p : rod.points_m) points.push_back(at.on_page(p.x, p.y));
  const double width = std::max(at.length(rod.width_m), 0.12);
  // Three strokes over one path: edge, tube, and the light along it.
  Mark mark = stroked_mark(Part::drawing, polyline_path(points), {{0.42, 0.43, 0.45, 1}, width, {}, false});
  auto& strokes = std::get<PathMark>(mark.shape).stroke;
  strokes.push_back({{0.66, 0.67, 0.69, 1}, width * 0.72, {}, false});
  strokes.push_back({{0.86, 0.87, 0.88, 1}, width * 0.28, {}, false});
  marks.push_back(std::move(mark));
}

void add_shape(const ScenePlate& plate, const Placement& at, const SceneLook&, Marks& marks) {
  const Point2 corner = at.on_page(plate.x_m - plate.width_m / 2, plate.z_m + plate_thickness_m);
  const Rect rect{corner.x, corner.y, at.length(plate.width_m), std::max(at.length(plate_thickness_m), 0.4)};
  marks.push_back(
      shape_mark(Part::drawing, rect_path(rect), {0.55, 0.56, 0.58, 1}, {{0.35, 0.36, 0.38, 1}, 0.13, {}, false}));
}

void add_shape(const SceneLine& line, const Placement& at, const SceneLook& look, Marks& marks) {
  const Point2 from = at.on_page(line.from_m.x, line.from_m.y), to = at.on_page(line.to_m.x, line.to_m.y);
  Pen pen{look.line, mm_line, {}, false};
  if (!line.in_plane) pen.dashes = {1.6, 0.9};
  // A pale edge keeps it visible where it runs over balloons.
  Mark mark = stroked_mark(Part::line, line_path(from, to), {{1, 1, 1, 0.6}, 2 * mm_line, {}, false});
  std::get<PathMark>(mark.shape).stroke.push_back(std::move(pen));
  marks.push_back(std::move(mark));
  if (!line.cut_off) add_anchor_mark(marks, line.anchor, to);
}

Ink faint(Ink ink, double opacity) {
  ink.opacity = opacity;
  return ink;
}

/// The wall's face and its outline; between them the photo, which shows the very wall.
void add_wall_and_photo(const Scene& scene, const Placement& at, const SceneLook& look, Marks& marks) {
  if (scene.wall) marks.push_back(filled_mark(Part::drawing, rect_path(at.rect(*scene.wall)), look.wall));
  if (scene.backdrop && look.photo != PhotoLook::none) {
    PictureMark photo{at.rect(scene.backdrop->extent), {}, scene.backdrop->picture, scene.backdrop->fade};
    photo.seen = look.photo == PhotoLook::whole ? photo.box : at.rect(scene.extent);
    marks.push_back({Part::backdrop, std::move(photo)});
  }
  if (scene.wall)
    marks.push_back(
        stroked_mark(Part::drawing, rect_path(at.rect(*scene.wall)), {faint(look.line, 0.35), 0.13, {}, false}));
}

void add_box(const ScenePiece& piece, const Placement& at, const SceneLook& look, Marks& marks) {
  const Rect r = at.rect(piece.extent);
  marks.push_back(filled_mark(Part::drawing, rect_path(r), {1, 1, 1, 0.85}));
  if (piece.shown == Shown::missing) {
    HatchMark hatch;
    hatch.outline = {{r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}, {r.x, r.bottom()}};
    hatch.spacing = 2.2;
    hatch.pen = {faint(look.line, 0.4), 0.13, {}, false};
    marks.push_back({Part::drawing, std::move(hatch)});
  }
  Pen pen{look.line, 0.25, {}, false};
  if (piece.shown == Shown::refused) pen.dashes = {2, 1.2};
  marks.push_back(stroked_mark(Part::drawing, rect_path(r), pen));
}

std::string box_label(const Scene& scene, std::size_t index) {
  const ScenePiece& piece = scene.pieces[index];
  std::string text = piece_number(scene, index);
  text += (text.empty() ? "" : "  ") + (piece.name.empty() ? std::string("Unnamed piece") : piece.name);
  if (piece.shown == Shown::refused) return text + " (not built)";
  return text + (piece.size_known ? " (as last calculated)" : " (never calculated)");
}

/// A small white label inside the box: what stands here and why it is a box; its number alone where room is short.
void add_box_label(const Scene& scene, std::size_t index, const Placement& at, const SceneLook& look, Marks& marks) {
  const Rect rect = at.rect(scene.pieces[index].extent);
  TextStyle style;
  style.size_pt = 9, style.ink = look.line, style.across = Across::centre, style.down = Down::middle;
  const double padding = 1.5;
  std::string text = box_label(scene, index);
  double width = std::min(rect.width - 2, 60.0) - 2 * padding;
  if (width < 14 || text_height(text, style, width, 6) + 2 > rect.height) {
    text = piece_number(scene, index);
    width = text_width(text, style);
  }
  const double height = text_height(text, style, width, 6);
  if (text.empty() || width > rect.width || height > rect.height) return;
  const Point2 middle = rect.middle();
  const Rect box{middle.x - width / 2, middle.y - height / 2, width, height};
  const Rect label{box.x - padding, box.y - 0.7, box.width + 2 * padding, box.height + 1.4};
  marks.push_back(filled_mark(Part::drawing, rect_path(label), {1, 1, 1, 0.95}));
  marks.push_back({Part::note, TextMark{box, text, style}});
}

/// Adds each kind of item.
struct Painted {
  const Scene& scene;
  const Placement& at;
  const SceneLook& look;
  Marks& marks;
  void add(const SceneBalloon& b) const { add_shape(b, at, look, marks); }
  void add(const SceneRod& rod) const { add_shape(rod, at, look, marks); }
  void add(const ScenePlate& plate) const { add_shape(plate, at, look, marks); }
  void add(const SceneLine& line) const { add_shape(line, at, look, marks); }
  void add(const SceneBox& box) const { add_box(scene.pieces[box.piece], at, look, marks); }
  void add(const SceneStanding& standing) const {
    add_structure(scene.structures[standing.structure], at, look, marks);
  }
};

}  // namespace

Marks scene_marks(const Scene& scene, const Placement& at, const SceneLook& look, double floor_from, double floor_to,
                  const Marks& behind) {
  Marks marks;
  marks.reserve(scene.items.size() + 16);
  add_wall_and_photo(scene, at, look, marks);
  if (look.figure) {
    const Point2 feet = at.on_page(scene.figure_x_m, 0);
    marks.push_back(
        filled_mark(Part::figure, figure_path(feet.x, feet.y, at.length(figure_height_m)), look.figure_ink));
  }
  const Pen floor{look.line, 0.35, {}, false};
  marks.push_back(stroked_mark(Part::floor, line_path({floor_from, at.origin.y}, {floor_to, at.origin.y}), floor));
  add_walkways(scene, at, {floor_from, floor_to}, marks);
  marks.insert(marks.end(), behind.begin(), behind.end());
  const Painted painted{scene, at, look, marks};
  for (const SceneItem& item : scene.items) std::visit([&](const auto& shape) { painted.add(shape); }, item.shape);
  for (std::size_t i = 0; i < scene.pieces.size(); ++i)
    if (scene.pieces[i].shown != Shown::built) add_box_label(scene, i, at, look, marks);
  add_site_labels(scene, at, look, {floor_from, floor_to}, marks);
  return marks;
}

}  // namespace quadrille
