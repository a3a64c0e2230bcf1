// Tables as blocks of rows.
#include "studio/drawing/tables.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "sdk/pattern.hpp"
#include "sdk/quantity.hpp"
#include "studio/drawing/dimension.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/drawing/sheet_style.hpp"
#include "studio/paint/text.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr double row_height = 5.6, line_height = 4.4, swatch_radius = 1.9, swatch_room = 6;

const TextStyle body = type(pt_body, ink_text);
const TextStyle body_bold = type(pt_body, ink_text, Face::bold);
const TextStyle figures = type(pt_body, ink_text, Face::regular, Across::right);
const TextStyle caption = type(pt_caption, ink_quiet);

constexpr const char* continued = ", continued";

/// Height of `text` in a row of the table: one line, or up to three where it is long.
double wrapped(const std::string& text, const TextStyle& style, double width) {
  return std::max(line_height, text_height(text, style, width, 3));
}

/// Air below a row: more where it has several lines, so that they hold together.
double below(double height) { return height > line_height ? 2.2 : 1.2; }

void add_swatch(Marks& marks, Part part, double x, double y, const Colour* colour) {
  BalloonMark swatch;
  swatch.centre = swatch.neck = {x + swatch_radius, y + capital_middle(body)};
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

/// Measures, counts and opening of a piece; each may be empty.
struct Description {
  std::string size, counts, opening;
};

std::string describe(const Opening& opening, LengthStyle lengths) {
  std::string text = "Opening " + print_length(opening.width_m(), lengths) + " wide";
  if (opening.between_plates_m() < opening.width_m() - 0.005)
    text += " (" + print_length(opening.between_plates_m(), lengths) + " between plates)";
  if (opening.height_m) text += ", " + print_length(*opening.height_m, lengths) + " high";
  return text;
}

Description describe(const ScenePiece& shown, const PieceCount* count, LengthStyle lengths) {
  Description text;
  if (!shown.size_known) return text;
  text.size = print_length(shown.extent.width(), lengths) + " wide, ";
  if (shown.plates_stand_out()) text.size += print_length(shown.standing().width(), lengths) + " with plates, ";
  text.size += print_length(shown.extent.height(), lengths) + " high";
  if (shown.opening) text.opening = describe(*shown.opening, lengths);
  if (!count || shown.shown == Shown::refused) return text;
  if (count->clusters > 0) text.counts = plural(count->clusters, "cluster", "clusters") + ", ";
  text.counts += plural(count->balloons, "balloon", "balloons");
  return text;
}

/// Size and counts on one line where both go on it, otherwise on two; the opening on its own.
std::vector<Row> description_rows(const Description& text, double width) {
  const TextStyle style = type(pt_body, ink_quiet);
  std::vector<std::string> lines{text.size};
  const std::string both = text.size + ", " + text.counts;
  if (!text.counts.empty()) {
    if (text_width(both, style) <= width)
      lines.back() = both;
    else
      lines.push_back(text.counts);
  }
  if (!text.opening.empty()) lines.push_back(text.opening);
  std::vector<Row> rows;
  for (const std::string& line : lines)
    if (!line.empty()) rows.push_back(paragraph(Part::key, line, style, width, &line == &lines.back() ? 1 : 0.4));
  return rows;
}

/// Columns of a row of the key, from the left: swatch, letter, colour, count.
constexpr double key_letter = 6, key_count = 14;

Row slot_row(const PlacedPiece& placed, std::size_t slot, std::int64_t balloons, const TableInput& input) {
  const Colour* colour = slot_colour(placed, slot, input.palettes);
  std::string name = colour ? colour->name : "no colour";
  if (!colour && slot < placed.colours.size() && !placed.colours[slot].colour.empty())
    name = "unknown colour \"" + placed.colours[slot].colour + "\"";
  // A slot beyond the alphabet comes only out of a damaged file and has no letter.
  const std::string letter = slot < 26 ? std::string(1, slot_letter(static_cast<std::uint32_t>(slot))) : "";
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
  const double indent = number.empty() ? 0 : std::max(swatch_room, 2 * ring_half_width(number) + 1.6);
  const std::string text = name.empty() ? "Unnamed piece" : name;
  const double height = wrapped(text, body_bold, width - indent);
  return {height + 0.4, [=](Marks& marks, const Rect& at) {
            if (!number.empty())
              add_ring(marks, Part::key, {at.x + ring_half_width(number), at.y + capital_middle(body_bold)}, number);
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, text, body_bold));
          }};
}

