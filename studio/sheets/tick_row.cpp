#include "studio/sheets/tick_row.hpp"

#include <algorithm>

#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

constexpr double box = tick_box, box_room = 5.6, second_room = 8, quantity_share = 0.34, air = 1.5,
                 beneath_several = 0.8;  // before what stands in small beneath several lines
constexpr int most_lines = 12;

const TextStyle where_style = type(pt_caption, ink_text, Face::bold);
const TextStyle detail_style = type(pt_caption, ink_quiet);
const TextStyle quantity_style = type(pt_body, ink_text, Face::bold, Across::right);

struct TickShape {
  double text_x, text_width, quantity_x, quantity_width, text_height, where_height, detail_height, quantity_height;
  double beneath() const { return text_height > line_height && where_height + detail_height > 0 ? beneath_several : 0; }
  double height() const {
    return std::max(text_height + beneath() + where_height + detail_height, quantity_height) + 2 * air;
  }
};

TickShape shape_of(const TickLine& line, double width, bool second_boxes) {
  TickShape s{};
  const double right = width - (second_boxes ? second_room : 0);
  s.text_x = box_room + (line.has_swatch ? swatch_room : 0);
  s.quantity_width =
      line.quantity.empty() ? 0 : std::min(text_width(line.quantity, quantity_style) + 0.5, quantity_share * width);
  s.quantity_x = right - s.quantity_width;
  s.text_width = s.quantity_x - s.text_x - (s.quantity_width > 0 ? 2 : 0);
  s.text_height = std::max(line_height, text_height(line.text, table_body, s.text_width, most_lines));
  const auto small = [&](const std::string& text, const TextStyle& style) {
    return text.empty() ? 0 : std::max(3.6, text_height(text, style, s.text_width, most_lines));
  };
  s.where_height = small(line.where, where_style), s.detail_height = small(line.detail, detail_style);
  s.quantity_height = line.quantity.empty() ? 0 : text_height(line.quantity, quantity_style, s.quantity_width, 3);
  return s;
}

}  // namespace

void add_box(Marks& marks, double x, double y, bool ticked) {
  marks.push_back(shape_mark(Part::key, rect_path({x, y, box, box}), ink_paper, {ink_text, 0.25, {}, false}));
  if (!ticked) return;
  const PathSteps tick = polyline_path({{x + 0.7, y + 1.8}, {x + 1.45, y + 2.6}, {x + 2.8, y + 0.75}});
  marks.push_back(stroked_mark(Part::key, tick, {ink_text, 0.55, {}, true}));
}

Row tick_row(const TickLine& line, double width, bool second_boxes) {
  return {
      shape_of(line, width, second_boxes).height(), [=](Marks& marks, const Rect& at) {
        // A column may be wider than the narrowest; the row keeps the height that it was measured with.
        const TickShape s = shape_of(line, width, second_boxes);
        const double y = at.y + air, wider = at.width - width;
        const double box_y = y + capital_middle(table_body) - box / 2;
        add_box(marks, at.x + 0.2, box_y, line.ticked);
        if (line.has_swatch) add_swatch(marks, Part::key, at.x + box_room, y, line.colour);
        marks.push_back(
            text_mark(Part::key, {at.x + s.text_x, y, s.text_width + wider, s.text_height}, line.text, table_body));
        double beneath = y + s.text_height + s.beneath();
        const auto add_small = [&](const std::string& text, const TextStyle& style, double height) {
          if (text.empty()) return;
          const Rect room{at.x + s.text_x, beneath, s.text_width + wider, height};
          marks.push_back(text_mark(Part::key, room, text, style));
          beneath += height;
        };
        add_small(line.where, where_style, s.where_height);
        add_small(line.detail, detail_style, s.detail_height);
        if (!line.quantity.empty())
          marks.push_back(text_mark(
              Part::key, {at.x + s.quantity_x + wider, y, s.quantity_width, std::max(line_height, s.quantity_height)},
              line.quantity, quantity_style));
        if (line.has_second_box) add_box(marks, at.right() - box - 0.2, box_y, false);
        marks.push_back(line_mark(Part::key, {at.x, at.bottom()}, {at.right(), at.bottom()}, mm_hair, ink_rule));
      }};
}

Block tick_block(const std::string& heading, double width, bool second_boxes) {
  Block block;
  block.gap = 6;
  block.may_split = true;
  const auto head = [&](const std::string& text) {
    std::vector<Row> rows{heading_row(Part::key, text, width)};
    if (second_boxes)
      rows.push_back({3.8, [](Marks& marks, const Rect& at) {
                        marks.push_back(text_mark(Part::key, {at.x, at.y, at.width / 2, 3.8}, "take", detail_style));
                        marks.push_back(text_mark(Part::key, {at.x + at.width / 2, at.y, at.width / 2, 3.8}, "back",
                                                  type(pt_caption, ink_quiet, Face::regular, Across::right)));
                      }});
    rows.push_back({0.3, [](Marks& marks, const Rect& at) {
                      marks.push_back(line_mark(Part::key, {at.x, at.y}, {at.right(), at.y}, mm_line));
                    }});
    return rows;
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  return block;
}

Row fill_in_row(const std::string& label, double width, double label_width) {
  const double room = label_width > 0 ? label_width : std::min(text_width(label, table_body) + 1, width * 0.6);
  const double height = std::max(line_height, text_height(label, table_body, room, 3));
  return {height + 3.4, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(Part::key, {at.x, at.y + 2.4, room, height}, label, table_body));
            const double y = at.y + 2.4 + height;
            marks.push_back(line_mark(Part::key, {at.x + room + 1.5, y}, {at.right(), y}, mm_hair, ink_text));
          }};
}

}  // namespace quadrille
