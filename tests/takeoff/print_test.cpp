// The lines of the lists in words.
#include "studio/takeoff/print.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

constexpr LengthStyle feet = LengthStyle::feet_inches, metres = LengthStyle::metres;

std::string quantity(const char* unit, double quantity, LengthStyle lengths) {
  return print_quantity({"key", "Name", unit, quantity}, lengths);
}

TEST_CASE("supplies are told in one way: 116' 1 1/2\" of line was once 116.1 ft in the count and not in the drawing") {
  // 1 ft = 0.3048 m: 35.4 m are 116.14 ft = 116 ft 1.7 in, to the nearest half inch 1 1/2; 3.5 m are 11 ft 5.8 in.
  CHECK(quantity("m", 35.4, feet) == "116' 1 1/2\"");
  CHECK(quantity("m", 3.5, feet) == "11' 6\"");
  CHECK(quantity("m", 35.4, metres) == "35.40 m");
  // 1 lb = 0.45359237 kg: 100 kg are 220.46 lb.
  CHECK(quantity("kg", 100, feet) == "220.5 lb");
  CHECK(quantity("kg", 100, metres) == "100.0 kg");
  CHECK(quantity("piece", 7, feet) == "7");
  CHECK(quantity("l", 2.5, feet) == "2.50 l");
  CHECK(quantity("l", 2, metres) == "2 l");
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
  CHECK(print_packs(line) == "no colour chosen");
  line.colour = {"fair", "brick"};
  CHECK(print_packs(line) == "not sold in this size");
  line.pack_size = 100;
  CHECK(print_packs(line) == "from the packs above");
  line.bought = {{100, 2, 900}, {50, 1, 500}};
  CHECK(print_packs(line) == "2 × 100 + 1 × 50");
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