/// Columns of the balloon table behind the colour: size, inflated, count.
constexpr double size_room = 11, inflated_room = 17, count_room = 13;

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

std::string name_of(const SupplyLine& line) { return line.name.empty() ? line.key : line.name; }

Row supply_row(const SupplyLine& line, const TableInput& input) {
  constexpr double quantity_room = 20;
  const std::string name = name_of(line), quantity = print_quantity(line, input.lengths);
  const double room = input.width - quantity_room, height = wrapped(name, body, room - 2);
  return {
      height + 1.2, [=](Marks& marks, const Rect& at) {
        marks.push_back(text_mark(Part::supplies, {at.x, at.y, room - 2, height}, name, body));
        marks.push_back(text_mark(Part::supplies, {at.x + room, at.y, quantity_room, line_height}, quantity, figures));
      }};
}

/// By name, capitals and small letters alike; any byte beyond ASCII counts as it is.
bool comes_before(const SupplyLine& a, const SupplyLine& b) {
  const std::string first = in_lower_case(name_of(a)), second = in_lower_case(name_of(b));
  return std::tie(first, a.key, a.unit) < std::tie(second, b.key, b.unit);
}

Row heading_row(Part part, const std::string& text, double width) {
  return paragraph(part, text, type(pt_heading, ink_text, Face::bold), width, 1.6);
}

}  // namespace

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
  block.head_again = {name_row((placed.name.empty() ? "Unnamed piece" : placed.name) + continued, number, input.width),
                      rule(Part::key, 0.6, 1.8)};
  if (count && shown.shown != Shown::refused)
    for (std::size_t slot = 0; slot < count->by_slot.size(); ++slot)
      if (count->by_slot[slot] > 0) block.rows.push_back(slot_row(placed, slot, count->by_slot[slot], input));
  if (shown.shown != Shown::built)
    block.rows.push_back(paragraph(Part::key, shown.note, type(pt_body, ink_quiet), input.width, 1.2));
  return block;
}

Block balloon_block(const std::string& heading, const TableInput& input) {
  Block block{{}, {}, {}, 7, false};
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::totals, text, input.width), balloon_captions(input.width),
                            rule(Part::totals, 0.2, 1.8)};
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  for (const BalloonLine& line : input.count.balloons) block.rows.push_back(balloon_row(line, input));
  block.rows.push_back(sum_row(input.count.total_balloons));
  return block;
}

Block supply_block(const std::string& heading, const TableInput& input) {
  Block block{{}, {}, {}, 7, false};
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::supplies, text, input.width), rule(Part::supplies, 0.2, 1.8)};
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  std::vector<SupplyLine> lines = input.count.supplies;
  std::stable_sort(lines.begin(), lines.end(), comes_before);
  for (const SupplyLine& line : lines) block.rows.push_back(supply_row(line, input));
  return block;
}

Block far_off_block(const Scene& scene, const TableInput& input) {
  Block block{{}, {}, {}, 7, false};
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::key, text, input.width), rule(Part::key, 0.2, 1.8)};
  };
  block.head = head("Beyond this drawing"), block.head_again = head("Beyond this drawing" + std::string(continued));
  for (const SceneFarOff& thing : scene.far_off) {
    const std::string text = (thing.name.empty() ? "Unnamed structure or walkway" : thing.name) + ": " +
                             print_length(std::abs(thing.beyond_m), input.lengths) + " further to the " +
                             (thing.beyond_m < 0 ? "left" : "right");
    block.rows.push_back(paragraph(Part::key, text, type(pt_body, ink_quiet), input.width, 1.2));
  }
  return block;
}

}  // namespace quadrille
