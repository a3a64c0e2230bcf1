#include "studio/form/list_cells.hpp"

#include <array>
#include <utility>

#include "studio/form/field_units.hpp"
#include "studio/form/typed.hpp"
#include "studio/model/parameter_check.hpp"

namespace quadrille {
namespace {

/// A parameter that stands for one column, so that its cells are shown and read like fields.
Parameter column_of(const Parameter& list, std::size_t column) {
  static constexpr std::array<const char*, 3> of_path{"Along", "Depth", "Height"}, of_mix{"Size", "Inflated", "Share"};
  const bool path = list.kind == Kind::path;
  Parameter cell;
  cell.label = path ? of_path[column] : of_mix[column];
  cell.kind = path || column == 1 ? Kind::length : column == 0 ? Kind::balloon : Kind::ratio;
  cell.hard_min = path ? list.hard_min : 0;
  cell.hard_max = path ? list.hard_max : column == 0 ? 48 : column == 1 ? 1.2 : 1e6;
  // What a column usually holds decides its unit: a path is metres long, a balloon centimetres across.
  cell.display_min = cell.hard_min;
  cell.display_max = path ? 3 : column == 1 ? 0.6 : cell.hard_max;
  return cell;
}

bool has_columns(Kind kind) { return kind == Kind::path || kind == Kind::mix; }

}  // namespace

CellTable cell_table(const Parameter& parameter, const Value& value, Units units) {
  CellTable table;
  if (!has_columns(parameter.kind) || value.kind != parameter.kind) return table;
  for (std::size_t column = 0; column < 3; ++column) {
    const Parameter cell = column_of(parameter, column);
    table.columns.push_back({cell.label, unit_of(cell, units).name});
  }
  for (std::size_t i = 0; i + 2 < value.list.size(); i += 3) {
    std::vector<std::string> texts;
    for (std::size_t column = 0; column < 3; ++column) {
      const Parameter cell = column_of(parameter, column);
      texts.push_back(text_of(cell, Value::of_number(cell.kind, value.list[i + column]), units).text);
    }
    table.rows.push_back(std::move(texts));
  }
  return table;
}

Result<Value> with_cell(const Parameter& parameter, const Value& value, std::size_t row, std::size_t column,
                        std::string_view text, Units units) {
  const std::size_t at = 3 * row + column;
  if (!has_columns(parameter.kind) || value.kind != parameter.kind || column >= 3 || at >= value.list.size())
    return Result<Value>::bad(parameter.label + " has no such cell.");
  const Parameter cell = column_of(parameter, column);
  const std::string place = "Row " + std::to_string(row + 1) + ", " + cell.label + ": ";
  const auto read = read_field(cell, Value::of_number(cell.kind, value.list[at]), text, units);
  if (!read) return Result<Value>::bad(place + read.error);
  Value changed = value;
  changed.list[at] = read->number;
  if (std::string fault = fault_of_value(parameter, changed); !fault.empty())
    return Result<Value>::bad(std::move(fault));
  return Result<Value>::good(std::move(changed));
}

Value with_row_after(const Value& value, std::size_t row) {
  Value longer = value;
  const std::size_t first = 3 * row;
  if (!has_columns(value.kind) || first + 2 >= value.list.size()) return longer;
  std::array<double, 3> added{};
  for (std::size_t column = 0; column < 3; ++column) {
    const double here = value.list[first + column];
    added[column] = here;
    if (value.kind != Kind::path) continue;
    if (first + 5 < value.list.size())
      added[column] = (here + value.list[first + 3 + column]) / 2;
    else if (first >= 3)
      added[column] += here - value.list[first - 3 + column];  // as when a point is added by hand: on in the same way
    else
      added[column] += column == 0 ? 0.5 : 0;
  }
  longer.list.insert(longer.list.begin() + static_cast<std::ptrdiff_t>(first + 3), added.begin(), added.end());
  return longer;
}

Value without_list_row(const Value& value, std::size_t row) {
  Value shorter = value;
  const std::size_t rows = value.list.size() / 3, least = value.kind == Kind::path ? 2 : 1;
  if (!has_columns(value.kind) || row >= rows || rows <= least) return shorter;
  const auto first = shorter.list.begin() + static_cast<std::ptrdiff_t>(3 * row);
  shorter.list.erase(first, first + 3);
  return shorter;
}

}  // namespace quadrille
