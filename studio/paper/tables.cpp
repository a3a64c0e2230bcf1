// Tables as blocks of rows. Columns of figures stand at the right, and the text has the room that is left.
#include "studio/paper/tables.hpp"

#include <algorithm>
#include <tuple>
#include <vector>

#include "sdk/quantity.hpp"
#include "studio/model/one_unit.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// Columns of the balloon table behind the colour.
constexpr double size_room = 11, inflated_room = 17, count_room = 13,
                 figures_room = size_room + inflated_room + count_room;

Row balloon_row(const BalloonLine& line, const TableInput& input) {
  const Colour* colour = find_colour(input.palettes, line.colour);
  const std::string name = line.colour_name, size = print_nominal(line.nominal_in),
                    inflated = print_inflated(line.inflated_m, input.lengths), used = std::to_string(line.used);
  const double height = wrapped(name, table_body, input.width - swatch_room - figures_room);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            const double room = at.width - swatch_room - figures_room;
            add_swatch(marks, Part::totals, at.x, at.y, colour);
            marks.push_back(text_mark(Part::totals, {at.x + swatch_room, at.y, room, height}, name, table_body));
            double x = at.right() - figures_room;
            const auto add_figure = [&](double width, const std::string& text) {
              marks.push_back(text_mark(Part::totals, {x, at.y, width, line_height}, text, table_figures));
              x += width;
            };
            add_figure(size_room, size), add_figure(inflated_room, inflated), add_figure(count_room, used);
          }};
}

Row balloon_captions() {
  return {4.4, [=](Marks& marks, const Rect& at) {
            const TextStyle left = type(pt_caption, ink_quiet);
            const TextStyle right = type(pt_caption, ink_quiet, Face::regular, Across::right);
            double x = at.x;
            const auto add_caption = [&](double width, const char* text, const TextStyle& style) {
              marks.push_back(text_mark(Part::totals, {x, at.y, width, 3.8}, text, style));
              x += width;
            };
            add_caption(at.width - figures_room, "Colour", left);
            add_caption(size_room, "Size", right);
            add_caption(inflated_room, "Inflated to", right);
            add_caption(count_room, "Count", right);
          }};
}

Row sum_row(std::int64_t total) {
  constexpr double above = 1.2;
  Row row{above + line_height + 1.4, [=](Marks& marks, const Rect& at) {
            TextStyle right = table_bold;
            right.across = Across::right;
            const double half = at.width / 2, y = at.y + above;
            marks.push_back(line_mark(Part::totals, {at.x, at.y + 0.2}, {at.right(), at.y + 0.2}, mm_line, ink_text));
            marks.push_back(text_mark(Part::totals, {at.x, y, half, line_height}, "All balloons", table_bold));
            marks.push_back(text_mark(Part::totals, {at.x + half, y, half, line_height}, std::to_string(total), right));
          }};
  row.with_before = true;
  return row;
}

std::string name_of(const SupplyLine& line) { return line.name.empty() ? line.key : line.name; }

Row supply_row(const SupplyLine& line, double quantity_room, const TableInput& input) {
  const Units units = input.lengths == LengthStyle::metres ? Units::metric : Units::feet;
  const std::string name = in_one_unit(name_of(line), units), quantity = print_quantity(line, input.lengths);
  const double height = wrapped(name, table_body, input.width - quantity_room);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            const double room = at.width - quantity_room;
            marks.push_back(text_mark(Part::supplies, {at.x, at.y, room, height}, name, table_body));
            const Rect at_right{at.x + room, at.y, quantity_room, line_height};
            marks.push_back(text_mark(Part::supplies, at_right, quantity, table_figures));
          }};
}

/// By name, capitals and small letters alike; any byte beyond ASCII counts as it is.
bool comes_before(const SupplyLine& a, const SupplyLine& b) {
  const std::string first = in_lower_case(name_of(a)), second = in_lower_case(name_of(b));
  return std::tie(first, a.key, a.unit) < std::tie(second, b.key, b.unit);
}

}  // namespace

Block balloon_block(const std::string& heading, const TableInput& input) {
  Block block{{}, {}, {}, 7, false};
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::totals, text, input.width), balloon_captions(),
                            rule(Part::totals, 0.2, 1.8)};
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  for (const BalloonLine& line : input.count.balloons) block.rows.push_back(balloon_row(line, input));
  // Where the sum goes on in another column, two rows go along.
  if (block.rows.size() > 2) block.rows.back().with_before = true;
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
  constexpr double gap = 3;
  double widest = 0;
  for (const SupplyLine& line : lines)
    widest = std::max(widest, text_width(print_quantity(line, input.lengths), table_figures));
  const double quantity_room = std::min(widest + gap, input.width / 2);
  for (const SupplyLine& line : lines) block.rows.push_back(supply_row(line, quantity_room, input));
  return block;
}

}  // namespace quadrille
