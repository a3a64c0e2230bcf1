// Rows of text and figures that flow through columns and on to further pages.
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "studio/paint/display_list.hpp"

namespace quadrille {

struct Row {
  double height = 0;  ///< mm
  std::function<void(Marks&, const Rect&)> draw;
  bool with_before = false;  ///< stays with the row before it: a sum never begins a column alone
};

/// Rows that belong together under a head. Where they go on in another column, `head_again` stands over them, which
/// says that they do.
struct Block {
  std::vector<Row> head, rows, head_again;
  double gap = 5;  ///< mm left free before it where it does not begin a column
  bool begins_column = false;
  bool may_split = false;     ///< a list that may as well go on in the next column
  bool with_before = false;   ///< begins no column alone: the block before it, or its last rows, go along
  std::size_t beginning = 3;  ///< where it may be split, so many rows suffice to begin with
};

/// Where the flow stands: the next row to be set. It is at its end when `block` equals the number of blocks.
struct FlowPlace {
  std::size_t block = 0, row = 0;
};

/// Sets as much as goes into the columns, in order, and returns where to go on. A block that fits into one column is not
/// split unless it may be: it begins a column where the rest of the last one is too short for it. A longer one begins only
/// where its head and one row fit, and its last row does not go on alone unless it may be split. With `marks` null nothing is drawn.
FlowPlace flow(std::span<const Block> blocks, FlowPlace from, std::span<const Rect> columns, Marks* marks);

/// The least height, up to `most`, of `count` columns that hold everything from `from`; `most` where they cannot.
double flow_height(std::span<const Block> blocks, FlowPlace from, std::size_t count, double most);

/// `count` equal columns with `gap` between them.
std::vector<Rect> columns_in(const Rect& room, std::size_t count, double gap = 8);

}  // namespace quadrille
