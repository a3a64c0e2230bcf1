#include "studio/command/count_tables.hpp"

#include <algorithm>
#include <ostream>
#include <utility>

#include "sdk/number.hpp"
#include "studio/command/table.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr Align left = Align::left, right = Align::right;

std::vector<Cell> row_of(const BalloonLine& line) {
  return {text_cell(line.colour_name),  text_cell(line.colour.colour), text_cell(line.colour.palette),
          number_cell(line.nominal_in), number_cell(line.inflated_m),  whole_cell(line.used),
          whole_cell(line.spares),      whole_cell(line.on_hand),      whole_cell(line.packs),
          whole_cell(line.pack_size),   whole_cell(line.order),        text_cell("piece")};
}

std::vector<Cell> row_of(const BalloonBag& bag) {
  return {text_cell(bag.colour_name),
          text_cell(bag.colour.colour),
          text_cell(bag.colour.palette),
          number_cell(bag.nominal_in),
          whole_cell(bag.used),
          whole_cell(bag.spares),
          whole_cell(bag.in_stock),
          whole_cell(bag.on_hand),
          text_cell(print_packs(bag)),
          whole_cell(bag.order),
          money_cell(bag.cost_minor, bag.currency),
          text_cell(bag.currency)};
}

std::vector<Cell> row_of(const SupplyOrder& line, const std::string& currency) {
  return {text_cell(line.name),
          text_cell(line.key),
          number_cell(line.needed),
          text_cell(line.unit),
          number_cell(line.from_kits),
          number_cell(line.on_hand),
          number_cell(line.pack),
          whole_cell(line.packs),
          number_cell(line.bought()),
          money_cell(line.cost_minor, currency),
          text_cell(currency),
          text_cell(print_use(line)),
          money_cell(line.rental_minor, currency),
          number_cell(line.mass_kg),
          text_cell(line.kept_where)};
}

/// What all packs cost, currency by currency.
std::string sum_of_bags(const EventCount& count) {
  std::string sums;
  std::vector<std::pair<std::string, Minor>> by_currency;
  bool is_known = true;
  for (const BalloonBag& bag : count.bags) {
    is_known = is_known && bag.cost_minor;
    if (!bag.cost_minor || *bag.cost_minor == 0) continue;
    auto sum = std::ranges::find(by_currency, bag.currency, &std::pair<std::string, Minor>::first);
    if (sum == by_currency.end()) sum = by_currency.insert(sum, {bag.currency, 0});
    sum->second += *bag.cost_minor;
  }
  for (const auto& [currency, sum] : by_currency) sums += (sums.empty() ? "" : " and ") + print_money(sum, currency);
  if (sums.empty()) sums = is_known ? "nothing has to be bought" : "not known";
  return sums + (is_known || by_currency.empty() ? "" : ", and what has no price");
}

void print_balloons(const EventCount& count, LengthStyle lengths, std::ostream& out) {
  std::vector<std::vector<std::string>> balloons, bags;
  for (const BalloonLine& line : count.balloons)
    balloons.push_back({line.colour_name, print_nominal(line.nominal_in), print_inflated(line.inflated_m, lengths),
                        std::to_string(line.used)});
  for (const BalloonBag& bag : count.bags)
    bags.push_back({bag.colour_name, print_nominal(bag.nominal_in), std::to_string(bag.used),
                    std::to_string(bag.spares), std::to_string(bag.on_hand), print_packs(bag),
                    std::to_string(bag.order), print_cost(bag.cost_minor, bag.currency)});
  out << "Balloons: " << count.total_balloons << '\n'
      << print_table({"colour", "size", "inflated to", "used"}, balloons, {left, right, right, right})
      << "\nBalloons to order: " << sum_of_bags(count) << '\n'
      << print_table({"colour", "size", "used", "spares", "from stock", "packs", "order", "cost"}, bags,
                     {left, right, right, right, right, left, right, right});
}

