// Quoting of cells.
#include "studio/command/csv.hpp"

#include <cstddef>
#include <string_view>

namespace quadrille {
namespace {

std::string quoted_cell(const std::string& cell) {
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string quoted = "\"";
  for (const char c : cell) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

}  // namespace

std::string harmless_cell(std::string text) {
  constexpr std::string_view starts_formula = "=+-@\t\r";
  if (!text.empty() && starts_formula.find(text.front()) != std::string_view::npos) text.insert(text.begin(), '\'');
  return text;
}

std::string print_csv(const std::vector<std::vector<std::string>>& rows) {
  std::string text;
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) text += ',';
      text += quoted_cell(row[i]);
    }
    text += "\r\n";
  }
  return text;
}

}  // namespace quadrille
