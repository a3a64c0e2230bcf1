// Lists as tables of cells, from which table files are made: text stays text, numbers stay numbers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/money.hpp"

namespace quadrille {

/// Empty, text, or a number.
struct Cell {
  std::string text;              ///< of a number as it is written out, with a point
  std::optional<double> number;  ///< nothing: text
  int decimals = -1;             ///< to be shown with; -1 = as many as there are
  bool operator==(const Cell&) const = default;
};

Cell text_cell(std::string text);
Cell number_cell(double number);
Cell whole_cell(std::int64_t number);
/// An amount in whole units of its currency, with that currency's decimals; minor units where these are not known.
Cell money_cell(Minor amount, std::string_view currency);
/// Empty where the amount is not known.
Cell money_cell(const std::optional<Minor>& amount, std::string_view currency);
/// A share in per cent: 82,500 ppm are 8.25.
Cell share_cell(PartsPerMillion share);

/// One list. Every row has as many cells as there are heads.
struct ListTable {
  std::string kind;  ///< what one row is, "balloon"
  std::string name;  ///< of the list, "Balloons": at most 31 characters, none of []:*?/\ in it
  std::vector<std::string> heads;
  std::vector<std::vector<Cell>> rows;
};

/// All lists in one comma-separated table: the first column "list" has a row's kind, the others are the heads of all
/// lists, each once, in the order in which they come. Text that a spreadsheet would run is made harmless: see csv.hpp.
std::string csv_of(const std::vector<ListTable>& tables);

}  // namespace quadrille
