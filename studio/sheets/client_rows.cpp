#include "studio/sheets/client_rows.hpp"

#include <vector>

#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {

Block titled_block(const std::string& heading, double width) {
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::key, text, width), rule(Part::key, 0.2, 1.8)};
  };
  Block block;
  block.head = head(heading), block.head_again = head(heading + continued);
  block.gap = 7;
  return block;
}

Row bullet_row(const std::string& text, double width) {
  constexpr double indent = 3.4, radius = 0.55;
  const double height = text_height(text, table_body, width - indent, 16);
  return {height + 1.7, [=](Marks& marks, const Rect& at) {
            const Point2 dot{at.x + radius, at.y + capital_middle(table_body)};
            marks.push_back(filled_mark(Part::key, circle_path(dot, radius), ink_text));
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, text, table_body));
          }};
}

Row colour_row(const Colour* colour, const std::string& name, const std::string& figure, double width) {
  constexpr double figure_room = 16;
  const double height = wrapped(name, table_body, width - swatch_room - figure_room);
  return {height + below(height), [=](Marks& marks, const Rect& at) {
            const double room = at.width - swatch_room - figure_room;
            add_swatch(marks, Part::key, at.x, at.y, colour);
            marks.push_back(text_mark(Part::key, {at.x + swatch_room, at.y, room, height}, name, table_body));
            marks.push_back(text_mark(Part::key, {at.right() - figure_room, at.y, figure_room, line_height}, figure,
                                      table_figures));
          }};
}

}  // namespace quadrille
