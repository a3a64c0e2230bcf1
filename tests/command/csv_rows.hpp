// Reads comma-separated text back, as RFC 4180 has it, for the tests.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille {

using CsvRow = std::map<std::string, std::string>;  // by head

/// The rows under the heads of the first.
inline std::vector<CsvRow> csv_rows(std::string_view text) {
  std::vector<std::vector<std::string>> rows{{""}};
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    std::string& cell = rows.back().back();
    if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"')
      cell += text[++i];
    else if (c == '"')
      quoted = !quoted;
    else if (!quoted && c == ',')
      rows.back().emplace_back();
    else if (!quoted && c == '\n')
      rows.push_back({""});
    else if (quoted || c != '\r')
      cell += c;
  }
  rows.pop_back();  // after the last line end
  std::vector<CsvRow> named;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    REQUIRE(rows[i].size() == rows[0].size());
    CsvRow& row = named.emplace_back();
    for (std::size_t k = 0; k < rows[0].size(); ++k) row[rows[0][k]] = rows[i][k];
  }
  return named;
}

/// Those of one list.
inline std::vector<CsvRow> rows_of(const std::vector<CsvRow>& rows, const std::string& list) {
  std::vector<CsvRow> found;
  std::ranges::copy_if(rows, std::back_inserter(found), [&](const CsvRow& row) { return row.at("list") == list; });
  return found;
}

}  // namespace quadrille
