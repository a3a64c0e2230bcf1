#include "studio/build_sheet/build_rows.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "sdk/pattern.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

constexpr double between = 1.6;  // mm of air between cells
constexpr int most_lines = 8;    // in a cell

/// Widths of the cells once the column is `width` wide.
std::vector<double> widths_of(const std::vector<RowCell>& cells, double width) {
  double left = width - between * static_cast<double>(cells.size() - 1);
  double open = 0;
  for (const RowCell& cell : cells) {
    left -= cell.width;
    open += cell.width > 0 ? 0 : 1;
  }
  std::vector<double> widths;
  for (const RowCell& cell : cells) widths.push_back(cell.width > 0 ? cell.width : std::max(4.0, left / open));
  return widths;
}

TextStyle style_of(const RowCell& cell, double size_pt, const Ink& ink) {
  return type(size_pt, ink, cell.face, cell.across);
}

Row row_of(const std::vector<RowCell>& cells, double width, double size_pt, const Ink& ink, double least) {
  const std::vector<double> widths = widths_of(cells, width);
  double height = least;
  for (std::size_t i = 0; i < cells.size(); ++i)
    height = std::max(height, text_height(cells[i].text, style_of(cells[i], size_pt, ink), widths[i], most_lines));
  return {height + (height > least ? 1.6 : 0.5), [=](Marks& marks, const Rect& at) {
            const std::vector<double> drawn = widths_of(cells, at.width);
            double x = at.x;
            for (std::size_t i = 0; i < cells.size(); ++i) {
              if (!cells[i].text.empty())
                marks.push_back(
                    text_mark(Part::key, {x, at.y, drawn[i], height}, cells[i].text, style_of(cells[i], size_pt, ink)));
              x += drawn[i] + between;
            }
          }};
}

}  // namespace

Row cells_row(const std::vector<RowCell>& cells, double width) {
  return row_of(cells, width, pt_body, ink_text, line_height);
}

Row captions_row(std::vector<RowCell> cells, double width) {
  for (RowCell& cell : cells) cell.face = Face::regular;
  return row_of(cells, width, pt_caption, ink_quiet, 3.8);
}

Row text_row(const std::string& text, double width, double air, const Ink& ink) {
  const TextStyle style = type(pt_body, ink);
  const double height = std::max(line_height, text_height(text, style, width, 12));
  return {height + air, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(Part::key, {at.x, at.y, at.width, height}, text, style));
          }};
}

Row step_row(int number, const std::string& text, double width) {
  constexpr double indent = 5.5;
  const double height = std::max(line_height, text_height(text, table_body, width - indent, 12));
  return {height + 1.2, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(Part::key, {at.x, at.y, indent - 0.5, line_height}, std::to_string(number) + ".",
                                      table_bold));
            marks.push_back(text_mark(Part::key, {at.x + indent, at.y, at.width - indent, height}, text, table_body));
          }};
}

Block table_block(const std::string& heading, const std::vector<RowCell>& captions, double width) {
  Block block;
  block.gap = 6;
  const auto head = [&](const std::string& text) {
    std::vector<Row> rows{heading_row(Part::key, text, width)};
    if (!captions.empty()) rows.push_back(captions_row(captions, width));
    rows.push_back(rule(Part::key, 0.2, 1.4));
    return rows;
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  return block;
}

std::string letter_of(std::uint32_t slot) { return slot < most_lettered ? std::string(1, slot_letter(slot)) : "?"; }

Row picture_row(double height, std::function<void(Marks&, const Rect&)> draw) { return {height, std::move(draw)}; }

}  // namespace quadrille
