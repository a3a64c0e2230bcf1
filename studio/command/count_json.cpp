#include "studio/command/count_json.hpp"

namespace quadrille {
namespace {

Json json_of(const std::vector<BoughtPacks>& bought) {
  Json list = Json::array();
  for (const BoughtPacks& kind : bought)
    list.push_back({{"pack_size", kind.pack_size}, {"packs", kind.packs}, {"price_minor", kind.price_minor}});
  return list;
}

Json json_of(const BalloonLine& line) {
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
          {"bought", json_of(line.bought)}};
}

Json json_of(const BalloonBag& bag) {
  return {{"nominal_in", bag.nominal_in},
          {"colour", bag.colour.colour},
          {"palette", bag.colour.palette},
          {"colour_name", bag.colour_name},
          {"used", bag.used},
          {"failure_rate", bag.failure_rate},
          {"spares", bag.spares},
          {"in_stock", bag.in_stock},
          {"on_hand", bag.on_hand},
          {"is_sold", bag.is_sold},
          {"packs", bag.packs},
          {"pack_size", bag.pack_size},
          {"order", bag.order},
          {"bought", json_of(bag.bought)},
          {"cost_minor", quadrille::json_of(bag.cost_minor)},
          {"currency", bag.currency}};
}

Json json_of(const SupplyOrder& line) {
  return {{"key", line.key},
          {"name", line.name},
          {"unit", line.unit},
          {"needed", line.needed},
          {"from_kits", line.from_kits},
          {"in_stock", line.in_stock},
          {"on_hand", line.on_hand},
          {"pack", line.pack},
          {"packs", line.packs},
          {"to_buy", line.to_buy},
          {"bought", line.bought()},
          {"cost_minor", quadrille::json_of(line.cost_minor)},
          {"reused", line.reused},
          {"rental_minor", line.rental_minor},
          {"mass_kg", line.mass_kg},
          {"kept_where", line.kept_where}};
}

Json json_of(const SuppliesOrder& order) {
  Json json{{"currency", order.currency}, {"cost_minor", order.cost_minor}, {"rental_minor", order.rental_minor},
            {"mass_kg", order.mass_kg},   {"lines", Json::array()},         {"kits", Json::array()}};
  for (const SupplyOrder& line : order.lines) json["lines"].push_back(json_of(line));
  for (const KitOrder& kit : order.kits)
    json["kits"].push_back({{"key", kit.key},
                            {"name", kit.name},
                            {"kits", kit.kits},
                            {"rental_minor", kit.rental_minor},
                            {"kept_where", kit.kept_where}});
  return json;
}

Json json_of(const AirSum& sum) {
  return {{"area", sum.area},
          {"balloons", sum.balloons},
          {"litres", sum.litres},
          {"blowing_s", sum.blowing_s},
          {"watt_hours", sum.watt_hours}};
}

Json json_of(const AirNeed& air) {
  Json json{{"all", json_of(air.all)}, {"areas", Json::array()}, {"lines", Json::array()}};
  for (const AirSum& sum : air.areas) json["areas"].push_back(json_of(sum));
  for (const AirLine& line : air.lines)
    json["lines"].push_back({{"area", line.area},
                             {"nominal_in", line.nominal_in},
                             {"inflated_m", line.inflated_m},
                             {"inflate_to_m", line.inflate_to_m},
                             {"balloons", line.balloons},
                             {"litres", line.litres}});
  return json;
}

Json json_of(const PowerCord* cord, double drop) {
  if (cord == nullptr) return nullptr;
  return {{"name", cord->name}, {"area_mm2", cord->area_mm2}, {"voltage_drop", drop}, {"ampacity_a", cord->ampacity_a}};
}

Json json_of(const AreaPower& power) {
  return {{"area", power.area},
          {"watts", power.watts},
          {"volts", power.volts},
          {"amps", power.amps},
          {"running_s", power.running_s},
          {"watt_hours", power.watt_hours},
          {"cord_m", power.cord_m ? Json(*power.cord_m) : Json(nullptr)},
          {"awg_cord", json_of(power.awg, power.awg_drop)},
          {"metric_cord", json_of(power.metric, power.metric_drop)},
          {"generator_w", power.generator_w},
          {"battery_wh", power.battery_wh}};
}

Json json_of(const PieceCount& piece) {
  return {{"id", piece.id},
          {"name", piece.name},
          {"type", piece.type},
          {"area", piece.area},
          {"balloons", piece.balloons},
          {"clusters", piece.clusters},
          {"by_slot", piece.by_slot},
          {"as_last_calculated", piece.as_last_calculated},
          {"not_built", piece.not_built}};
}

}  // namespace

Json json_of(const LoadedHouse& house) {
  return {{"name", house.house.name},
          {"is_standard", house.is_standard},
          {"file", house.is_standard ? "" : house.file.string()},
          {"currency", house.house.currency}};
}

Json json_of(const EventOrder& order, const PreparedEvent& prepared) {
  const EventCount& count = order.count;
  Json json;
  for (const char* list : {"balloons", "supplies", "pieces"}) json[list] = Json::array();
  for (const BalloonLine& line : count.balloons) json["balloons"].push_back(json_of(line));
  for (const SupplyLine& line : count.supplies)
    json["supplies"].push_back(
        {{"key", line.key}, {"name", line.name}, {"quantity", line.quantity}, {"unit", line.unit}});
  for (const PieceCount& piece : count.pieces) json["pieces"].push_back(json_of(piece));
  json["total_balloons"] = count.total_balloons;
  json["bags"] = Json::array();
  for (const BalloonBag& bag : count.bags) json["bags"].push_back(json_of(bag));
  json["short_chance"] = count.short_chance;
  json["short_chance_with_packs"] = count.short_chance_with_packs;
  json["supplies_order"] = json_of(order.supplies);
  json["air"] = json_of(order.air);
  json["power"] = Json::array();
  for (const AreaPower& power : order.power) json["power"].push_back(json_of(power));
  json["house"] = json_of(prepared.house);
  return json;
}

}  // namespace quadrille
