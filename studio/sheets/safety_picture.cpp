#include "studio/sheets/safety_picture.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/floor_plan.hpp"
#include "studio/drawing/room.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/drawing/site_marks.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/safety_front.hpp"
#include "studio/sheets/safety_view.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {
namespace {

constexpr const char* front_words = "Front: the audience stands here";
const TextStyle front_style = type(pt_caption, ink_quiet, Face::regular, Across::centre);
constexpr Ink spine_ink{0.6, 0.61, 0.64, 1}, plate_ink{0.88, 0.88, 0.9, 1}, way_ink{0.8, 0.8, 0.82, 1},
    structure_ink{0.93, 0.93, 0.94, 1};

class SafetyPainter {
 public:
  SafetyPainter(Marks& marks, const SafetySubject& subject, const SafetyView& view, const Setting& setting,
                const Rect& room)
      : marks_(marks), subject_(subject), view_(view), setting_(setting) {
    const double k = 1000 / view.scale;
    const double left = room.x + (room.width - view.front.width() * k) / 2 - view.front.left * k;
    const double floor = room.y + view_caption + view_headroom + view.front.top * k;
    front_ = {room, view.front, view.scale, {k, {left, floor}}, true};
    const double plan_top = floor - view.front.floor * k + view_under_floor + view_between;
    plan_ = {room, view.plan, view.scale, {k, {left, plan_top + view.plan.top * k}}, false};
    front_.room.height = plan_top - view_between - room.y;
    plan_.room.y = plan_top - 6;  // labels keep 6 mm off a picture's top
    plan_.room.height = view.plan.height() * k + view_front_label + 6;
    bar_y_ = plan_.room.bottom() + 2;
  }

  void paint() {
    add_picture_caption(marks_, front_, "From the front, and from above beneath it", setting_.units);
    add_front();
    taken_plan_.push_back(front_label());
    add_plan_ground();
    for (const std::size_t index : view_.pieces) add_piece_from_above(subject_.pieces[index]);
    for (const std::size_t index : view_.pieces) add_lines_from_above(subject_.pieces[index]);
    for (const std::size_t index : view_.pieces) add_plan_labels(subject_.pieces[index]);
    for (const auto& [at, name] : structures_)
      if (!name.empty()) label(plan_, {at, {0, -1}}, name, taken_plan_, 0.5);
    add_foot();
  }

 private:
  Point2 on_front(const SafetyPiece& piece, const Vec3& p) const {
    return front_.placement.on_page(piece.placed->x_m + p.x(), p.z());
  }
  Point2 on_plan(const SafetyPiece& piece, const Vec3& p) const {
    return plan_.placement.on_page(piece.placed->x_m + p.x(), piece.placed->y_m + p.y());
  }
  void add_front();
  void add_front_lines();
  void label_under_floor(const Point2& anchor, const std::string& text, const std::vector<double>& others);
  void add_plan_ground();
  void add_piece_from_above(const SafetyPiece& piece);
  void add_lines_from_above(const SafetyPiece& piece);
  void add_plan_labels(const SafetyPiece& piece);
  void add_foot();
  std::string legend() const;
  void add_line(const Point2& from, const Point2& to, const Vec3& run, bool from_above);
  bool label(const BuildPicture& picture, const PicturePlace& at, const std::string& text, std::vector<Rect>& taken,
             double off);
  void number(const BuildPicture& picture, const PicturePlace& at, const SafetyPiece& piece, std::vector<Rect>& taken);
  std::string whole_label(const SafetyLine& line) const;
  Rect front_label() const {
    const double wide = text_width(front_words, front_style) + 1;
    return {plan_.room.middle().x - wide / 2, plan_.placement.rect(view_.plan).bottom() + 0.8, wide, 3.8};
  }

  Marks& marks_;
  const SafetySubject& subject_;
  const SafetyView& view_;
  const Setting& setting_;
  BuildPicture front_, plan_;
  double bar_y_ = 0;
  std::vector<Rect> taken_front_, taken_plan_;
  std::vector<std::pair<Point2, std::string>> structures_;  // that are drawn: the middle of the back, and the name
  bool has_walkway_ = false;
};

std::string SafetyPainter::whole_label(const SafetyLine& line) const {
  std::string text = line.label + ": " + print_length(line.laid.length_m, lengths_in(setting_.units)) + ", " +
                     print_fixed(line.laid.to_ground_rad * 180 / pi, 0) + "°";
  if (line.pull_n) text += ", " + print_pull(*line.pull_n, setting_.units);
  return text;
}

bool SafetyPainter::label(const BuildPicture& picture, const PicturePlace& at, const std::string& text,
                          std::vector<Rect>& taken, double off) {
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre);
  Rect box;
  if (!find_room_for_label(picture, at, text_width(text, style) + 0.6, 3.7, off, taken, box)) return false;
  marks_.push_back(filled_mark(Part::drawing, rect_path(box), ink_paper));
  marks_.push_back(text_mark(Part::dimension, box, text, style));
  return true;
}

