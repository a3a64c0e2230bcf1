// Supplies: kits, shelf, packs, by hand, and what must hold whatever is asked for.
#include "studio/takeoff/supply_order.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <random>

namespace quadrille {
namespace {

SupplyStock entry(const char* key, double pack, Minor price, double on_hand = 0) {
  SupplyStock stock;
  stock.key = key;
  stock.pack = pack;
  stock.price_minor = price;
  stock.on_hand = on_hand;
  return stock;
}

FrameKit kit(const char* key, std::int64_t on_hand, std::vector<FrameKit::Part> parts) {
  FrameKit made;
  made.key = key;
  made.on_hand = on_hand;
  made.parts = std::move(parts);
  return made;
}

TEST_CASE("line is bought in whole spools, after what is on the shelf") {
  // By hand: 235 m needed, 20 m there, 215 m in spools of 100 m: 3 at 7.00 cost 21.00.
  House house;
  house.supplies = {entry("cluster-line", 100, 700, 20)};
  house.supplies[0].mass_kg = 0.003;
  house.supplies[0].kept_where = "Line drum";
  const std::vector<SupplyLine> needed{{"cluster-line", "Line, clusters to the frame", "m", 235}};
  const SuppliesOrder order = order_supplies(needed, house);
  REQUIRE(order.lines.size() == 1);
  const SupplyOrder& line = order.lines[0];
  CHECK(line.on_hand == 20);
  CHECK(line.to_buy == 215);
  CHECK(line.packs == 3);
  CHECK(line.bought() == 300);
  CHECK(line.cost_minor == 2100);
  CHECK_FALSE(line.reused);
  CHECK(line.rental_minor == 0);
  CHECK(line.mass_kg == doctest::Approx(0.705));
  CHECK(line.kept_where == "Line drum");
  CHECK(order.cost_minor == 2100);
}

TEST_CASE("a need that is a whole number of packs only but for rounding takes no further pack") {
  // 12 · 0.1 m in floating point is 1.2000000000000002 m.
  House house;
  house.supplies = {entry("strip", 0.4, 100)};
  double sum = 0;
  for (int i = 0; i < 12; ++i) sum += 0.1;
  const std::vector<SupplyLine> needed{{"strip", "", "m", sum}};
  CHECK(order_supplies(needed, house).lines[0].packs == 3);
}

TEST_CASE("what is reused is charged by the unit, and its mass may stand in its key") {
  // By hand: 4 plates of 8.0 kg at 5.00: 20.00 and 32 kg; 1 there, 3 to buy at 45.00.
  House house;
  house.supplies = {entry("base-plate", 1, 4500, 1)};
  house.supplies[0].reused = true;
  house.supplies[0].rental_minor = 500;
  house.supplies[0].mass_kg = 99;
  const std::vector<SupplyLine> needed{{"base-plate-450mm-8.0kg", "Base plate", "piece", 4}};
  const SuppliesOrder order = order_supplies(needed, house);
  CHECK(order.lines[0].reused);
  CHECK(order.lines[0].rental_minor == 2000);
  CHECK(order.lines[0].mass_kg == 32);
  CHECK(order.lines[0].cost_minor == 13'500);
  CHECK(order.rental_minor == 2000);
}

TEST_CASE("whole kits go first where all their parts are needed, and cost their own rental") {
  // By hand: 7 rods, 3 sockets. A kit of 3 rods and 1 socket, 5 of them on hand: two fit (6 rods, 2 sockets), a third
  // would need 9 rods. 1 rod and 1 socket are left; the rod lies on the shelf.
  House house;
  house.supplies = {entry("rod", 1, 1200, 4), entry("socket", 1, 800)};
  house.supplies[0].reused = true;
  house.supplies[0].rental_minor = 150;
  house.kits = {kit("arch", 5, {{"rod-glass", 3}, {"socket", 1}}), kit("stand", 1, {{"stand", 1}})};
  house.kits[0].rental_minor = 2200;
  const std::vector<SupplyLine> needed{{"rod-glass-8mm", "Rod", "piece", 7}, {"socket-8mm", "Socket", "piece", 3}};
  const SuppliesOrder order = order_supplies(needed, house);
  REQUIRE(order.kits.size() == 1);
  CHECK(order.kits[0].kits == 2);
  CHECK(order.kits[0].rental_minor == 4400);
  CHECK(order.lines[0].from_kits == 6);
  CHECK(order.lines[0].on_hand == 1);
  CHECK(order.lines[0].packs == 0);
  CHECK(order.lines[0].rental_minor == 150);  // the loose rod only
  CHECK(order.lines[1].from_kits == 2);
  CHECK(order.lines[1].packs == 1);
  CHECK(order.rental_minor == 4550);
}

TEST_CASE("an entry that stands for several supplies is one shelf") {
  House house;
  house.supplies = {entry("rod", 1, 1000, 5)};
  const std::vector<SupplyLine> needed{{"rod-8mm", "", "piece", 4}, {"rod-14mm", "", "piece", 4}};
  const SuppliesOrder order = order_supplies(needed, house);
  CHECK(order.lines[0].on_hand == 4);
  CHECK(order.lines[1].on_hand == 1);
  CHECK(order.lines[1].packs == 3);
}

TEST_CASE("what has no entry costs what is not known, and water costs nothing") {
  const std::vector<SupplyLine> needed{
      {"velvet-bow", "Velvet bow", "piece", 3}, {"ballast", "Ballast", "kg", 20}, {"ballast-water", "Water", "l", 20}};
  const SuppliesOrder order = order_supplies(needed, House{});
  REQUIRE(order.lines.size() == 2);  // ballast stands as its containers and filling
  CHECK_FALSE(order.lines[0].cost_minor.has_value());
  CHECK(order.lines[0].bought() == 3);
  CHECK(order.lines[1].cost_minor == 0);
  CHECK(order.lines[1].mass_kg == 20);
  CHECK(order.cost_minor == 0);
}

TEST_CASE("sums that money cannot hold are not known") {
  House house;
  house.supplies = {entry("gold", 1e-6, highest_pack_price)};
  const std::vector<SupplyLine> needed{{"gold", "", "piece", 1e6}, {"nan", "", "m", std::nan("")}};
  const SuppliesOrder order = order_supplies(needed, house);
  CHECK_FALSE(order.lines[0].cost_minor.has_value());
  CHECK(order.lines[1].needed == 0);
}

TEST_CASE("kits, shelf and packs are always enough, and nothing is taken that is not there") {
  std::mt19937 random(20270619);
  const auto pick = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  const char* const keys[] = {"rod-a", "rod-b", "line", "bow", "plate-8kg"};
  const char* const stems[] = {"rod", "rod-a", "line", "plate"};
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    std::vector<SupplyLine> needed;
    for (const char* key : keys)
      if (pick(0, 3) > 0) needed.push_back({key, "", "piece", 0.25 * pick(0, 400)});
    House house;
    for (const char* stem : stems)
      if (pick(0, 2) > 0) house.supplies.push_back(entry(stem, 0.5 * pick(1, 40), pick(0, 5000), 0.5 * pick(0, 60)));
    for (int i = pick(0, 2); i > 0; --i)
      house.kits.push_back(kit("kit", pick(0, 4), {{keys[pick(0, 4)], 0.5 * pick(0, 6)}, {stems[pick(0, 3)], 1}}));
    const SuppliesOrder order = order_supplies(needed, house);
    REQUIRE(order.lines.size() == needed.size());
    Minor cost = 0;
    std::map<const SupplyStock*, double> drawn;
    for (std::size_t i = 0; i < needed.size(); ++i) {
      const SupplyOrder& line = order.lines[i];
      REQUIRE(line.needed == needed[i].quantity);
      REQUIRE(line.from_kits + line.on_hand + line.bought() >= line.needed * (1 - 1e-9));
      REQUIRE(line.on_hand >= 0);
      REQUIRE(line.from_kits >= 0);
      REQUIRE(line.from_kits + line.on_hand <= line.needed * (1 + 1e-9));
      REQUIRE(line.packs >= 0);
      const SupplyStock* const stock = find_supply(house, line.key);
      if (stock != nullptr) {
        drawn[stock] += line.on_hand;
        REQUIRE(static_cast<double>(line.packs - 1) * stock->pack < line.to_buy + 1e-9);  // no pack too many
        REQUIRE(line.cost_minor == line.packs * stock->price_minor);
      }
      cost += line.cost_minor.value_or(0);
    }
    for (const auto& [stock, sum] : drawn) REQUIRE(sum <= stock->on_hand + 1e-9);
    REQUIRE(order.cost_minor == cost);
  }
}

}  // namespace
}  // namespace quadrille
