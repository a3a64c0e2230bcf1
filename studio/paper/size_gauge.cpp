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

constexpr double head = 20;  // mm over the curves: what to do, and the line of 100 mm
constexpr double label_row = 5, names_row = 4;

/// One curve with everything that is blown to it.
struct GaugeSize {
  double diameter_mm = 0;
  std::string label, blown;  ///< "11 in blown to 24.0 cm", "24.0 cm"
  std::vector<std::string> pieces;
  double radius() const { return diameter_mm / 2; }
};

/// Diameters that no hand tells apart, down to `least_mm`, as one curve in their middle.
struct GaugeGroup {
  double most_mm = 0, least_mm = 0;
  std::set<double> nominal_in;
  std::vector<std::string> pieces;
};

GaugeSize size_of(const GaugeGroup& group, LengthStyle lengths) {
  GaugeSize size{(group.most_mm + group.least_mm) / 2, "", "", group.pieces};
  for (const double inches : group.nominal_in) size.label += (size.label.empty() ? "" : ", ") + print_nominal(inches);
  const std::string least = print_inflated(group.least_mm / 1000, lengths),
                    most = print_inflated(group.most_mm / 1000, lengths);
  size.blown = least == most ? most : least.substr(0, least.find(' ')) + "–" + most;
  size.label += " blown to " + size.blown;
  return size;
}

/// The largest first.
std::vector<GaugeSize> gauge_sizes(std::vector<GaugeUse> uses, LengthStyle lengths) {
  constexpr double together_mm = 3;
  std::ranges::stable_sort(uses, std::ranges::greater{}, [](const GaugeUse& use) { return use.size.sizer_m; });
  std::vector<GaugeGroup> groups;
  for (const GaugeUse& use : uses) {
    const double diameter_mm = use.size.sizer_m * 1000;
    if (groups.empty() || groups.back().most_mm - diameter_mm > together_mm + 1e-9)
      groups.push_back({diameter_mm, diameter_mm, {}, {}});
    GaugeGroup& group = groups.back();
    group.least_mm = diameter_mm;
    group.nominal_in.insert(use.size.nominal_in);
    if (!use.piece.empty() && std::ranges::count(group.pieces, use.piece) == 0) group.pieces.push_back(use.piece);
  }
  std::vector<GaugeSize> all;
  for (const GaugeGroup& group : groups) all.push_back(size_of(group, lengths));
  return all;
}

