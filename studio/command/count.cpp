// quadrille count: balloons with spares and packs, supplies, pieces; as text, JSON or a table file.
#include "studio/takeoff/count.hpp"

#include <ostream>

#include "sdk/number.hpp"
#include "studio/command/csv.hpp"
#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/takeoff/print.hpp"

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
                              {"as_last_calculated", piece.as_last_calculated},
                              {"not_built", piece.not_built}});
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

void print_text(const EventCount& count, LengthStyle lengths, std::ostream& out) {
  std::vector<std::vector<std::string>> balloons, supplies, pieces;
  for (const BalloonLine& line : count.balloons)
    balloons.push_back({line.colour_name, print_nominal(line.nominal_in), print_inflated(line.inflated_m, lengths),
                        std::to_string(line.used), std::to_string(line.spares), print_packs(line),
                        std::to_string(line.order)});
  for (const SupplyLine& line : count.supplies)
    supplies.push_back({line.name.empty() ? line.key : line.name, print_quantity(line, lengths)});
  for (const PieceCount& piece : count.pieces)
    pieces.push_back({piece.name, piece.type, piece.not_built ? "" : std::to_string(piece.balloons),
                      piece.not_built ? "" : std::to_string(piece.clusters), print_state(piece)});
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
  if (request.csv && !may_write({&*request.csv, 1}, request.event, console)) return Exit::usage;
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
    print_text(total, lengths_in(event.units), console.out);
  const Exit reported = report(*prepared, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
