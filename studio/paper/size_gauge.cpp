#include "studio/paper/size_gauge.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <span>
#include <string>

#include "studio/drawing/room.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double head = 20;  // mm over the circles: what to do, and the line of 100 mm

/// One curve with everything that is blown to it.
struct GaugeSize {
  double diameter_mm = 0;
  std::string label;
};

/// Diameters that no hand tells apart, down to `least_mm`, as one curve in their middle.
struct GaugeGroup {
  double most_mm = 0, least_mm = 0;
  std::set<double> nominal_in;
};

GaugeSize size_of(const GaugeGroup& group, LengthStyle lengths) {
  GaugeSize size{(group.most_mm + group.least_mm) / 2, ""};
  for (const double inches : group.nominal_in) size.label += (size.label.empty() ? "" : ", ") + print_nominal(inches);
  const std::string least = print_inflated(group.least_mm / 1000, lengths),
                    most = print_inflated(group.most_mm / 1000, lengths);
  size.label += " blown to " + (least == most ? most : least.substr(0, least.find(' ')) + " to " + most);
  return size;
}

std::vector<GaugeSize> gauge_sizes(std::vector<SizerLine> sizes, LengthStyle lengths) {
  constexpr double together_mm = 2;
  std::ranges::sort(sizes, std::ranges::greater{}, &SizerLine::sizer_m);
  std::vector<GaugeGroup> groups;
  for (const SizerLine& size : sizes) {
    const double diameter_mm = size.sizer_m * 1000;
    if (groups.empty() || groups.back().most_mm - diameter_mm > together_mm + 1e-9)
      groups.push_back({diameter_mm, diameter_mm, {}});
    groups.back().least_mm = diameter_mm;
    groups.back().nominal_in.insert(size.nominal_in);
  }
  std::vector<GaugeSize> all;
  for (const GaugeGroup& group : groups) all.push_back(size_of(group, lengths));
  return all;
}

void add_head(Page& page, const Rect& content, const std::string& text) {
  const double mark = 100, x = content.right() - mark, y = content.y + 8;
  page.marks.push_back(
      text_mark(Part::note, {content.x, content.y, content.width - mark - 8, head - 3}, text, type(pt_body, ink_text)));
  page.marks.push_back(line_mark(Part::scale_bar, {x, y}, {x + mark, y}, mm_line));
  for (const double end : {x, x + mark})
    page.marks.push_back(line_mark(Part::scale_bar, {end, y - 1.5}, {end, y + 1.5}, mm_line));
  page.marks.push_back(text_mark(Part::scale_bar, {x, y + 2, mark, 7.5},
                                 "100 mm. If it is not, the page was fitted to the paper: print it at actual size.",
                                 type(pt_caption, ink_quiet)));
}

/// Whether a circle about `centre` runs through the box, or nearer to it than 0.3 mm.
bool is_crossed_by(const Rect& box, Point2 centre, double radius) {
  const double x = std::clamp(centre.x, box.x, box.right()), y = std::clamp(centre.y, box.y, box.bottom());
  const double nearest = std::hypot(x - centre.x, y - centre.y);
  double farthest = 0;
  for (const double cx : {box.x, box.right()})
    for (const double cy : {box.y, box.bottom()})
      farthest = std::max(farthest, std::hypot(cx - centre.x, cy - centre.y));
  return nearest - 0.3 < radius && radius < farthest + 0.3;
}

/// What labels keep off: each other, and all curves about `centre` but their own.
struct LabelRoom {
  Point2 centre;
  std::vector<double> radii;
  Rect bounds;
  std::vector<Rect> taken = {};
};