void SafetyPainter::number(const BuildPicture& picture, const PicturePlace& at, const SafetyPiece& piece,
                           std::vector<Rect>& taken) {
  if (subject_.pieces.size() < 2) return;
  const std::string number = std::to_string(piece.number);
  const double wide = 2 * ring_half_width(number) + 0.4;
  Rect box;
  if (find_room_for_label(picture, at, wide, 4.6, 1.2, taken, box))
    add_ring(marks_, Part::dimension, box.middle(), number);
}

/// Black on a narrow white edge, so that it shows on balloons of any colour. From the front dashed where it runs out of the
/// picture's plane, as on all sheets.
void SafetyPainter::add_line(const Point2& from, const Point2& to, const Vec3& run, bool from_above) {
  Pen pen{ink_text, mm_strong, {}, false};
  if (!from_above && is_out_of_plane(run)) pen.dashes = {1.6, 0.9};
  Mark mark = stroked_mark(Part::drawing, line_path(from, to), {ink_paper, mm_strong + 0.3, {}, false});
  std::get<PathMark>(mark.shape).stroke.push_back(pen);
  marks_.push_back(std::move(mark));
}

void SafetyPainter::add_front() {
  SceneLook look;
  look.line = ink_text, look.measures = lengths_in(setting_.units);
  Marks scene = scene_marks(view_.scene, front_.placement, look, front_.room.x, front_.room.right());
  taken_front_ = text_boxes(scene);
  std::ranges::move(scene, std::back_inserter(marks_));
  add_front_lines();
  for (const std::size_t index : view_.pieces) {
    const SafetyPiece& piece = subject_.pieces[index];
    const auto shown = std::ranges::find(view_.scene.pieces, piece.placed->id, &ScenePiece::id);
    if (shown == view_.scene.pieces.end()) continue;
    const double middle = (shown->crown_left_m + shown->crown_right_m) / 2;
    number(front_, {front_.placement.on_page(middle, shown->extent.top), {0, -1}}, piece, taken_front_);
  }
}

void SafetyPainter::add_front_lines() {
  std::vector<FrontLine> all;
  for (const std::size_t index : view_.pieces) {
    const SafetyPiece& piece = subject_.pieces[index];
    for (const SafetyLine& line : piece.lines)
      all.push_back({on_front(piece, line.laid.run.from), on_front(piece, line.laid.run.to),
                     line.laid.run.to - line.laid.run.from, piece.placed->lines[line.laid.line].anchor, line.label});
  }
  all = seen_from_front(all);
  for (const FrontLine& line : all) {
    add_line(line.from, line.to, line.run, false);
    add_anchor_mark(marks_, line.anchor, line.to);
    taken_front_.push_back({line.to.x - 1.3, line.to.y - 1.3, 2.6, 2.6});
  }
  for (const FrontLine& line : all) {
    std::vector<double> others;
    for (const FrontLine& other : all)
      if (&other != &line) others.push_back(other.to.x);
    label_under_floor(line.to, line.label, others);
  }
}

/// Beneath the floor, in the first row that has room, with a line down from the anchor: never on what is drawn, nor under
/// the anchors at `others`, whose own lines come down there.
void SafetyPainter::label_under_floor(const Point2& anchor, const std::string& text,
                                      const std::vector<double>& others) {
  constexpr double first = 2.6, row = 4.0, height = 3.7, least_leader = 0.2, clear = 0.8;
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre);
  const double width = text_width(text, style) + 0.6, floor = front_.placement.origin.y;
  for (double top = floor + first; top + height <= floor + view_under_floor + view_between; top += row)
    for (const double share : {0.5, 0.3, 0.7, clear / width, 1 - clear / width}) {
      const Rect box{anchor.x - share * width, top, width, height};
      if (std::ranges::any_of(others, [&](double x) { return x > box.x - clear && x < box.right() + clear; })) continue;
      // The anchor's own mark is where the leader begins.
      const Rect leader{anchor.x - 0.3, std::max(anchor.y, floor) + 1.4, 0.6, top - std::max(anchor.y, floor) - 1.4};
      if (box.x < front_.room.x || box.right() > front_.room.right() || meets_any(box, taken_front_)) continue;
      if (leader.height > 0 && meets_any(leader, taken_front_)) continue;
      if (top - (anchor.y + 1.3) > least_leader)
        marks_.push_back(line_mark(Part::dimension, {anchor.x, anchor.y + 1.3}, {anchor.x, top}, mm_hair, ink_quiet));
      marks_.push_back(text_mark(Part::dimension, box, text, style));
      taken_front_.push_back(box);
      if (leader.height > 0) taken_front_.push_back(leader);
      return;
    }
}

