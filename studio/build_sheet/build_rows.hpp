// Rows that the build sheet's tables are made of: cells side by side, long paragraphs, pictures.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "studio/paint/display_list.hpp"
#include "studio/paint/style.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// One cell of a row. It wraps to eight lines at most.
struct RowCell {
  std::string text;
  double width = 0;  ///< mm; 0 = an equal part of what is left
  Across across = Across::left;
  Face face = Face::regular;
};

/// Cells side by side with a little air between, as wide as the column.
Row cells_row(const std::vector<RowCell>& cells, double width);

/// The same as captions over a table, none of them bold.
Row captions_row(std::vector<RowCell> cells, double width);

/// A paragraph of body text of any length up to 12 lines.
Row text_row(const std::string& text, double width, double air = 1.2, const Ink& ink = ink_text);

/// "1.  Do this." with the text hanging beside its number.
Row step_row(int number, const std::string& text, double width);

/// Of a colour slot: "B", or "?" beyond Z.
std::string letter_of(std::uint32_t slot);

/// A block with a heading over its captions, and both again where it goes on.
Block table_block(const std::string& heading, const std::vector<RowCell>& captions, double width);

/// A row with a picture of this height.
Row picture_row(double height, std::function<void(Marks&, const Rect&)> draw);

}  // namespace quadrille