/// A label on the curve at the first of the angles, from `first` to `last`, at which it has room: white behind it, so that
/// the line stops there. Where other curves are too near everywhere, it stands beside its curve, on the side where none is
/// between; and where there is no such side, it may cross one.
void add_label(Page& page, LabelRoom& room, double radius, const std::string& text, double first, double last) {
  const TextStyle style = type(pt_body, ink_text, Face::bold, Across::centre, Down::middle);
  const double width = std::min(text_width(text, style), room.bounds.width), height = 4.4;
  constexpr int places = 60;
  enum class Way { on_it, outside, inside, across };
  for (const Way way : {Way::on_it, Way::outside, Way::inside, Way::across})
    for (int i = 0; i <= places; ++i) {
      const double angle = first + (last - first) * i / places;
      const auto box_at = [&](double from_centre) {
        return Rect{room.centre.x + from_centre * std::cos(angle) - width / 2,
                    room.centre.y - from_centre * std::sin(angle) - height / 2, width, height};
      };
      const bool beside = way == Way::outside || way == Way::inside;
      double at = radius;
      for (const double side = way == Way::outside ? 0.25 : -0.25;
           beside && std::abs(at - radius) < width && is_crossed_by(box_at(at), room.centre, radius);)
        at += side;
      const Rect box = box_at(at);
      const Rect& bounds = room.bounds;
      const bool inside =
          box.x >= bounds.x && box.right() <= bounds.right() && box.y >= bounds.y && box.bottom() <= bounds.bottom();
      if (!inside || meets_any(box, room.taken)) continue;
      const auto is_in_the_way = [&](double other) {
        const bool between = (other - radius) * (other - at) < 0;
        return other != radius && (between || is_crossed_by(box, room.centre, other));
      };
      if (way != Way::across && std::ranges::any_of(room.radii, is_in_the_way)) continue;
      room.taken.push_back(box);
      if (!beside) page.marks.push_back(filled_mark(Part::drawing, rect_path(box), ink_paper));
      page.marks.push_back(text_mark(Part::drawing, box, text, style));
      return;
    }
}

/// A part of a circle from one angle to another, anticlockwise from the right, in quarters of a curve no longer than 45°.
PathSteps arc_path(Point2 centre, double radius, double from, double to) {
  const int parts = std::max(1, static_cast<int>(std::ceil((to - from) / (pi / 4) - 1e-9)));
  const double step = (to - from) / parts, reach = radius * 4 / 3 * std::tan(step / 4);
  const auto at = [&](double a) { return Point2{centre.x + radius * std::cos(a), centre.y - radius * std::sin(a)}; };
  const auto ahead = [&](double a, double by) {
    const Point2 p = at(a);
    return Point2{p.x - by * std::sin(a), p.y - by * std::cos(a)};
  };
  PathSteps path{{PathStep::Kind::move, at(from), {}, {}}};
  for (int i = 0; i < parts; ++i) {
    const double a = from + step * i, b = a + step;
    path.push_back({PathStep::Kind::curve, at(b), ahead(a, reach), ahead(b, -reach)});
  }
  return path;
}

void add_curve(Page& page, PathSteps path) {
  page.marks.push_back(stroked_mark(Part::drawing, std::move(path), {ink_text, 0.25, {}, false}));
}

std::vector<double> radii_of(std::span<const GaugeSize> sizes) {
  std::vector<double> radii;
  for (const GaugeSize& size : sizes) radii.push_back(size.diameter_mm / 2);
  return radii;
}

struct GaugeRoom {
  Page page;
  Rect content;  ///< beneath the head
};

GaugeRoom new_page(const Setting& setting, const std::string& text) {
  Page page = blank_page(setting.paper, false);
  page.name = "Size gauge";
  Rect content = content_of(page, setting.input.event);
  add_head(page, content, text);
  content.y += head, content.height -= head;
  return {std::move(page), content};
}

void add_circles(std::vector<Page>& pages, const std::vector<GaugeSize>& sizes, const Setting& setting) {
  constexpr std::size_t most = 6;
  for (std::size_t from = 0; from < sizes.size(); from += most) {
    GaugeRoom room = new_page(setting,
                              "True size. Hold the fullest part of a balloon against its circle, or set the sizer "
                              "to it.");
    const Point2 centre = room.content.middle();
    const std::size_t to = std::min(sizes.size(), from + most);
    for (std::size_t i = from; i < to; ++i) add_curve(room.page, circle_path(centre, sizes[i].diameter_mm / 2));
    LabelRoom labels{centre, radii_of(std::span(sizes).subspan(from, to - from)), room.content};
    for (std::size_t i = from; i < to; ++i)
      add_label(room.page, labels, sizes[i].diameter_mm / 2, sizes[i].label, pi / 2, pi / 2 + 2 * pi);
    pages.push_back(std::move(room.page));
  }
}

/// How deep a piece of the circle is that is as wide as the page.
double depth_of_piece(const GaugeSize& size, double width) {
  const double radius = size.diameter_mm / 2;
  return radius * (1 - std::cos(std::asin(std::min(1.0, width / 2 / radius))));
}
constexpr double beneath_piece = 14;

/// A piece of a circle from `y` down, with the measure around it; where the next one may begin.
double add_piece(GaugeRoom& room, const GaugeSize& size, double y, LengthStyle lengths) {
  const double radius = size.diameter_mm / 2, width = room.content.width;
  const double half = std::asin(std::min(1.0, width / 2 / radius)), deep = depth_of_piece(size, width);
  add_curve(room.page, arc_path({room.content.middle().x, y + radius}, radius, pi / 2 - half, pi / 2 + half));
  room.page.marks.push_back(
      text_mark(Part::drawing, {room.content.x, y + deep + 1.5, width, 4.4},
                size.label + ", " + print_length(pi * size.diameter_mm / 1000, lengths) + " around",
                type(pt_body, ink_text, Face::bold, Across::centre)));
  return y + deep + beneath_piece;
}

