// Tables as blocks of rows.
#include "studio/drawing/tables.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/number.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/drawing/sheet_style.hpp"
#include "studio/drawing/text.hpp"

namespace quadrille {
namespace {

constexpr double row_height = 5.6, line_height = 4.4, first_line = 1.85, swatch_radius = 1.9, swatch_room = 6;

const TextStyle body = type(pt_body, ink_text);
const TextStyle body_bold = type(pt_body, ink_text, Face::bold);
const TextStyle figures = type(pt_body, ink_text, Face::regular, Across::right);
const TextStyle caption = type(pt_caption, ink_quiet);

/// Height of `text` in a row of the table: one line, or up to three where it is long.
double wrapped(const std::string& text, const TextStyle& style, double width) {
  return std::max(line_height, text_height(text, style, width, 3));
}

/// Air below a row: more where it has several lines, so that they hold together.
double below(double height) { return height > line_height ? 2.2 : 1.2; }

void add_swatch(Marks& marks, Part part, double x, double y, const Colour* colour) {
  BalloonMark swatch;
  swatch.centre = swatch.neck = {x + swatch_radius, y + first_line};
  swatch.radius = swatch_radius;
  swatch.ink = ink_of(colour);
  swatch.finish = colour ? colour->finish : Finish::matte;
  marks.push_back({part, swatch});
}

Row paragraph(Part part, const std::string& text, const TextStyle& style, double width, double below) {
  const double height = text_height(text, style, width, 4);
  return {height + below, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(part, {at.x, at.y, at.width, height}, text, style));
          }};
}

Row rule(Part part, double above, double below, double width = mm_hair, Ink ink = ink_rule) {
  return {above + below, [=](Marks& marks, const Rect& at) {
            marks.push_back(line_mark(part, {at.x, at.y + above}, {at.right(), at.y + above}, width, ink));
          }};
}

std::string plural(std::int64_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

/// Measures and counts of a piece; either may be empty.
struct Description {
  std::string size, counts;
};

Description describe(const ScenePiece& shown, const PieceCount* count, LengthStyle lengths) {
  Description text;
  if (!shown.size_known) return text;
  text.size =
      print_length(shown.extent.width(), lengths) + " wide, " + print_length(shown.extent.height(), lengths) + " high";
  if (!count || shown.shown == Shown::refused) return text;
  if (count->clusters > 0) text.counts = plural(count->clusters, "cluster", "clusters") + ", ";
  text.counts += plural(count->balloons, "balloon", "balloons");
  return text;
}

/// On one line where both go on it, otherwise on two.
std::vector<Row> description_rows(const Description& text, double width) {
  const TextStyle style = type(pt_body, ink_quiet);
  const std::string both = text.size + ", " + text.counts;
  std::vector<Row> rows;
  if (text.size.empty()) return rows;
  if (text.counts.empty() || text_width(both, style) <= width) {
    rows.push_back(paragraph(Part::key, text.counts.empty() ? text.size : both, style, width, 1));
  } else {
    rows.push_back(paragraph(Part::key, text.size, style, width, 0));
    rows.push_back(paragraph(Part::key, text.counts, style, width, 1));
  }
  return rows;
}

/// Columns of a row of the key, from the left: swatch, letter, colour, count.
constexpr double key_letter = 6, key_count = 14;

Row slot_row(const PlacedPiece& placed, std::size_t slot, std::int64_t balloons, const TableInput& input) {
  const Colour* colour = slot_colour(placed, slot, input.palettes);
  std::string name = colour ? colour->name : "no colour";
  if (!colour && slot < placed.colours.size() && !placed.colours[slot].colour.empty())
    name = "unknown colour \"" + placed.colours[slot].colour + "\"";
  const std::string letter(1, slot_letter(static_cast<std::uint32_t>(slot)));
  const double room = input.width - swatch_room - key_letter - key_count;
  const double height = wrapped(name, body, room);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            add_swatch(marks, Part::key, at.x, at.y, colour);
            double x = at.x + swatch_room;
            marks.push_back(text_mark(Part::key, {x, at.y, key_letter, line_height}, letter, body_bold));
            x += key_letter;
            marks.push_back(text_mark(Part::key, {x, at.y, room, height}, name, body));
            marks.push_back(
                text_mark(Part::key, {x + room, at.y, key_count, line_height}, std::to_string(balloons), figures));
          }};
}

Row name_row(const std::string& name, const std::string& number, double width) {
  const double indent = number.empty() ? 0 : swatch_room;
  const std::string text = name.empty() ? "Unnamed piece" : name;
  const double height = wrapped(text, body_bold, width - indent);
  return {height + 0.4, [=](Marks& marks, const Rect& at) {
            if (!number.empty()) add_ring(marks, Part::key, {at.x + 2.1, at.y + first_line}, number);
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, text, body_bold));
          }};
}

/// Columns of the balloon table behind the colour: size, inflated, count.
constexpr double size_room = 11, inflated_room = 17, count_room = 13;

std::string print_inflated(double metres, LengthStyle lengths) {
  if (lengths == LengthStyle::metres) return print_fixed(metres * 100, 1) + " cm";
  return print_fixed(metres / metres_per_inch, 1) + " in";
}