/// "Gate arch; Column, left; 3 more": `most` names at most.
std::string print_pieces(const GaugeSize& size, std::size_t most) {
  std::string text;
  for (std::size_t i = 0; i < std::min(most, size.pieces.size()); ++i) text += (i > 0 ? "; " : "") + size.pieces[i];
  if (size.pieces.size() > most) text += "; " + std::to_string(size.pieces.size() - most) + " more";
  return text;
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

/// The label, and beneath it the pieces, in the middle of the box.
void add_centred(Page& page, const Rect& box, const std::string& label, const GaugeSize& size) {
  page.marks.push_back(text_mark(Part::drawing, {box.x, box.y, box.width, 4.4}, label,
                                 type(pt_body, ink_text, Face::bold, Across::centre)));
  const TextStyle style = type(pt_caption, ink_quiet, Face::regular, Across::centre);
  for (std::size_t most = size.pieces.size(); most > 0; --most) {
    const std::string pieces = print_pieces(size, most);
    if (most > 1 && text_width(pieces, style) > box.width) continue;
    page.marks.push_back(text_mark(Part::drawing, {box.x, box.y + 5, box.width, 3.8}, pieces, style));
    return;
  }
}

constexpr double between_circles = 4;

double height_of_circles(std::span<const GaugeSize> sizes) {
  double height = 0;
  for (const GaugeSize& size : sizes) height += size.diameter_mm + between_circles;
  return height;
}

void add_circles(std::vector<Page>& pages, std::span<const GaugeSize> sizes, const Setting& setting) {
  if (sizes.empty()) return;
  GaugeRoom room =
      new_page(setting, "True size. Hold a balloon at its fullest against its circle, or set the sizer to it.");
  Point2 centre{room.content.middle().x, room.content.y};
  for (const GaugeSize& size : sizes) {
    centre.y += size.radius();
    add_curve(room.page, circle_path(centre, size.radius()));
    const double width = 1.8 * size.radius();
    add_centred(room.page, {centre.x - width / 2, centre.y - 4.5, width, 9}, size.label, size);
    centre.y += size.radius() + between_circles;
  }
  pages.push_back(std::move(room.page));
}

/// How deep a part of the circle is that is as wide as the page.
double depth_of_part(const GaugeSize& size, double width) {
  return size.radius() * (1 - std::cos(std::asin(std::min(1.0, width / 2 / size.radius()))));
}
constexpr double beneath_part = 14;

/// A part of a circle from `y` down, with the measure around it; where the next one may begin.
double add_part(GaugeRoom& room, const GaugeSize& size, double y, LengthStyle lengths) {
  const double radius = size.radius(), width = room.content.width;
  const double half = std::asin(std::min(1.0, width / 2 / radius)), deep = depth_of_part(size, width);
  add_curve(room.page, arc_path({room.content.middle().x, y + radius}, radius, pi / 2 - half, pi / 2 + half));
  add_centred(room.page, {room.content.x, y + deep + 1.5, width, 9},
              size.label + ", " + print_length(pi * size.diameter_mm / 1000, lengths) + " around", size);
  return y + deep + beneath_part;
}

/// Parts of circles too large for the paper, one under the other, each with the measure around.
void add_parts(std::vector<Page>& pages, std::span<const GaugeSize> sizes, const Setting& setting) {
  std::vector<GaugeRoom> rooms;
  double y = 1e300;
  for (const GaugeSize& size : sizes) {
    if (rooms.empty() || y > rooms.back().content.bottom() - 70) {
      rooms.push_back(new_page(setting,
                               "Too large for this paper: a part of each circle in true size. Hold the balloon's side "
                               "against it, or lay a tape around the balloon."));
      y = rooms.back().content.y + 4;
    }
    y = add_part(rooms.back(), size, y, lengths_in(setting.units));
  }
  for (GaugeRoom& room : rooms) pages.push_back(std::move(room.page));
}

const TextStyle quarter_label = type(pt_body, ink_text, Face::bold, Across::right);

/// In which row beneath the level leg the label of each quarter stands. A label ends at its arc's foot; those of larger
/// arcs stand in deeper rows where they would lie over one, so that no leader runs through a label.
std::vector<int> label_rows(std::span<const GaugeSize> sizes) {
  std::vector<int> rows(sizes.size(), 0);
  std::vector<double> ends;  // of the last label in each row
  for (std::size_t i = sizes.size(); i-- > 0;) {
    const double from = sizes[i].radius() - text_width(sizes[i].label, quarter_label) - 4;
    // Beneath every label and leader that it would lie over.
    std::size_t row = ends.size();
    while (row > 0 && ends[row - 1] <= from) --row;
    if (row == ends.size()) ends.push_back(0);
    ends[row] = sizes[i].radius();
    rows[i] = static_cast<int>(row);
  }
  return rows;
}

double beneath_quarters(std::span<const GaugeSize> sizes) {
  int most = 0;
  for (const int row : label_rows(sizes)) most = std::max(most, row + 1);
  return most * label_row + 2;
}

/// Which pieces use which curve, in the page's corner outside the largest quarter; as many names as have room.
void add_uses(GaugeRoom& room, std::span<const GaugeSize> sizes, Point2 corner) {
  constexpr double width = 62, figure = 21, gap = 3;
  const Rect& content = room.content;
  const double left = content.right() - width - corner.x, reach = sizes.front().radius() + gap;
  // The lowest that its lower left corner may come.
  const double lowest = corner.y - (left < reach ? std::sqrt(reach * reach - left * left) : 0);
  const TextStyle style = type(pt_caption, ink_quiet), bold = type(pt_caption, ink_text, Face::bold);
  for (const std::size_t most : {6u, 4u, 3u, 2u, 1u}) {
    double y = content.y + 1;
    Marks marks{text_mark(Part::drawing, {content.right() - width, y, width, 3.8}, "Which piece uses which", style)};
    y += names_row + 1;
    for (const GaugeSize& size : sizes) {
      const std::string pieces = print_pieces(size, most);
      if (pieces.empty()) continue;
      const double high = std::max(3.8, text_height(pieces, style, width - figure, 6));
      marks.push_back(text_mark(Part::drawing, {content.right() - width, y, figure - 1, 3.8}, size.blown, bold));
      marks.push_back(
          text_mark(Part::drawing, {content.right() - width + figure, y, width - figure, high}, pieces, style));
      y += high + 0.8;
    }
    if (marks.size() == 1) return;
    if (y > lowest) continue;
    std::ranges::move(marks, std::back_inserter(room.page.marks));
    return;
  }
}

/// Quarters about the lower left corner, their labels beneath the level leg at the end of a short leader.
void add_quarters_to(GaugeRoom& room, std::span<const GaugeSize> sizes) {
  const Point2 corner{room.content.x, room.content.bottom() - beneath_quarters(sizes)};
  const double reach = sizes.front().radius();
  room.page.marks.push_back(line_mark(Part::drawing, corner, {corner.x + reach, corner.y}, mm_line));
  room.page.marks.push_back(line_mark(Part::drawing, corner, {corner.x, corner.y - reach}, mm_line));
  const std::vector<int> rows = label_rows(sizes);
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const double x = corner.x + sizes[i].radius(), y = corner.y + 1.5 + rows[i] * label_row;
    const double width = text_width(sizes[i].label, quarter_label) + 0.5;
    add_curve(room.page, arc_path(corner, sizes[i].radius(), 0, pi / 2));
    room.page.marks.push_back(line_mark(Part::drawing, {x, corner.y}, {x, y + 4}, mm_hair, ink_quiet));
    room.page.marks.push_back(text_mark(Part::drawing, {x - 1 - width, y, width, 4.4}, sizes[i].label, quarter_label));
  }
  add_uses(room, sizes, corner);
}