void SafetyPainter::add_plan_ground() {
  const Rect field = plan_.placement.rect(view_.plan);
  const TextStyle style = type(pt_caption, ink_quiet, Face::regular, Across::centre);
  for (const Walkway& way : subject_.area->walkways) {
    const Rect whole = plan_.placement.rect({way.x_m, way.x_m + way.width_m, way.y_m, way.y_m + way.depth_m});
    const double left = std::max(whole.x, field.x), right = std::min(whole.right(), field.right());
    const double top = std::max(whole.y, field.y), bottom = std::min(whole.bottom(), field.bottom());
    if (!(left < right) || !(top < bottom)) continue;
    const Rect rect{left, top, right - left, bottom - top};
    HatchMark hatch;
    hatch.outline = {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
    hatch.spacing = 2.4, hatch.pen = {way_ink, mm_hair, {}, false};
    marks_.push_back({Part::site, std::move(hatch)});
    has_walkway_ = true;
    marks_.push_back(stroked_mark(Part::site, rect_path(rect), {ink_quiet, mm_hair, {1.2, 0.8}, false}));
    const std::string name = way.name.empty() ? "walkway" : way.name;
    const double wide = text_width(name, style) + 0.8;
    const Rect box{rect.middle().x - wide / 2, top + 0.6, wide, 3.7};
    if (wide > rect.width || rect.height < 5 || meets_any(box, taken_plan_)) continue;
    marks_.push_back(filled_mark(Part::site, rect_path(box), ink_paper));
    marks_.push_back(text_mark(Part::site, box, name, style));
    taken_plan_.push_back(box);
  }
  for (const PlanStructure& structure : floor_plan_of(view_.area, setting_.input.built).structures) {
    const Rect whole = plan_.placement.rect(structure.body);
    const Point2 at = whole.middle();
    const double wide = std::max(2.2, whole.width), deep = std::max(2.2, whole.height);
    const double left = std::max(at.x - wide / 2, field.x - 8), right = std::min(at.x + wide / 2, field.right() + 8);
    const double top = std::max(at.y - deep / 2, field.y), bottom = std::min(at.y + deep / 2, field.bottom());
    if (!(left < right) || !(top < bottom)) continue;
    const Rect box{left, top, right - left, bottom - top};
    marks_.push_back(shape_mark(Part::site, rect_path(box), structure_ink, {ink_text, mm_line, {}, false}));
    // Labels keep off a post, and find room on a table.
    if (deep < 6) taken_plan_.push_back(box);
    structures_.push_back({{box.middle().x, box.y}, structure.name});
  }
}

void SafetyPainter::add_piece_from_above(const SafetyPiece& piece) {
  std::vector<Point2> spine;
  for (const SpinePoint& point : piece.piece->spine) spine.push_back(on_plan(piece, point.point));
  if (spine.size() < 2) {
    spine.clear();
    for (const Vec3& node : piece.piece->frame.nodes) spine.push_back(on_plan(piece, node));
    std::ranges::sort(spine, {}, &Point2::x);
  }
  if (spine.size() > 1) marks_.push_back(stroked_mark(Part::drawing, polyline_path(spine), {spine_ink, 1.2, {}, true}));
  for (const NamedSupport& support : piece.supports) {
    const Support& what = piece.piece->supports[support.support];
    const Point2 p = on_plan(piece, support.place);
    if (!support.is_foot) {
      marks_.push_back(shape_mark(Part::drawing, circle_path(p, 0.8), ink_paper, {ink_text, mm_line, {}, false}));
      continue;
    }
    const double wide = std::max(1.6, plan_.placement.length(what.width_m)),
                 deep = std::max(1.6, plan_.placement.length(what.depth_m));
    const Rect plate{p.x - wide / 2, p.y - deep / 2, wide, deep};
    marks_.push_back(shape_mark(Part::drawing, rect_path(plate), plate_ink, {ink_text, mm_line, {}, false}));
    taken_plan_.push_back(plate);
  }
}

void SafetyPainter::add_lines_from_above(const SafetyPiece& piece) {
  for (const SafetyLine& line : piece.lines) {
    const Point2 from = on_plan(piece, line.laid.run.from), to = on_plan(piece, line.laid.run.to);
    add_line(from, to, line.laid.run.to - line.laid.run.from, true);
    add_anchor_mark(marks_, piece.placed->lines[line.laid.line].anchor, to);
    taken_plan_.push_back({to.x - 1.3, to.y - 1.3, 2.6, 2.6});
  }
}

/// The whole of what is known of a line where there is room about its anchor, else its label alone.
void SafetyPainter::add_plan_labels(const SafetyPiece& piece) {
  for (const SafetyLine& line : piece.lines) {
    const Point2 from = on_plan(piece, line.laid.run.from), to = on_plan(piece, line.laid.run.to);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const Point2 out = length > 0.1 ? Point2{(to.x - from.x) / length, (to.y - from.y) / length} : Point2{0, 1};
    bool done = false;
    for (const std::string& text : {whole_label(line), line.label})
      for (const Point2& way : {Point2{out.x < 0 ? -1.0 : 1.0, 0}, Point2{0, out.y < 0 ? -1.0 : 1.0}, out})
        if (!done) done = label(plan_, {to, way}, text, taken_plan_, 2.0);
  }
  if (const auto ground = ground_of(piece)) {
    const Point2 at = plan_.placement.on_page(piece.placed->x_m, piece.placed->y_m);
    number(plan_, {at, {0, 1}}, piece, taken_plan_);
  }
}

/// What the signs mean that are there.
std::string SafetyPainter::legend() const {
  std::set<AnchorKind> anchors;
  bool feet = false, hooks = false;
  for (const std::size_t index : view_.pieces) {
    const SafetyPiece& piece = subject_.pieces[index];
    for (const SafetyLine& line : piece.lines) anchors.insert(piece.placed->lines[line.laid.line].anchor);
    for (const NamedSupport& support : piece.supports) (support.is_foot ? feet : hooks) = true;
  }
  std::string text;
  const auto say = [&](bool is_there, const char* what) {
    if (is_there) text += std::string(text.empty() ? "" : " ") + what;
  };
  say(anchors.contains(AnchorKind::stake), "Cross: stake.");
  say(anchors.contains(AnchorKind::dead_weight), "Square: dead weight.");
  say(anchors.contains(AnchorKind::structure), "Diamond: tied to what stands there.");
  say(feet && anchors.empty(), "Rectangles: feet.");
  say(hooks, "Rings: where it hangs.");
  say(has_walkway_, "Hatched: walkway.");
  say(!anchors.empty(),
      "From the front, dashed lines run out in front or behind. Beside a line: its length, its angle to the ground, "
      "and "
      "its greatest pull in the gust that is forecast.");
  return text;
}

void SafetyPainter::add_foot() {
  marks_.push_back(text_mark(Part::note, front_label(), front_words, front_style));
  const ScaleBar bar = scale_bar(view_.scale, setting_.units, {plan_.room.x + 1, bar_y_}, plan_.room.width * 0.4);
  marks_.insert(marks_.end(), bar.marks.begin(), bar.marks.end());
  const double x = plan_.room.x + bar.length_mm + 14;
  marks_.push_back(
      text_mark(Part::scale_bar, {x, bar_y_ - 0.6, plan_.room.right() - x, 11}, legend(), type(pt_caption, ink_quiet)));
}

}  // namespace

std::vector<Block> safety_pictures(const SafetySubject& subject, const Setting& setting, double width, double height,
                                   double first_height) {
  std::vector<Block> blocks;
  const std::vector<SafetyView> views = safety_views(subject, setting, width, height, first_height);
  for (const SafetyView& view : views) {
    Block block;
    block.gap = 6;
    block.rows.push_back({picture_height(view), [view, &subject, &setting](Marks& marks, const Rect& at) {
                            SafetyPainter(marks, subject, view, setting, at).paint();
                          }});
    blocks.push_back(std::move(block));
  }
  return blocks;
}

}  // namespace quadrille
