// The frame as it is put together.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include "sdk/units.hpp"
#include "studio/build_sheet/build_picture.hpp"
#include "studio/build_sheet/hung.hpp"
#include "studio/drawing/anchor_marks.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/room.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

constexpr Ink rod_dark{0.25, 0.26, 0.29, 1}, rod_light{0.6, 0.61, 0.64, 1}, ballast_ink{0.88, 0.88, 0.9, 1};

struct SectionPoint {
  Vec3 point, tangent;
};

struct FramePainter {
  Marks& marks;
  const BuildSubject& subject;
  const BuildPicture& picture;
  LengthStyle lengths;
  std::vector<Rect> taken = {};

  const Piece& piece() const { return subject.piece(); }
  const Vec3& node(std::uint32_t index) const { return piece().frame.nodes[index]; }
  Point2 on_page(const Vec3& p) const { return picture.placement.on_page(p.x(), p.z()); }
  bool label(const PicturePlace& at, const std::string& text, const TextStyle& style, double off,
             LabelReach reach = LabelReach::around) {
    const double width = text_width(text, style), height = style.size_pt >= pt_body ? 4.2 : 3.6;
    Rect box;
    if (!find_room_for_label(picture, at, width, height, off, taken, box, reach)) return false;
    marks.push_back(filled_mark(Part::drawing, rect_path(box), ink_paper));
    marks.push_back(text_mark(Part::dimension, box, text, style));
    return true;
  }

  void add_floor();
  void add_rods();
  void add_joints();
  void add_supports();
  void add_ballast(const Support& support, const Rect& plate);
  void add_tie_points();
  void add_lines();
  void add_section_labels();
  bool add_section_label(const FrameSection& section, const std::string& text, LabelReach reach);
  SectionPoint point_in(const FrameSection& section, double share) const;
  void add_running_marks(double step_m);
  void add_dimensions();
};

void FramePainter::add_floor() {
  if (!picture.shows_floor) return;
  const double y = picture.placement.origin.y;
  marks.push_back(line_mark(Part::floor, {picture.room.x + 4, y}, {picture.room.right() - 2, y}, mm_strong));
  taken.push_back({picture.room.x + 4, y - 0.4, picture.room.width - 6, 0.8});
}

/// Through the points as one smooth line, but for corners: a rod that was bent shows no kinks where its nodes are.
PathSteps smooth_path(const std::vector<Point2>& points) {
  constexpr double corner_cosine = 0.82;  // of 35°
  if (points.size() < 3) return polyline_path(points);
  const std::size_t last = points.size() - 1;
  const auto towards = [&](std::size_t from, std::size_t to) {
    const double x = points[to].x - points[from].x, y = points[to].y - points[from].y, size = std::hypot(x, y);
    return size > 1e-9 ? Point2{x / size, y / size} : Point2{};
  };
  const auto is_corner = [&](std::size_t i) {
    const Point2 in = towards(i - 1, i), out = towards(i, i + 1);
    return in.x * out.x + in.y * out.y < corner_cosine;
  };
  // Direction at one end of the stretch from `i` to `i + 1`: at a node along its neighbours, at an end or a corner so that
  // the stretch is an arc.
  const auto is_free = [&](std::size_t i) { return i == 0 || i == last || is_corner(i); };
  const auto direction = [&](std::size_t i, std::size_t end) {
    const Point2 chord = towards(i, i + 1);
    if (!is_free(end)) return towards(end - 1, end + 1);
    const std::size_t other = end == i ? i + 1 : i;
    if (is_free(other)) return chord;
    const Point2 there = towards(other - 1, other + 1);
    const double along = 2 * (chord.x * there.x + chord.y * there.y);
    return Point2{along * chord.x - there.x, along * chord.y - there.y};
  };
  PathSteps path{{PathStep::Kind::move, points[0], {}, {}}};
  for (std::size_t i = 0; i < last; ++i) {
    const Point2 a = points[i], b = points[i + 1], out = direction(i, i), in = direction(i, i + 1);
    const double reach = std::hypot(b.x - a.x, b.y - a.y) / 3;
    path.push_back({PathStep::Kind::curve,
                    b,
                    {a.x + out.x * reach, a.y + out.y * reach},
                    {b.x - in.x * reach, b.y - in.y * reach}});
  }
  return path;
}

