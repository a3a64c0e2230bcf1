// quadrille count: balloons with spares and packs, supplies, pieces; as text, JSON or a table file.
#include "studio/takeoff/count.hpp"

#include <ostream>
#include <system_error>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/command/csv.hpp"
#include "studio/command/drawing_file.hpp"
#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"

namespace quadrille {
namespace {

Json json_of(const BalloonLine& line) {
  Json bought = Json::array();
  for (const BoughtPacks& kind : line.bought) bought.push_back({{"pack_size", kind.pack_size}, {"packs", kind.packs}});
  return {{"nominal_in", line.nominal_in},
          {"inflated_m", line.inflated_m},
          {"colour", line.colour.colour},
          {"palette", line.colour.palette},
          {"colour_name", line.colour_name},
          {"used", line.used},
          {"spares", line.spares},
          {"on_hand", line.on_hand},
          {"packs", line.packs},
          {"pack_size", line.pack_size},
          {"order", line.order},
          {"bought", bought}};
}

Json json_of(const EventCount& count) {
  Json json{{"balloons", Json::array()}, {"supplies", Json::array()}, {"pieces", Json::array()}};
  for (const BalloonLine& line : count.balloons) json["balloons"].push_back(json_of(line));
  for (const SupplyLine& line : count.supplies)
    json["supplies"].push_back(
        {{"key", line.key}, {"name", line.name}, {"quantity", line.quantity}, {"unit", line.unit}});
  for (const PieceCount& piece : count.pieces)
    json["pieces"].push_back({{"id", piece.id},
                              {"name", piece.name},
                              {"type", piece.type},
                              {"area", piece.area},
                              {"balloons", piece.balloons},
                              {"clusters", piece.clusters},
                              {"by_slot", piece.by_slot},
                              {"as_last_calculated", piece.as_last_calculated}});
  json["total_balloons"] = count.total_balloons;
  return json;
}

std::string csv_of(const EventCount& count) {
  std::vector<std::vector<std::string>> rows{{"list", "name", "key", "palette", "nominal_in", "inflated_m", "used",
                                              "spares", "on_hand", "packs", "pack_size", "order", "unit"}};
  for (const BalloonLine& line : count.balloons)
    rows.push_back({"balloon", harmless_cell(line.colour_name), harmless_cell(line.colour.colour),
                    harmless_cell(line.colour.palette), print_number(line.nominal_in), print_number(line.inflated_m),
                    std::to_string(line.used), std::to_string(line.spares), std::to_string(line.on_hand),
                    std::to_string(line.packs), std::to_string(line.pack_size), std::to_string(line.order), "piece"});
  for (const SupplyLine& line : count.supplies)
    rows.push_back({"supply", harmless_cell(line.name), harmless_cell(line.key), "", "", "",
                    print_number(line.quantity), "", "", "", "", "", harmless_cell(line.unit)});
  return print_csv(rows);
}

std::string without_zero_decimals(std::string text) {
  return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

std::string inflated_text(double metres, Units units) {
  return units == Units::feet ? without_zero_decimals(print_fixed(metres / metres_per_inch, 1)) + " in"
                              : without_zero_decimals(print_fixed(metres * 100, 1)) + " cm";
}

std::string quantity_text(const SupplyLine& line, Units units) {
  const auto shown = [](double quantity) { return without_zero_decimals(print_fixed(quantity, 1)); };
  if (line.unit == "piece") return shown(line.quantity);
  if (units == Units::feet && line.unit == "m") return shown(line.quantity / metres_per_foot) + " ft";
  if (units == Units::feet && line.unit == "kg") return shown(line.quantity / kilograms_per_pound) + " lb";
  return shown(line.quantity) + " " + line.unit;
}

std::string packs_text(const BalloonLine& line) {
  std::string text;
  for (const BoughtPacks& kind : line.bought)
    text += (text.empty() ? "" : " + ") + std::to_string(kind.packs) + " × " + std::to_string(kind.pack_size);
  if (!text.empty()) return text;
  return line.pack_size > 0 ? "from the packs above" : "not sold in this size";
}

void print_text(const EventCount& count, Units units, std::ostream& out) {
  std::vector<std::vector<std::string>> balloons, supplies, pieces;
  for (const BalloonLine& line : count.balloons)
    balloons.push_back({line.colour_name, print_number(line.nominal_in) + " in", inflated_text(line.inflated_m, units),
                        std::to_string(line.used), std::to_string(line.spares), packs_text(line),
                        std::to_string(line.order)});
  for (const SupplyLine& line : count.supplies) supplies.push_back({line.name, quantity_text(line, units)});
  for (const PieceCount& piece : count.pieces)
    pieces.push_back({piece.name, piece.type, std::to_string(piece.balloons), std::to_string(piece.clusters),
                      piece.as_last_calculated ? "as last calculated: its type is not available" : ""});
  constexpr Align left = Align::left, right = Align::right;
  out << "Balloons: " << count.total_balloons << '\n'
      << print_table({"colour", "size", "inflated to", "used", "spares", "packs", "order"}, balloons,
                     {left, right, right, right, right, left, right})
      << "\nSupplies\n"
      << print_table({"what", "quantity"}, supplies, {left, right}) << "\nPieces\n"
      << print_table({"name", "type", "balloons", "clusters", ""}, pieces, {left, left, right, right, left});
}

}  // namespace

Exit count(const CountRequest& request, const Console& console) {
  std::error_code not_there;
  if (request.csv && std::filesystem::equivalent(request.event, *request.csv, not_there)) {
    console.err << request.csv->string() << ": the table would replace the event itself; give it another name.\n";
    return Exit::usage;
  }
  const auto prepared = prepare(request.event, console);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  const Event& event = prepared->opened.event;
  const EventCount total = count_event(event, prepared->built, prepared->palettes.palettes);
  Exit written = Exit::done;
  if (request.json)
    console.out << printed(json_of(total));
  else if (request.csv)
    written = write_output(*request.csv, csv_of(total), console);
  else
    print_text(total, event.units, console.out);
  const Exit reported = report_problems(*prepared, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
