#include "studio/build_sheet/hung.hpp"

#include <algorithm>
#include <utility>

#include "sdk/dressing_facts.hpp"
#include "sdk/quantity.hpp"
#include "studio/build_sheet/build_rows.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/model/hung_by.hpp"
#include "studio/model/lengths.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

constexpr double same_place_m = 0.005;

struct HungWords {
  const char *one, *all, *letter;
};

HungWords words_of(const BuildSubject& subject) {
  switch (hung_by(subject.piece())) {
    case HungBy::ties:
      return {"Tie", "Ties", "T"};
    case HungBy::hooks:
      return {"Hook", "Hooks", "H"};
    case HungBy::points:
      break;
  }
  return {"Point", "Hanging points", "P"};
}

std::vector<const NamedSupport*> hung_supports(const BuildSubject& subject) {
  std::vector<const NamedSupport*> hung;
  for (const NamedSupport& named : subject.supports)
    if (!named.is_foot) hung.push_back(&named);
  return hung;
}

SpinePoint lowest_of(const Piece& piece) {
  return *std::ranges::min_element(piece.spine, {}, [](const SpinePoint& point) { return point.point.z(); });
}

/// Whether the line hangs lower somewhere than at either end.
bool sags(const Piece& piece) {
  if (piece.spine.size() < 3) return false;
  const double ends = std::min(piece.spine.front().point.z(), piece.spine.back().point.z());
  return lowest_of(piece).point.z() < ends - 0.02;
}

/// How long the line is, where it is lowest, and what its balloons weigh.
std::string tell_line(const BuildSubject& subject, const Setting& setting) {
  const Piece& piece = subject.piece();
  const LengthStyle lengths = lengths_in(setting.units);
  std::string text = "The line is " + print_length(spine_length_m(piece), lengths) + " long";
  if (sags(piece)) {
    const SpinePoint low = lowest_of(piece);
    const double left = piece.spine.front().point.z() - low.point.z(),
                 right = piece.spine.back().point.z() - low.point.z();
    const std::string one = print_length(left, lengths), other = print_length(right, lengths);
    text += "; it is lowest " + print_length(low.at_m, lengths) + " along it, " + print_length(low.point.z(), lengths) +
            " over the floor, " + one + (one == other ? "" : " and " + other) + " below its ends";
  }
  text += ".";
  if (const auto mass = find_fact(piece, "mass_kg"))
    text += " All balloons weigh " + print_mass(*mass, masses_in(setting.units)) + ".";
  return text;
}

/// A height whose line is broken where a part of it is left out.
void add_height(Marks& marks, const HeightLine& line, bool broken) {
  add_height_dimension(marks, line, ink_paper);
  if (!broken) return;
  const double y = line.bottom - 2.2, reach = 1.1, gap = 0.7;
  marks.push_back(filled_mark(Part::dimension, rect_path({line.x - reach, y - gap / 2, 2 * reach, gap}), ink_paper));
  for (const double edge : {y - gap / 2, y + gap / 2})
    marks.push_back(line_mark(Part::dimension, {line.x - reach, edge + 0.5}, {line.x + reach, edge - 0.5}, mm_line));
}

}  // namespace

bool hangs(const BuildSubject& subject) {
  return !subject.supports.empty() && std::ranges::none_of(subject.supports, &NamedSupport::is_foot);
}

std::string hung_name(const BuildSubject& subject, const NamedSupport& support) {
  return words_of(subject).letter + support.name.substr(support.name.find_last_of(' ') + 1);
}

std::string line_caption(const BuildSubject& subject) { return "Line and " + in_lower_case(words_of(subject).all); }

bool is_tie_point(const BuildSubject& subject, const NamedSupport& support) {
  return std::ranges::any_of(subject.piece().tie_points,
                             [&](const TiePoint& tie) { return (tie.point - support.place).norm() < same_place_m; });
}

bool has_own_place(const BuildSubject& subject, const TiePoint& tie) {
  return std::ranges::none_of(subject.supports, [&](const NamedSupport& support) {
    return !support.is_foot && (tie.point - support.place).norm() < same_place_m;
  });
}