Row balloon_row(const BalloonLine& line, const TableInput& input) {
  const Colour* colour = find_colour(input.palettes, line.colour);
  const double room = input.width - swatch_room - size_room - inflated_room - count_room;
  const double height = wrapped(line.colour_name, body, room);
  const std::string name = line.colour_name, size = print_nominal(line.nominal_in),
                    inflated = print_inflated(line.inflated_m, input.lengths), used = std::to_string(line.used);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            add_swatch(marks, Part::totals, at.x, at.y, colour);
            double x = at.x + swatch_room;
            marks.push_back(text_mark(Part::totals, {x, at.y, room, height}, name, body));
            x += room;
            marks.push_back(text_mark(Part::totals, {x, at.y, size_room, line_height}, size, figures));
            x += size_room;
            marks.push_back(text_mark(Part::totals, {x, at.y, inflated_room, line_height}, inflated, figures));
            x += inflated_room;
            marks.push_back(text_mark(Part::totals, {x, at.y, count_room, line_height}, used, figures));
          }};
}

Row balloon_captions(double width) {
  const double room = width - size_room - inflated_room - count_room;
  return {4.4, [=](Marks& marks, const Rect& at) {
            const TextStyle right = type(pt_caption, ink_quiet, Face::regular, Across::right);
            double x = at.x;
            marks.push_back(text_mark(Part::totals, {x, at.y, room, 3.8}, "Colour", caption));
            marks.push_back(text_mark(Part::totals, {x += room, at.y, size_room, 3.8}, "Size", right));
            marks.push_back(text_mark(Part::totals, {x += size_room, at.y, inflated_room, 3.8}, "Inflated to", right));
            marks.push_back(text_mark(Part::totals, {x + inflated_room, at.y, count_room, 3.8}, "Count", right));
          }};
}

Row sum_row(std::int64_t total) {
  return {row_height + 1.4, [=](Marks& marks, const Rect& at) {
            TextStyle right = body_bold;
            right.across = Across::right;
            marks.push_back(line_mark(Part::totals, {at.x, at.y + 0.2}, {at.right(), at.y + 0.2}, mm_line, ink_text));
            marks.push_back(
                text_mark(Part::totals, {at.x, at.y + 1.2, at.width / 2, line_height}, "All balloons", body_bold));
            marks.push_back(text_mark(Part::totals, {at.x + at.width / 2, at.y + 1.2, at.width / 2, line_height},
                                      std::to_string(total), right));
          }};
}

std::string print_quantity(const SupplyLine& line, LengthStyle lengths) {
  if (line.unit == "m") return print_length(line.quantity, lengths);
  if (line.unit == "kg")
    return print_mass(line.quantity, lengths == LengthStyle::metres ? MassStyle::kilograms : MassStyle::pounds);
  const bool whole = line.quantity == std::floor(line.quantity);
  const std::string number = print_fixed(line.quantity, whole ? 0 : 2);
  return line.unit == "piece" ? number : number + " " + line.unit;
}

Row supply_row(const SupplyLine& line, const TableInput& input) {
  constexpr double quantity_room = 20;
  const std::string name = line.name.empty() ? line.key : line.name, quantity = print_quantity(line, input.lengths);
  const double room = input.width - quantity_room, height = wrapped(name, body, room - 2);
  return {
      height + 1.2, [=](Marks& marks, const Rect& at) {
        marks.push_back(text_mark(Part::supplies, {at.x, at.y, room - 2, height}, name, body));
        marks.push_back(text_mark(Part::supplies, {at.x + room, at.y, quantity_room, line_height}, quantity, figures));
      }};
}

Row heading_row(Part part, const std::string& text, double width) {
  return paragraph(part, text, type(pt_heading, ink_text, Face::bold), width, 1.6);
}

}  // namespace

std::string print_nominal(double inches) { return print_number(inches) + " in"; }

Block key_block(const PlacedPiece& placed, const ScenePiece& shown, const std::string& number,
                const TableInput& input) {
  const auto& pieces = input.count.pieces;
  const auto found = std::find_if(pieces.begin(), pieces.end(), [&](const PieceCount& c) { return c.id == placed.id; });
  const PieceCount* count = found == pieces.end() ? nullptr : &*found;
  Block block;
  block.head.push_back(name_row(placed.name, number, input.width));
  for (Row& row : description_rows(describe(shown, count, input.lengths), input.width))
    block.head.push_back(std::move(row));
  block.head.push_back(rule(Part::key, 0.6, 1.8));
  if (count && shown.shown != Shown::refused)
    for (std::size_t slot = 0; slot < count->by_slot.size(); ++slot)
      if (count->by_slot[slot] > 0) block.rows.push_back(slot_row(placed, slot, count->by_slot[slot], input));
  if (shown.shown != Shown::built)
    block.rows.push_back(paragraph(Part::key, shown.note, type(pt_body, ink_quiet), input.width, 1.2));
  return block;
}

Block balloon_block(const std::string& heading, const TableInput& input) {
  Block block{{}, {}, 7, false};
  block.head = {heading_row(Part::totals, heading, input.width), balloon_captions(input.width),
                rule(Part::totals, 0.2, 1.8)};
  for (const BalloonLine& line : input.count.balloons) block.rows.push_back(balloon_row(line, input));
  block.rows.push_back(sum_row(input.count.total_balloons));
  return block;
}

Block supply_block(const std::string& heading, const TableInput& input) {
  Block block{{}, {}, 7, false};
  block.head = {heading_row(Part::supplies, heading, input.width), rule(Part::supplies, 0.2, 1.8)};
  for (const SupplyLine& line : input.count.supplies) block.rows.push_back(supply_row(line, input));
  return block;
}

}  // namespace quadrille
