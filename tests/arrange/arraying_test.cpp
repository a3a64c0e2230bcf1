// Arrays whose halves face each other, and arrays in words.
#include "studio/arrange/arraying.hpp"

#include "studio/arrange/mirroring.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

ParameterTable handed_table() {
  ParameterTable table(1);
  table[0].key = "hand", table[0].kind = Kind::choice;
  table[0].choices = {{"right", "Right"}, {"left", "Left"}};
  table[0].standard = Value::of_text(Kind::choice, "right");
  return table;
}

}  // namespace

TEST_CASE("pairs along an aisle are mirror images about its middle, stakes too") {
  Venue venue;
  venue.block("p", 1, 0.4);
  SecuringLine stake;
  stake.tie = "front-1", stake.x_m = -0.8, stake.y_m = 0.3;
  venue.event = with_lines(venue.event, "p", {stake});
  const ParameterTable table = handed_table();
  const ParameterTables tables{{"block", &table}};
  const Copies pairs = arrayed(venue.event, {"p", "nobody"}, {{2, 3}, steps_of(2, 2), true}, tables, venue.built);
  REQUIRE(pairs.ids.size() == 3);
  const PlacedPiece& across = *find_piece(pairs.event, pairs.ids[0]);
  const PlacedPiece& behind = *find_piece(pairs.event, pairs.ids[1]);
  // By hand: the aisle's middle is 1 + 3/2 = 2.5; a stake at 1 - 0.8 = 0.2 has its image at 4.8, 0.8 right of 4.
  CHECK(across.x_m == 4);
  CHECK(across.lines[0].x_m == doctest::Approx(0.8));
  CHECK(across.lines[0].y_m == 0.3);
  CHECK(across.values.at("hand").text == "left");
  CHECK(behind.x_m == 1);
  CHECK(behind.y_m == 2);
  CHECK(behind.values.empty());
  CHECK(find_piece(pairs.event, "p")->values.empty());
}

TEST_CASE("a line of a mirrored copy goes on from the tie point on the other side") {
  Venue venue;
  venue.block("p", 0, 1);
  auto made = std::make_shared<BuiltPiece>(*venue.built["p"]);
  TiePoint left, right;
  left.point = Vec3(-0.4, 0, 1.8), left.purpose = TiePurpose::side;
  right.point = Vec3(0.4, 0, 1.8), right.purpose = TiePurpose::side;
  made->piece.tie_points = {left, right};
  venue.built["p"] = made;
  SecuringLine line;
  line.tie = "side-1", line.x_m = -1;
  venue.event = with_lines(venue.event, "p", {line});
  const ParameterTable table = handed_table();
  const Copies pair = arrayed(venue.event, {"p"}, {{2, 3}, {}, true}, {{"block", &table}}, venue.built);
  CHECK(find_piece(pair.event, pair.ids[0])->lines[0].tie == "side-2");
}

TEST_CASE("an array is told in words before it is made") {
  const ArrayPlan aisle{{2, 3}, steps_of(5, 2), true};
  CHECK(pieces_of(aisle, 1) == 10);
  CHECK(array_words(aisle, 1, Units::metric) ==
        "10 pieces in all, 9 of them new: 2 along, 3.00 m apart; 5 in depth, 2.00 m apart over 8.00 m.");
  CHECK(array_words({steps_of(3, -1.2192), {}}, 2, Units::feet) ==
        "6 pieces in all, 4 of them new: 3 along, 4' apart over 8'.");  // 4 ft of 0.3048 m
  CHECK(array_words({}, 3, Units::metric) == "Nothing is added: there is one place only.");
}
