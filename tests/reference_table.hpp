// Reads the reference tables of tests/reference: a line "# source: …", a line of column names, rows. Quoted cells may
// hold commas.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <string>
#include <vector>

#include "sdk/number.hpp"
#include "tests/places.hpp"

namespace quadrille {

class ReferenceTable {
 public:
  explicit ReferenceTable(const std::string& name) {
    std::ifstream file(source_place("tests/reference/") + name);
    std::string line;
    REQUIRE_MESSAGE(std::getline(file, line), name, " is missing");
    REQUIRE_MESSAGE(line.starts_with("# source: "), name, " does not say its source");
    REQUIRE(std::getline(file, line));
    columns_ = cells_of(line);
    while (std::getline(file, line))
      if (!line.empty()) rows_.push_back(cells_of(line));
    REQUIRE(rows_.size() > 0);
  }

  std::size_t rows() const { return rows_.size(); }
  const std::string& text(std::size_t row, const std::string& column) const {
    const auto found = std::ranges::find(columns_, column);
    REQUIRE_MESSAGE(found != columns_.end(), "no column ", column);
    return rows_[row].at(static_cast<std::size_t>(found - columns_.begin()));
  }
  double number(std::size_t row, const std::string& column) const {
    const auto number = parse_number(text(row, column));
    REQUIRE_MESSAGE(number.has_value(), "no number in ", column);
    return *number;
  }

 private:
  static std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells(1);
    bool in_quotes = false;
    for (const char c : line) {
      if (c == '"')
        in_quotes = !in_quotes;
      else if (c == ',' && !in_quotes)
        cells.emplace_back();
      else if (c != '\r')
        cells.back() += c;
    }
    return cells;
  }

  std::vector<std::string> columns_;
  std::vector<std::vector<std::string>> rows_;
};

}  // namespace quadrille
