// Keeping pieces in the repertoire and placing them again.
#include "studio/model/repertoire.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

namespace {

PlacedPiece gate() {
  PlacedPiece piece;
  piece.id = "p7", piece.name = "Gate arch", piece.type = "arch", piece.x_m = 3, piece.y_m = 1, piece.locked = true;
  piece.values = {{"span", Value::of_number(Kind::length, 2.5)}};
  piece.colours = {{"garden", "fern"}, {"garden", "sand"}};
  piece.price_minor = 12000;
  piece.note = "Two plates";
  return piece;
}

}  // namespace

TEST_CASE("a piece that is kept and placed again is the same but for id, place and lock") {
  House house;
  house.currency = "EUR";
  house = with_kept(house, kept_piece(gate(), "Gate", 15000));
  REQUIRE(house.repertoire.size() == 1);
  CHECK(house.repertoire[0].key == "piece-1");
  PlacedPiece expected = gate();
  expected.id.clear(), expected.name = "Gate", expected.x_m = expected.y_m = 0, expected.locked = false;
  expected.price_minor = 15000;
  CHECK(placed_from(house, house.repertoire[0], "EUR") == expected);
  expected.price_minor.reset();  // an amount of another currency is another amount
  CHECK(placed_from(house, house.repertoire[0], "USD") == expected);
}

TEST_CASE("a name is borne once: keeping under it again replaces, renaming to it is refused") {
  House house = with_kept({}, kept_piece(gate(), "Gate", {}));
  house = with_kept(house, kept_piece(gate(), "Side", 900));
  PlacedPiece wider = gate();
  wider.values["span"] = Value::of_number(Kind::length, 4);
  house = with_kept(house, kept_piece(wider, "Gate", 100));
  REQUIRE(house.repertoire.size() == 2);
  CHECK(house.repertoire[0].key == "piece-1");
  CHECK(house.repertoire[0].values.at("span").number == 4);
  CHECK(with_name_of_kept(house, "piece-1", "Side") == house);
  CHECK(with_name_of_kept(house, "piece-9", "Other") == house);
  CHECK(find_by_name(with_name_of_kept(house, "piece-1", "Main gate"), "Main gate")->key == "piece-1");
  const House without = without_kept_piece(house, "piece-1");
  CHECK(find_by_key(without, "piece-1") == nullptr);
  CHECK(find_by_name(without, "Side") != nullptr);
  CHECK(with_kept(without, kept_piece(gate(), "Gate", {})).repertoire.back().key == "piece-1");
}