constexpr std::size_t most_quarters = 10;  // on a page

void add_quarters(std::vector<Page>& pages, std::span<const GaugeSize> sizes, const Setting& setting) {
  for (std::size_t from = 0; from < sizes.size(); from += most_quarters) {
    GaugeRoom room =
        new_page(setting, "True size. With the corner under its middle a balloon reaches its arc at its fullest.");
    add_quarters_to(room, sizes.subspan(from, std::min(most_quarters, sizes.size() - from)));
    pages.push_back(std::move(room.page));
  }
}

/// Parts over all quarters on one page, where they have room; false where they have none.
bool add_parts_over_quarters(std::vector<Page>& pages, std::span<const GaugeSize> parts,
                             std::span<const GaugeSize> quarters, const Setting& setting) {
  if (parts.empty() || quarters.empty() || quarters.size() > most_quarters) return false;
  GaugeRoom room =
      new_page(setting,
               "True size. With the corner under its middle a balloon reaches its arc at its fullest. Above: a "
               "part of each circle too large for this paper, to hold its side against.");
  double needed = quarters.front().radius() + beneath_quarters(quarters) + 4;
  for (const GaugeSize& size : parts) needed += depth_of_part(size, room.content.width) + beneath_part;
  if (needed > room.content.height) return false;
  double y = room.content.y + 2;
  for (const GaugeSize& size : parts) y = add_part(room, size, y, lengths_in(setting.units));
  room.content.height = room.content.bottom() - y, room.content.y = y;
  add_quarters_to(room, quarters);
  pages.push_back(std::move(room.page));
  return true;
}

}  // namespace

std::vector<Page> gauge_pages(const std::vector<GaugeUse>& uses, const Setting& setting) {
  constexpr double may_be_part_mm = 140;  // from this radius on a part serves as well, where that saves a page
  const Rect content = content_of(blank_page(setting.paper, false), setting.input.event);
  const double height = content.height - head;
  const std::vector<GaugeSize> sizes = gauge_sizes(uses, lengths_in(setting.units));
  const std::span<const GaugeSize> all(sizes);
  // So many of the largest are too large for a quarter with the labels of all that are on its page.
  std::size_t large = 0;
  const auto is_too_large = [&](const GaugeSize& size) {
    const auto page = all.subspan(large, std::min(most_quarters, all.size() - large));
    return size.radius() > content.width - 0.5 || size.radius() + beneath_quarters(page) > height - 0.5;
  };
  while (large < all.size() && is_too_large(all[large])) ++large;
  const auto smaller = all.subspan(large);
  std::vector<Page> pages;
  if (!smaller.empty() && smaller.front().diameter_mm <= content.width - 0.5 && height_of_circles(smaller) <= height) {
    add_parts(pages, all.first(large), setting);
    add_circles(pages, smaller, setting);
    return pages;
  }
  for (std::size_t parts = large; parts < all.size(); ++parts) {
    if (parts > large && all[parts - 1].radius() < may_be_part_mm) break;
    if (add_parts_over_quarters(pages, all.first(parts), all.subspan(parts), setting)) return pages;
  }
  add_parts(pages, all.first(large), setting);
  add_quarters(pages, smaller, setting);
  return pages;
}

}  // namespace quadrille
