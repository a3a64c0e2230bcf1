// The lines of the lists in words.
#include "studio/takeoff/print.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

constexpr LengthStyle feet = LengthStyle::feet_inches, metres = LengthStyle::metres;

std::string quantity(const char* unit, double quantity, LengthStyle lengths) {
  return print_quantity({"key", "Name", unit, quantity}, lengths);
}

TEST_CASE("supplies are told in one way, and no finer than they are measured out: 116' 1 1/2\" of line was asked for") {
  // 1 ft = 0.3048 m: 35.41 m are 116.17 ft, of which 117 suffice; 2.5 m are 8 ft 2.4 in, to the nearest half inch 2 1/2.
  CHECK(quantity("m", 35.41, feet) == "117'");
  CHECK(quantity("m", 117 * 0.3048, feet) == "117'");
  CHECK(quantity("m", 2.5, feet) == "8' 2 1/2\"");
  CHECK(quantity("m", 35.41, metres) == "35.5 m");
  CHECK(quantity("m", 35.4, metres) == "35.4 m");
  CHECK(quantity("m", 0.25, metres) == "0.25 m");
  // 1 lb = 0.45359237 kg: 100 kg are 220.46 lb.
  CHECK(quantity("kg", 100, feet) == "220.5 lb");
  CHECK(quantity("kg", 100, metres) == "100.0 kg");
  CHECK(quantity("piece", 7, feet) == "7");
  // 1 US gallon = 231 in³ = 3.785 l: 2.5 l are 0.660 gal.
  CHECK(quantity("l", 2.5, feet) == "0.7 gal");
  CHECK(quantity("l", 2, metres) == "2.0 l");
  CHECK(quantity("l", 110, metres) == "110 l");  // with a decimal it looked weighed
}

TEST_CASE("sizes: nominal in inches always, inflated in the event's units") {
  CHECK(print_nominal(11) == "11 in");
  CHECK(print_nominal(2.5) == "2.5 in");
  // 0.229 m are 9.016 in.
  CHECK(print_inflated(0.229, feet) == "9.0 in");
  CHECK(print_inflated(0.229, metres) == "22.9 cm");
  CHECK(lengths_in(Units::feet) == feet);
  CHECK(lengths_in(Units::metric) == metres);
}

TEST_CASE("packs: what is bought, or why nothing is: a slot without colour was once \"not sold in this size\"") {
  BalloonLine line;
  line.used = line.order = 3;
  CHECK(print_packs(line) == "no colour chosen");
  line.colour = {"fair", "brick"};
  CHECK(print_packs(line) == "not sold in this size");
  line.order = 0;
  CHECK(print_packs(line) == "from the packs above");
  line.on_hand = 3;
  CHECK(print_packs(line) == "from stock");
  line.bought = {{100, 2, 900}, {50, 1, 500}};
  CHECK(print_packs(line) == "2 × 100 + 1 × 50");
  BalloonBag bag;
  CHECK(print_packs(bag) == "from stock");
  bag.order = 3;
  CHECK(print_packs(bag) == "no colour chosen");
  bag.colour = line.colour;
  CHECK(print_packs(bag) == "not sold in this size");
  bag.bought = line.bought;
  CHECK(print_packs(bag) == "2 × 100 + 1 × 50");
}

TEST_CASE("the rule for spares stands in words: a decorator once found it nowhere") {
  House house;
  house.failures = {{0, std::nullopt, 0.02, {}},
                    {36, std::nullopt, 0.05, {}},
                    {0, Finish::metallic, 0.03, {}},
                    {11, Finish::pearl, 0.025, {}}};
  EventCount count;
  CHECK(print_spare_rule(house, count) ==
        "Spares: so many that each colour and size runs short in at most 5 of 100 builds, where 2 in 100 balloons fail "
        "(36 in: 5, metallic: 3, 11 in pearl: 2.5), spares too; at least 1 of each.");
  count.total_balloons = 100;
  count.short_chance = 0.081;
  count.short_chance_with_packs = 1e-7;
  CHECK(print_spare_rule(house, count)
            .ends_with(" Something runs short in 8.1 of 100 such events, and in less than 0.1 with all that is left in "
                       "the packs."));
}

TEST_CASE("how a supply is come by") {
  SupplyOrder line;
  line.unit = "m";
  line.pack = 100;
  line.packs = 2;
  CHECK(print_source(line, metres) == "buy 2 × 100.0 m");
  line.on_hand = 12.5;
  line.from_kits = 3;
  CHECK(print_source(line, metres) == "3.0 m in kits + 12.5 m from stock + buy 2 × 100.0 m");
  SupplyOrder rods;
  rods.unit = "piece";
  rods.pack = 1;
  rods.packs = 3;
  rods.reused = true;
  CHECK(print_source(rods, feet) == "buy 3");
  CHECK(print_use(rods) == "reused");
  SupplyOrder unknown;
  unknown.unit = "piece";
  unknown.to_buy = 4;
  CHECK(print_source(unknown, feet) == "buy 4 (no price)");
  CHECK(print_cost(unknown.cost_minor, "USD") == "not known");
  CHECK(print_cost(1495, "USD") == "14.95 USD");
  CHECK(print_use(unknown).empty());
}

TEST_CASE("air, energy and running time") {
  // 1 cu ft = 0.3048³ m³ = 28.316846592 l: 1000 l are 35.31 cu ft.
  CHECK(print_air(1000, feet) == "35.3 cu ft");
  CHECK(print_air(1000.4, metres) == "1000 l");
  CHECK(print_watt_hours(84.2) == "85 Wh");
  CHECK(print_watt_hours(85) == "85 Wh");
  CHECK(print_watt_hours(1210) == "1.3 kWh");
  CHECK(print_running(40) == "40 s");
  CHECK(print_running(91) == "2 min");
  CHECK(print_running(7500) == "2 h 05 min");
}

TEST_CASE("a piece says how its counts are to be taken") {
  PieceCount piece;
  CHECK(print_state(piece).empty());
  piece.not_built = true;
  CHECK(print_state(piece) == "not built");
  piece = {};
  piece.as_last_calculated = true;
  CHECK(print_state(piece) == "as last calculated");
}

}  // namespace
}  // namespace quadrille
