// Rows into columns.
#include "studio/paper/flow.hpp"

#include <algorithm>

namespace quadrille {
namespace {

double height_of(const std::vector<Row>& rows) {
  double height = 0;
  for (const Row& row : rows) height += row.height;
  return height;
}

double draw(const Row& row, const Rect& column, double y, Marks* marks) {
  if (marks && row.draw) row.draw(*marks, {column.x, y, column.width, row.height});
  return y + row.height;
}

/// Height of row `index` and of those that stay with it; 0 beyond the last.
double height_together(const Block& block, std::size_t index) {
  if (index >= block.rows.size()) return 0;
  double height = block.rows[index].height;
  while (++index < block.rows.size() && block.rows[index].with_before) height += block.rows[index].height;
  return height;
}

/// The first row after `index` that need not stay with the one before it.
std::size_t group_after(const Block& block, std::size_t index) {
  do ++index;
  while (index < block.rows.size() && block.rows[index].with_before);
  return index;
}

/// Height of the block's head and of the rows that suffice to begin with, or of all where there are fewer.
double height_of_beginning(const Block& block) {
  double height = height_of(block.head);
  for (std::size_t i = 0; i < block.rows.size() && (i < block.beginning || block.rows[i].with_before); ++i)
    height += block.rows[i].height;
  return height;
}

/// Height, with the gaps between, of the blocks from `first` on that stay with the one before them.
double height_of_followers(std::span<const Block> blocks, std::size_t first) {
  double height = 0;
  for (; first < blocks.size() && blocks[first].with_before; ++first)
    height += blocks[first].gap + height_of(blocks[first].head) + height_of(blocks[first].rows);
  return height;
}

/// Fills one column from `place`; the tallest column of all is `tallest` high.
FlowPlace fill(std::span<const Block> blocks, FlowPlace place, const Rect& column, double tallest, Marks* marks) {
  constexpr double slack = 1e-9;
  double y = column.y;
  while (place.block < blocks.size()) {
    const Block& block = blocks[place.block];
    const std::vector<Row>& head = place.row > 0 ? block.head_again : block.head;
    const bool at_top = y <= column.y;
    const double gap = at_top ? 0 : block.gap, room = column.bottom() - y - gap + slack;
    const double first = height_together(block, place.row);
    if (!at_top && block.begins_column && place.row == 0) return place;
    if (height_of(head) + first > room) return place;
    const double followers = height_of_followers(blocks, place.block + 1);
    const double alone = height_of(block.head) + height_of(block.rows);
    const double whole = alone + followers <= tallest + slack ? alone + followers : alone;
    const bool fits_elsewhere = whole <= tallest + slack && (!at_top || column.height < tallest);
    if (place.row == 0 && whole > room && fits_elsewhere && (!block.may_split || height_of_beginning(block) > room))
      return place;
    y += gap;
    for (const Row& row : head) y = draw(row, column, y, marks);
    const std::size_t begun = place.row;
    double left = 0;  // of this block
    for (std::size_t i = place.row; i < block.rows.size(); ++i) left += block.rows[i].height;
    for (; place.row < block.rows.size(); ++place.row) {
      if (y + height_together(block, place.row) > column.bottom() + slack) return place;
      // The last two rows go along with a block that must not stand alone.
      const bool near_end =
          place.row + 2 >= block.rows.size() && place.row > begun && !block.rows[place.row].with_before;
      if (near_end && followers > 0 && y + left + followers > column.bottom() + slack) return place;
      // The last row would stand alone under a head that says that the block goes on: one more goes along.
      const bool last_but_one = place.row > begun && group_after(block, place.row) + 1 == block.rows.size() &&
                                !block.rows[place.row].with_before;
      if (last_but_one && !block.may_split && y + left > column.bottom() + slack) return place;
      left -= block.rows[place.row].height;
      y = draw(block.rows[place.row], column, y, marks);
    }
    place = {place.block + 1, 0};
  }
  return place;
}

}  // namespace

FlowPlace flow(std::span<const Block> blocks, FlowPlace from, std::span<const Rect> columns, Marks* marks) {
  double tallest = 0;
  for (const Rect& column : columns) tallest = std::max(tallest, column.height);
  for (const Rect& column : columns) from = fill(blocks, from, column, tallest, marks);
  return from;
}

double flow_height(std::span<const Block> blocks, FlowPlace from, std::size_t count, double most) {
  const auto holds = [&](double height) {
    // What a column of the full height can hold must not be split to make the columns shorter.
    FlowPlace place = from;
    for (std::size_t i = 0; i < count; ++i) place = fill(blocks, place, {0, 0, 1, height}, most, nullptr);
    return place.block == blocks.size();
  };
  if (!holds(most)) return most;
  double low = 0, high = most;
  while (high - low > 0.05) {
    const double middle = (low + high) / 2;
    (holds(middle) ? high : low) = middle;
  }
  return high;
}

std::vector<Rect> columns_in(const Rect& room, std::size_t count, double gap) {
  std::vector<Rect> columns;
  const double width = (room.width - gap * static_cast<double>(count - 1)) / static_cast<double>(count);
  for (std::size_t i = 0; i < count; ++i)
    columns.push_back({room.x + static_cast<double>(i) * (width + gap), room.y, width, room.height});
  return columns;
}

}  // namespace quadrille
