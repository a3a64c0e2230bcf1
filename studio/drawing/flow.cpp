// Rows into columns.
#include "studio/drawing/flow.hpp"

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

/// Fills one column from `place`.
FlowPlace fill(std::span<const Block> blocks, FlowPlace place, const Rect& column, Marks* marks) {
  double y = column.y;
  while (place.block < blocks.size()) {
    const Block& block = blocks[place.block];
    const double gap = y > column.y ? block.gap : 0;
    const double first = place.row < block.rows.size() ? block.rows[place.row].height : 0;
    if (y > column.y && block.begins_column && place.row == 0) return place;
    if (y + gap + height_of(block.head) + first > column.bottom() + 1e-9) return place;
    y += gap;
    for (const Row& row : block.head) y = draw(row, column, y, marks);
    for (; place.row < block.rows.size(); ++place.row) {
      if (y + block.rows[place.row].height > column.bottom() + 1e-9) return place;
      y = draw(block.rows[place.row], column, y, marks);
    }
    place = {place.block + 1, 0};
  }
  return place;
}

}  // namespace

FlowPlace flow(std::span<const Block> blocks, FlowPlace from, std::span<const Rect> columns, Marks* marks) {
  for (const Rect& column : columns) from = fill(blocks, from, column, marks);
  return from;
}

double flow_height(std::span<const Block> blocks, FlowPlace from, std::size_t count, double most) {
  const auto holds = [&](double height) {
    const std::vector<Rect> columns(count, Rect{0, 0, 1, height});
    return flow(blocks, from, columns, nullptr).block == blocks.size();
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
