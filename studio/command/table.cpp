// Columns as wide as their widest cell, counted in UTF-8 characters.
#include "studio/command/table.hpp"

#include <algorithm>

namespace quadrille {
namespace {

std::size_t columns_of(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string on_one_line(std::string text) {
  std::ranges::replace_if(
      text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, ' ');
  return text;
}

}  // namespace

std::string print_table(const std::vector<std::string>& heads, const std::vector<std::vector<std::string>>& rows,
                        const std::vector<Align>& aligns) {
  std::vector<std::size_t> widths;
  for (const std::string& head : heads) widths.push_back(columns_of(head));
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size() && i < widths.size(); ++i)
      widths[i] = std::max(widths[i], columns_of(row[i]));

  std::string text;
  const auto print = [&](const std::vector<std::string>& cells) {
    std::string line = " ";
    for (std::size_t i = 0; i < cells.size() && i < widths.size(); ++i) {
      const std::string gap(widths[i] - columns_of(cells[i]), ' ');
      const bool right = i < aligns.size() && aligns[i] == Align::right;
      line += " " + (right ? gap + on_one_line(cells[i]) : on_one_line(cells[i]) + gap) + " ";
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  };
  print(heads);
  for (const auto& row : rows) print(row);
  return text;
}

std::vector<std::string> folded(const std::string& text, std::size_t width) {
  std::vector<std::string> lines{""};
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    std::string& line = lines.back();
    if (line.empty())
      line = word;
    else if (columns_of(line) + 1 + columns_of(word) <= width)
      line += " " + word;
    else
      lines.push_back(word);
    at = end + 1;
  }
  return lines;
}

std::vector<std::vector<std::string>> with_folded(const std::vector<std::vector<std::string>>& rows, std::size_t column,
                                                  std::size_t width) {
  std::vector<std::vector<std::string>> all;
  for (const auto& row : rows) {
    const auto lines = folded(row[column], width);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      all.push_back(i == 0 ? row : std::vector<std::string>(row.size()));
      all.back()[column] = (i > 0 && column == 0 ? "  " : "") + lines[i];
    }
  }
  return all;
}

}  // namespace quadrille