/// Sections by turns dark and light, so that one sees where they meet in black and white too; without a frame the spine.
void FramePainter::add_rods() {
  for (std::size_t i = 0; i < subject.frame.sections.size(); ++i) {
    const FrameSection& section = subject.frame.sections[i];
    std::vector<Point2> points;
    for (const std::uint32_t index : section.nodes) points.push_back(on_page(node(index)));
    const double width = std::clamp(picture.placement.length(section.outer_m), 0.7, 2.5);
    marks.push_back(
        stroked_mark(Part::drawing, smooth_path(points), {i % 2 == 0 ? rod_dark : rod_light, width, {}, false}));
  }
  if (!subject.frame.sections.empty() || piece().spine.size() < 2) return;
  std::vector<Point2> points;
  for (const SpinePoint& point : piece().spine) points.push_back(on_page(point.point));
  marks.push_back(stroked_mark(Part::drawing, smooth_path(points), {rod_dark, 0.6, {}, false}));
}

void FramePainter::add_joints() {
  constexpr double r = 1.25;
  for (const FrameNodeJoint& joint : subject.frame.joints) {
    const Point2 p = on_page(node(joint.node));
    const bool hinge = joint.kind == Joint::hinge;
    const PathSteps shape = hinge ? circle_path(p, r) : rect_path({p.x - r, p.y - r, 2 * r, 2 * r});
    marks.push_back(shape_mark(Part::drawing, shape, hinge ? ink_paper : ink_text, {ink_paper, 0.3, {}, false}));
    if (hinge) marks.push_back(stroked_mark(Part::drawing, shape, {ink_text, mm_strong, {}, false}));
    taken.push_back({p.x - r, p.y - r, 2 * r, 2 * r});
  }
}

/// A block for each container on a plate, by turns outside and inside of the rod, four to a layer; their size is by eye.
void FramePainter::add_ballast(const Support& support, const Rect& plate) {
  constexpr std::int64_t most = 24;
  const std::int64_t count = std::clamp<std::int64_t>(containers_on(subject, support), 1, most);
  const double side = plate.width * 0.4, wide = count > 2 ? (side - 0.3) / 2 : plate.width * 0.36;
  const double high = std::clamp(picture.placement.length(0.16), 1.5, 12.0);
  for (std::int64_t i = 0; i < count; ++i) {
    const double out = i % 4 < 2 ? 0 : wide + 0.3, up = static_cast<double>(i / 4) * (high + 0.3);
    const bool left = (i % 2 == 0) == (plate.middle().x <= picture.room.middle().x + 0.1);
    const Rect box{left ? plate.x + out : plate.right() - wide - out, plate.y - high - up, wide, high};
    marks.push_back(shape_mark(Part::drawing, rect_path(box), ballast_ink, {ink_text, mm_line, {}, false}));
    taken.push_back(box);
  }
}

/// Plates with their ballast; sockets in the ground; hooks.
void FramePainter::add_supports() {
  for (const NamedSupport& named : subject.supports) {
    const Support& support = piece().supports[named.support];
    const Point2 p = on_page(named.place);
    if (support.kind == SupportKind::plate) {
      const double width = std::max(2.0, picture.placement.length(support.width_m));
      const double thick = std::max(0.6, picture.placement.length(plate_thickness_m));
      if (support.ballast_kg > 0) add_ballast(support, {p.x - width / 2, p.y - thick, width, thick});
      marks.push_back(filled_mark(Part::drawing, rect_path({p.x - width / 2, p.y - thick, width, thick}), ink_text));
    } else if (support.kind == SupportKind::socket) {
      marks.push_back(filled_mark(Part::drawing, rect_path({p.x - 1, p.y, 2, 3}), ink_text));
    } else {
      marks.push_back(shape_mark(Part::drawing, circle_path(p, 1.1), ink_text, {ink_paper, mm_line, {}, false}));
      if (is_tie_point(subject, named))
        marks.push_back(stroked_mark(Part::drawing, circle_path(p, 1.8), {ink_text, mm_strong, {}, false}));
      taken.push_back({p.x - 1.8, p.y - 1.8, 3.6, 3.6});
    }
  }
  for (const NamedSupport& named : subject.supports) {
    if (named.is_foot) continue;
    const Vec3 tangent = place_along(piece(), named.place).tangent;
    label(place_on(picture, named.place, tangent), hung_name(subject, named), type(pt_caption, ink_text, Face::bold),
          2.3);
  }
}