std::vector<Block> hung_blocks(const BuildSubject& subject, const Setting& setting, double width) {
  const std::vector<const NamedSupport*> hung = hung_supports(subject);
  if (hung.empty()) return {};
  constexpr std::size_t long_list = 4;
  const HungWords words = words_of(subject);
  const LengthStyle lengths = lengths_in(setting.units);
  Block block = table_block(words.all,
                            {{words.one, 12},
                             {"Along the line", 0, Across::right},
                             {"Up from the floor", 0, Across::right},
                             {"Right of the first", 0, Across::right}},
                            width);
  block.may_split = hung.size() > long_list;
  std::string ties;
  for (const NamedSupport* one : hung) {
    const std::string name = hung_name(subject, *one);
    if (is_tie_point(subject, *one)) ties += (ties.empty() ? "" : ", ") + name;
    block.rows.push_back(
        cells_row({{name, 12, Across::left, Face::bold},
                   {print_length(one->at_m, lengths), 0, Across::right},
                   {print_length(one->place.z(), lengths), 0, Across::right},
                   {print_length(one->place.x() - hung.front()->place.x(), lengths), 0, Across::right}},
                  width));
  }
  if (!ties.empty())
    block.rows.push_back(
        text_row("Securing lines may be tied where a dot has a circle about it: " + ties + ".", width, 1.2, ink_quiet));
  if (subject.piece().spine.size() > 1) block.rows.push_back(text_row(tell_line(subject, setting), width));
  return {block};
}

void add_hung_dimensions(Marks& marks, const BuildSubject& subject, const BuildPicture& picture, LengthStyle lengths,
                         std::vector<Rect>& taken) {
  constexpr double floor_beneath = 17, width_beneath = 8;  // mm
  const std::vector<const NamedSupport*> hung = hung_supports(subject);
  const Piece& piece = subject.piece();
  if (hung.empty() || piece.spine.size() < 2) return;
  const auto on_page = [&](const Vec3& p) { return picture.placement.on_page(p.x(), p.z()); };
  const bool broken = !picture.shows_floor;
  const double floor =
      broken ? picture.placement.on_page(0, picture.extent.floor).y + floor_beneath : picture.placement.origin.y;
  if (broken) {
    marks.push_back(line_mark(Part::floor, {picture.room.x + 4, floor}, {picture.room.right() - 2, floor}, mm_strong));
    taken.push_back({picture.room.x + 4, floor - 0.4, picture.room.width - 6, 0.8});
  }
  const auto [left, right] = std::ranges::minmax(hung, {}, [](const NamedSupport* one) { return one->place.x(); });
  const double from = on_page(left->place).x, to = on_page(right->place).x;
  if (to - from > 1) {
    const DimensionLabel label{print_length(right->place.x() - left->place.x(), lengths), ""};
    const Span span = label_span(from, to, label_width(label), picture.room.x, picture.room.right(), false);
    add_width_dimension(marks, from, to, floor + width_beneath, floor + 2, label, span);
  }
  const auto add = [&](const Vec3& point, double x) {
    HeightLine height;
    height.top = on_page(point).y, height.bottom = floor, height.x = x;
    height.text = print_length(point.z(), lengths);
    if (std::abs(x - on_page(point).x) > 1) height.from_x = {on_page(point).x - (x < on_page(point).x ? 2 : -2)};
    if (height.bottom - height.top < 3) return;
    add_height_extension(marks, height);
    add_height(marks, height, broken);
    taken.push_back(room_of(height));
  };
  const Vec3 first = left->place, last = right->place;
  const double outside = std::min(on_page(first).x, picture.placement.on_page(picture.extent.left, 0).x) - 11;
  if (broken) {
    add(first, std::max(picture.room.x + 6, outside));
    if (std::abs(first.z() - last.z()) > 0.01) add(last, std::min(picture.room.right() - 2, on_page(last).x + 9));
  }
  if (sags(piece)) add(lowest_of(piece).point, on_page(lowest_of(piece).point).x);
}

}  // namespace quadrille