void add_quarters_to(GaugeRoom& room, std::span<const GaugeSize> sizes) {
  const Point2 corner{room.content.x, room.content.bottom()};
  const double reach = sizes.front().diameter_mm / 2;
  room.page.marks.push_back(line_mark(Part::drawing, corner, {corner.x + reach, corner.y}, mm_line));
  room.page.marks.push_back(line_mark(Part::drawing, corner, {corner.x, corner.y - reach}, mm_line));
  for (const GaugeSize& size : sizes) add_curve(room.page, arc_path(corner, size.diameter_mm / 2, 0, pi / 2));
  LabelRoom labels{corner, radii_of(sizes), room.content};
  for (const GaugeSize& size : sizes) add_label(room.page, labels, size.diameter_mm / 2, size.label, pi / 2, 0);
}

void add_quarters(std::vector<Page>& pages, std::span<const GaugeSize> sizes, const Setting& setting) {
  constexpr std::size_t most = 8;
  for (std::size_t from = 0; from < sizes.size(); from += most) {
    GaugeRoom room = new_page(setting,
                              "True size, a quarter of each: put the corner under the balloon's middle, its fullest "
                              "part meets the arc.");
    add_quarters_to(room, sizes.subspan(from, std::min(most, sizes.size() - from)));
    pages.push_back(std::move(room.page));
  }
}

/// Pieces of circles too large for the paper, one under the other, each with the measure around.
void add_pieces(std::vector<Page>& pages, std::span<const GaugeSize> sizes, const Setting& setting) {
  const char* const text =
      "Too large for this paper: a piece of each circle in true size, to hold the balloon's side "
      "against, and the measure around it for a tape.";
  std::vector<GaugeRoom> rooms;
  double y = 1e300;
  for (const GaugeSize& size : sizes) {
    if (rooms.empty() || y > rooms.back().content.bottom() - 70) {
      rooms.push_back(new_page(setting, text));
      y = rooms.back().content.y + 4;
    }
    y = add_piece(rooms.back(), size, y, lengths_in(setting.units));
  }
  for (GaugeRoom& room : rooms) pages.push_back(std::move(room.page));
}

/// Pieces over the largest quarters on one page, where they have room; false where they have none.
bool add_pieces_over_quarters(std::vector<Page>& pages, std::span<const GaugeSize> pieces,
                              std::span<const GaugeSize> quarters, const Setting& setting) {
  if (pieces.empty() || quarters.empty()) return false;
  GaugeRoom room = new_page(setting,
                            "True size. A quarter of each: put the corner under the balloon's middle, its fullest part "
                            "meets the arc. Above, a piece of what is too large, with the measure around it.");
  double needed = quarters.front().diameter_mm / 2 + 6;
  for (const GaugeSize& size : pieces) needed += depth_of_piece(size, room.content.width) + beneath_piece;
  if (needed > room.content.height) return false;
  double y = room.content.y + 2;
  for (const GaugeSize& size : pieces) y = add_piece(room, size, y, lengths_in(setting.units));
  room.content.height = room.content.bottom() - y, room.content.y = y;
  add_quarters_to(room, quarters);
  pages.push_back(std::move(room.page));
  return true;
}

}  // namespace

std::vector<Page> gauge_pages(const std::vector<SizerLine>& sizes, const Setting& setting) {
  const Rect content = content_of(blank_page(setting.paper, false), setting.input.event);
  const double room = std::min(content.width, content.height - head) - 0.5;
  std::vector<GaugeSize> circles, quarters, pieces;
  for (const GaugeSize& size : gauge_sizes(sizes, lengths_in(setting.units)))
    (size.diameter_mm <= room ? circles : size.diameter_mm / 2 <= room ? quarters : pieces).push_back(size);
  std::vector<Page> pages;
  constexpr std::size_t most = 8;  // quarters beneath pieces
  const std::span<const GaugeSize> all(quarters), largest = all.first(std::min(most, all.size()));
  const bool together = add_pieces_over_quarters(pages, pieces, largest, setting);
  if (!together) add_pieces(pages, pieces, setting);
  add_quarters(pages, together ? all.subspan(largest.size()) : all, setting);
  add_circles(pages, circles, setting);
  return pages;
}

}  // namespace quadrille