void FramePainter::add_tie_points() {
  for (const TiePoint& tie : piece().tie_points) {
    if (!has_own_place(subject, tie)) continue;
    const Point2 p = on_page(tie.point);
    marks.push_back(shape_mark(Part::drawing, circle_path(p, 0.95), ink_paper, {ink_text, mm_strong, {}, false}));
  }
}

/// Unbroken where a line runs about in the picture's plane, dashed where it comes forward or goes back.
void FramePainter::add_lines() {
  std::map<std::pair<long, long>, std::pair<Point2, std::string>> anchors;
  for (std::size_t i = 0; i < subject.lines.size(); ++i) {
    const AnchoredLine& line = subject.lines[i];
    const Vec3 run = line.run.to - line.run.from;
    const Point2 from = on_page(line.run.from), to = on_page(line.run.to);
    Pen pen{ink_text, mm_line, {}, false};
    if (std::abs(run.y()) > 0.2 * run.norm()) pen.dashes = run.y() < 0 ? std::vector{2.2, 1.0} : std::vector{0.7, 0.9};
    marks.push_back(stroked_mark(Part::drawing, line_path(from, to), pen));
    add_anchor_mark(marks, subject.placed().lines[line.line].anchor, to);
    auto& [at, names] = anchors[{std::lround(to.x), std::lround(to.y)}];
    at = to, names += (names.empty() ? "" : ", ") + line_name(i);
    taken.push_back({to.x - 1.3, to.y - 1.3, 2.6, 2.6});
    // Labels keep off the line: one on it reads as the line's.
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    for (double along = 2; along < length - 2; along += 1.5) {
      const Point2 p{from.x + (to.x - from.x) * along / length, from.y + (to.y - from.y) * along / length};
      taken.push_back({p.x - 0.7, p.y - 0.7, 1.4, 1.4});
    }
  }
  // One label for those that fall on each other when seen from the front.
  for (const auto& [rounded, anchor] : anchors)
    label({anchor.first, {0, 1}}, anchor.second, type(pt_caption, ink_text, Face::bold), 2.2);
}

/// The point at a share of the section's length.
SectionPoint FramePainter::point_in(const FrameSection& section, double share) const {
  double left = share * section.length_m;
  for (std::size_t i = 1; i < section.nodes.size(); ++i) {
    const Vec3 from = node(section.nodes[i - 1]), run = node(section.nodes[i]) - from;
    const double length = run.norm();
    if (left <= length || i + 1 == section.nodes.size())
      return {from + run * std::clamp(length > 0 ? left / length : 0, 0.0, 1.0), run};
    left -= length;
  }
  return {node(section.nodes.front()), Vec3::UnitZ()};
}

/// Name and length of each section, beside its middle where that is free; else elsewhere along it, and farther off at the
/// end of a short line that leads to it.
void FramePainter::add_section_labels() {
  for (std::size_t i = 0; i < subject.frame.sections.size(); ++i) {
    const FrameSection& section = subject.frame.sections[i];
    const std::string text = section_name(i) + "\u2002" + print_length(section.length_m, lengths);
    if (add_section_label(section, text, LabelReach::beside)) continue;
    if (add_section_label(section, text, LabelReach::around)) continue;
    add_section_label(section, section_name(i), LabelReach::around);
  }
}

bool FramePainter::add_section_label(const FrameSection& section, const std::string& text, LabelReach reach) {
  constexpr double off = 2.4, height = 4, far = 5;
  const TextStyle style = type(pt_caption, ink_text, Face::bold, Across::centre, Down::middle);
  const double width = text_width(text, style) + 0.4;
  for (const double share : std::array{0.5, 0.38, 0.62, 0.27, 0.73, 0.18, 0.82}) {
    const SectionPoint at = point_in(section, share);
    const PicturePlace place = place_on(picture, at.point, at.tangent);
    Rect box;
    if (!find_room_for_label(picture, place, width, height, off, taken, box, reach)) continue;
    const Point2 nearest{std::clamp(place.at.x, box.x, box.right()), std::clamp(place.at.y, box.y, box.bottom())};
    if (std::hypot(nearest.x - place.at.x, nearest.y - place.at.y) > far)
      marks.push_back(line_mark(Part::dimension, nearest, place.at, mm_hair, ink_quiet));
    marks.push_back(text_mark(Part::dimension, box, text, style));
    return true;
  }
  return false;
}

