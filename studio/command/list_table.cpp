#include "studio/command/list_table.hpp"

#include <algorithm>
#include <utility>

#include "sdk/number.hpp"
#include "studio/command/csv.hpp"

namespace quadrille {
namespace {

std::size_t place_of(const std::vector<std::string>& heads, const std::string& head) {
  return static_cast<std::size_t>(std::ranges::find(heads, head) - heads.begin());
}

}  // namespace

Cell text_cell(std::string text) { return {std::move(text), std::nullopt, -1}; }

Cell number_cell(double number) { return {print_number(number), number, -1}; }

Cell whole_cell(std::int64_t number) { return {std::to_string(number), static_cast<double>(number), 0}; }

Cell money_cell(Minor amount, std::string_view currency) {
  const auto digits = minor_digits(currency);
  if (!digits) return whole_cell(amount);
  std::string text = print_money(amount, currency);
  text.erase(text.rfind(' '));
  const auto number = parse_number(text);
  return {std::move(text), number.value_or(0), *digits};
}

Cell money_cell(const std::optional<Minor>& amount, std::string_view currency) {
  return amount ? money_cell(*amount, currency) : Cell{};
}

Cell share_cell(PartsPerMillion share) {
  std::string text = print_share(share);
  text.erase(text.rfind(' '));
  const auto number = parse_number(text);
  return {std::move(text), number.value_or(0), -1};
}

std::string csv_of(const std::vector<ListTable>& tables) {
  std::vector<std::string> heads{"list"};
  for (const ListTable& table : tables)
    for (const std::string& head : table.heads)
      if (place_of(heads, head) == heads.size()) heads.push_back(head);
  std::vector<std::vector<std::string>> rows{heads};
  for (const ListTable& table : tables)
    for (const auto& cells : table.rows) {
      std::vector<std::string>& row = rows.emplace_back(heads.size());
      row[0] = table.kind;
      for (std::size_t i = 0; i < cells.size(); ++i)
        row[place_of(heads, table.heads[i])] = cells[i].number ? cells[i].text : harmless_cell(cells[i].text);
    }
  return print_csv(rows);
}

}  // namespace quadrille
