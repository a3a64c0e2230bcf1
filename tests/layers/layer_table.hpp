// Reads the level table of DEVELOPERS.md, which is the data that the layer test holds every #include against.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/number.hpp"

namespace layers {

/// One row: a folder and what its files may include.
struct Layer {
  std::optional<int> level;  ///< none: nobody may include it
  std::string folder;        ///< "studio/model"; "plugins/*" stands for each folder in plugins
  std::vector<std::string> may_include;
  std::vector<std::string> libraries;
};

struct LayerTable {
  std::vector<Layer> layers;
  std::vector<std::string> faults;  ///< what is wrong with the table itself
};

inline constexpr std::string_view table_head =
    "| level | folder | what lives there | may include | libraries it may use |";

inline std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r"), last = text.find_last_not_of(" \t\r");
  return first == std::string_view::npos ? "" : std::string(text.substr(first, last - first + 1));
}

inline std::vector<std::string_view> split(std::string_view text, char mark) {
  std::vector<std::string_view> parts;
  for (auto end = text.find(mark); end != std::string_view::npos; end = text.find(mark)) {
    parts.push_back(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
  parts.push_back(text);
  return parts;
}

/// The words of a cell: parted by commas, without the ticks of Markdown; none where the cell is "–".
inline std::vector<std::string> words_of(std::string_view cell) {
  std::vector<std::string> words;
  for (const auto part : split(cell, ',')) {
    std::string word = trimmed(part);
    std::erase(word, '`');
    if (!word.empty() && word != "–") words.push_back(word);
  }
  return words;
}

inline LayerTable read_layer_table(std::string_view markdown) {
  LayerTable table;
  bool inside = false, rule = false;
  for (const auto line : split(markdown, '\n')) {
    const std::string row = trimmed(line);
    if (!inside) {
      inside = row == table_head;
      continue;
    }
    if (!row.starts_with('|')) break;
    if (!rule) {
      rule = true;
      continue;
    }
    const auto cells = split(row, '|');  // one empty part before the first bar and one after the last
    const auto folder = cells.size() == 7 ? words_of(cells[2]) : std::vector<std::string>();
    if (folder.size() != 1) {
      table.faults.push_back("This row of the level table is to have five cells and one folder: " + row);
      continue;
    }
    const auto level = quadrille::parse_whole(trimmed(cells[1]));
    table.layers.push_back({level ? std::optional<int>(static_cast<int>(*level)) : std::nullopt, folder[0],
                            words_of(cells[4]), words_of(cells[5])});
  }
  if (table.layers.empty())
    table.faults.push_back("No level table was found; it begins with " + std::string(table_head));
  return table;
}

}  // namespace layers