void print_supplies(const SuppliesOrder& supplies, LengthStyle lengths, std::ostream& out) {
  std::vector<std::vector<std::string>> rows;
  for (const SupplyOrder& line : supplies.lines)
    rows.push_back({line.name, print_quantity(line.needed, line.unit, lengths), print_source(line, lengths),
                    line.packs == 0 && line.cost_minor ? "" : print_cost(line.cost_minor, supplies.currency),
                    line.kept_where});
  out << "\nSupplies: " << print_money(supplies.cost_minor, supplies.currency) << " to buy, "
      << print_quantity(supplies.mass_kg, "kg", lengths) << " to carry\n"
      << print_table({"what", "quantity", "how", "cost", "kept"}, with_folded(rows, 0, 44),
                     {left, right, left, right, left});
  for (const KitOrder& kit : supplies.kits)
    out << "  take along: " << kit.kits << " × " << kit.name
        << (kit.kept_where.empty() ? "" : " (" + kit.kept_where + ")") << '\n';
}

void print_power(const EventOrder& order, const Event& event, std::ostream& out) {
  const AirSum& all = order.air.all;
  out << "\nAir: " << print_air(all.litres, lengths_in(event.units));
  if (all.blowing_s > 0) out << "; the inflator runs for " << print_running(all.blowing_s);
  if (all.watt_hours > 0) out << " and draws " << print_watt_hours(all.watt_hours);
  out << '\n';
  for (const AreaPower& power : order.power) {
    out << "  " << place_of({Weight::note, {}, power.area, {}, {}, {}, {}}, event) << ": " << print_fixed(power.amps, 1)
        << " A";
    if (has_cord(power))
      out << ", cord of " << print_cord(power, event.units) << " with " << print_gauges(power, event.units);
    else
      out << ", " << print_own_power(power);
    out << '\n';
  }
}

void print_pieces(const EventCount& count, std::ostream& out) {
  std::vector<std::vector<std::string>> rows;
  for (const PieceCount& piece : count.pieces)
    rows.push_back({piece.name, piece.type, piece.not_built ? "" : std::to_string(piece.balloons),
                    piece.not_built ? "" : std::to_string(piece.clusters), print_state(piece)});
  out << "\nPieces\n"
      << print_table({"name", "type", "balloons", "clusters", ""}, rows, {left, left, right, right, left});
}

}  // namespace

std::vector<ListTable> tables_of(const EventOrder& order) {
  ListTable balloons{"balloon",
                     "Balloons",
                     {"name", "key", "palette", "nominal_in", "inflated_m", "used", "spares", "on_hand", "packs",
                      "pack_size", "order", "unit"},
                     {}};
  ListTable bags{"order",
                 "Order",
                 {"name", "key", "palette", "nominal_in", "used", "spares", "in_stock", "on_hand", "packs_in_words",
                  "order", "cost", "currency"},
                 {}};
  ListTable supplies{"supply",
                     "Supplies",
                     {"name", "key", "used", "unit", "from_kits", "on_hand", "pack_size", "packs", "order", "cost",
                      "currency", "use", "rental", "mass_kg", "kept_where"},
                     {}};
  ListTable pieces{"piece", "Pieces", {"name", "key", "type", "area", "used", "clusters", "state"}, {}};
  for (const BalloonLine& line : order.count.balloons) balloons.rows.push_back(row_of(line));
  for (const BalloonBag& bag : order.count.bags) bags.rows.push_back(row_of(bag));
  for (const SupplyOrder& line : order.supplies.lines) supplies.rows.push_back(row_of(line, order.supplies.currency));
  for (const PieceCount& piece : order.count.pieces)
    pieces.rows.push_back({text_cell(piece.name), text_cell(piece.id), text_cell(piece.type), text_cell(piece.area),
                           whole_cell(piece.balloons), whole_cell(piece.clusters), text_cell(print_state(piece))});
  return {balloons, bags, supplies, pieces};
}

void print_text(const EventOrder& order, const PreparedEvent& prepared, std::ostream& out) {
  const Event& event = prepared.opened.event;
  const LengthStyle lengths = lengths_in(event.units);
  print_balloons(order.count, lengths, out);
  print_supplies(order.supplies, lengths, out);
  if (order.count.total_balloons > 0) print_power(order, event, out);
  print_pieces(order.count, out);
  out << '\n';
  for (const std::string& line : folded(print_spare_rule(prepared.house.house, order.count), 96)) out << line << '\n';
  out << print_house(prepared.house) << '\n';
}

}  // namespace quadrille
