// Paths and mixes as tables of cells that can be typed into one by one.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

struct CellColumn {
  std::string label, unit;  ///< unit as FieldUnit::name
};

/// A path has the columns along, depth and height; a mix has size, inflated and share.
struct CellTable {
  std::vector<CellColumn> columns;             ///< three; none for other kinds
  std::vector<std::vector<std::string>> rows;  ///< texts, as they stand in the cells
};

CellTable cell_table(const Parameter& parameter, const Value& value, Units units);

/// The list with one cell typed anew, read as read_field reads a field of the column's kind. Fails with a sentence that
/// names row and column; a cell that is not there is a fault too.
Result<Value> with_cell(const Parameter& parameter, const Value& value, std::size_t row, std::size_t column,
                        std::string_view text, Units units);

/// The list with another row after `row`: a copy of it, which of a path lies halfway to the next point, and after the last
/// one on in the same way.
Value with_row_after(const Value& value, std::size_t row);
/// The list without this row; of a path two stay, of a mix one.
Value without_list_row(const Value& value, std::size_t row);

}  // namespace quadrille