/// Ticks across the frame, with figures at as many of them as have room beside them along a level line.
void FramePainter::add_running_marks(double step_m) {
  const double length = spine_length_m(piece());
  const TextStyle style = type(pt_caption, ink_quiet);
  const double apart = picture.placement.length(step_m), air = 2;
  const double widest = text_width(print_length(length, lengths), style) + air;
  // Metres at whole ones where not every half has room.
  const double step = lengths == LengthStyle::metres ? 2 : 1;
  const int every = apart >= widest ? 1 : static_cast<int>(step * std::ceil(widest / apart / step));
  int number = 0;
  for (double at = step_m; at <= length + 1e-9 && number < 1000; at += step_m) {
    const Vec3 point = spine_point(piece(), at), before = spine_point(piece(), at - 0.02);
    PicturePlace place = place_on(picture, point, point - before);
    const Point2 in{-place.outward.x, -place.outward.y};
    marks.push_back(line_mark(Part::dimension, {place.at.x + in.x * 0.6, place.at.y + in.y * 0.6},
                              {place.at.x + in.x * 2.2, place.at.y + in.y * 2.2}, mm_line));
    place.outward = in;
    const bool is_last = at + step_m > length + 1e-9;
    if (++number % every != 0 && !is_last) continue;
    const std::string text = print_length(at, lengths);
    if (!label(place, text, style, 2.8, LabelReach::beside) && is_last && !hangs(subject))
      label(place, text, style, 2.8);
  }
}

void FramePainter::add_dimensions() {
  const Extent& room = picture.extent;
  std::vector<const NamedSupport*> feet;
  for (const NamedSupport& support : subject.supports)
    if (support.is_foot) feet.push_back(&support);
  const double floor = picture.placement.origin.y;
  if (feet.size() >= 2 && picture.shows_floor) {
    const double from = on_page(feet.front()->place).x, to = on_page(feet.back()->place).x;
    const DimensionLabel text{print_length(feet.back()->place.x() - feet.front()->place.x(), lengths), ""};
    const Span span = label_span(from, to, label_width(text), picture.room.x, picture.room.right(), false);
    add_width_dimension(marks, from, to, floor + 12, floor + 4, text, span);
    taken.push_back({span.from, floor + 11.5 - dimension_text_height, span.to - span.from, dimension_text_height});
  }
  double top = -1e300, top_x = 0;
  const auto rise_to = [&](const Vec3& point) {
    if (point.z() > top + 1e-9) top = point.z(), top_x = point.x();
  };
  for (const Vec3& point : piece().frame.nodes) rise_to(point);
  for (const SpinePoint& point : piece().spine) rise_to(point.point);
  if (!(top > 0.05) || !picture.shows_floor) return;
  HeightLine height;
  height.top = picture.placement.on_page(0, top).y, height.bottom = floor;
  const bool hung = hangs(subject);
  height.x = std::max(picture.room.x + 6, picture.placement.on_page(room.left, 0).x - (hung ? 11 : 8));
  height.text = print_length(top, lengths);
  // To where it is as high as that; the names along what hangs stand on the extension line rather than on its other side.
  height.from_x = {picture.placement.on_page(hung ? top_x : room.left + room.width() / 2, 0).x};
  add_height_extension(marks, height);
  const double left = std::min(height.x, height.from_x.front()), right = std::max(height.x, height.from_x.front());
  if (!hung) taken.push_back({left, height.top - 0.3, right - left - 3, 0.6});
  add_height_dimension(marks, height, ink_paper);
  taken.push_back(room_of(height));
}

}  // namespace

void add_frame_picture(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, Units units) {
  add_picture_caption(marks, picture, subject.frame.sections.empty() ? line_caption(subject) : "Frame", units);
  FramePainter painter{marks, subject, picture, lengths_in(units)};
  painter.add_floor();
  painter.add_dimensions();
  add_hung_dimensions(marks, subject, picture, painter.lengths, painter.taken);
  painter.add_lines();
  painter.add_rods();
  painter.add_joints();
  painter.add_supports();
  painter.add_tie_points();
  painter.add_running_marks(running_step_m(units));
  painter.add_section_labels();
}

}  // namespace quadrille
