// Lines, anchors, ballast containers, by hand.
#include "studio/takeoff/placing.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>

#include "studio/model/cluster_line.hpp"

namespace quadrille {
namespace {

Piece tied_piece() {
  Piece piece;
  piece.tie_points = {{0, TiePurpose::front, {0, 0, 2.4}, "crown"}, {1, TiePurpose::side, {1, 0, 1}, "leg"}};
  return piece;
}

SecuringLine line_to(const char* tie, AnchorKind anchor, double x, double y) {
  SecuringLine line;
  line.tie = tie;
  line.anchor = anchor;
  line.x_m = x;
  line.y_m = y;
  return line;
}

double quantity_of(const std::vector<SupplyLine>& supplies, std::string_view key) {
  double sum = 0;
  for (const SupplyLine& supply : supplies)
    if (supply.key == key) sum += supply.quantity;
  return sum;
}

TEST_CASE("securing lines are cut with slack and knots, by kind of cord, and each has its stake or weight") {
  // By hand: from (0, 0, 2.4) to (0, −1.8, 0) it is 3 m (0.6 · 3-4-5): 1.1 · 3 + 0.6 = 3.9 m. From (1, 0, 1) to
  // (1, 0.75, 0) 1.25 m: 1.975 m.
  PlacedPiece placed;
  placed.lines = {line_to("front-1", AnchorKind::stake, 0, -1.8), line_to("front-1", AnchorKind::stake, 0, 1.8),
                  line_to("side-1", AnchorKind::dead_weight, 1, 0.75), line_to("back-9", AnchorKind::stake, 0, 0)};
  placed.lines[1].cord = "polyester-6mm";
  placed.lines[2].mass_kg = 20;
  const auto supplies = placing_supplies(placed, tied_piece(), {}, House{});
  CHECK(quantity_of(supplies, "securing-line-nylon-550lb") == doctest::Approx(3.9 + 1.975));
  CHECK(quantity_of(supplies, "securing-line-polyester-6mm") == doctest::Approx(3.9));
  CHECK(quantity_of(supplies, "stake") == 2);  // the line that has no tie point is left to the standing check
  CHECK(quantity_of(supplies, "dead-weight-20kg") == 1);
}

TEST_CASE("a line to a structure needs no anchor of ours") {
  Area area;
  area.structures.push_back({"s1", "Post", StructureKind::post, 2, 0, 3, "", {}});
  PlacedPiece placed;
  placed.lines = {line_to("front-1", AnchorKind::structure, 0, 0)};
  placed.lines[0].structure = "s1";
  placed.lines[0].height_m = 2.4;
  const auto supplies = placing_supplies(placed, tied_piece(), area, House{});
  REQUIRE(supplies.size() == 1);
  CHECK(supplies[0].quantity == doctest::Approx(1.1 * 2 + 0.6));
}

Piece on_two_plates(double ballast_kg) {
  Piece piece;
  Support foot;
  foot.ballast_kg = ballast_kg;
  piece.supports = {foot, foot};
  piece.supplies = {{"ballast", "Ballast", "kg", 2 * ballast_kg}};
  return piece;
}

TEST_CASE("ballast comes in whole containers on each support") {
  // By hand: 25 kg on each of two plates, 10 l containers of water: 3 on each, 6 in all, 50 l. Sand of 1.6 kg/l: 16 kg in
  // one, 2 on each. 20 kg of water: 2 on each.
  House house;
  auto supplies = placing_supplies({}, on_two_plates(25), {}, house);
  CHECK(quantity_of(supplies, "ballast-container") == 6);
  CHECK(quantity_of(supplies, "ballast-water") == 50);
  CHECK(quantity_of(placing_supplies({}, on_two_plates(20), {}, house), "ballast-container") == 4);
  house.ballast_fill = BallastFill::sand;
  supplies = placing_supplies({}, on_two_plates(25), {}, house);
  CHECK(quantity_of(supplies, "ballast-container") == 4);
  CHECK(quantity_of(supplies, "ballast-sand") == 50);
  CHECK(quantity_of(supplies, "ballast-water") == 0);
  CHECK(placing_supplies({}, on_two_plates(0), {}, house).empty());
}

TEST_CASE("ballast that no support bears has containers too") {
  // By hand: 7 kg, one container of 10 l.
  Piece piece;
  piece.supplies = {{"ballast", "Ballast", "kg", 7}};
  const auto supplies = placing_supplies({}, piece, {}, House{});
  CHECK(quantity_of(supplies, "ballast-container") == 1);
  CHECK(quantity_of(supplies, "ballast-water") == 7);
}

TEST_CASE("the line through the clusters is for the places where the piece asks for it") {
  Piece piece;
  for (std::uint32_t number = 1; number <= 5; ++number)
    piece.clusters.push_back({number, 0.2 * number, Vec3(0, 0, 0.2 * number), Vec3::UnitZ(), 0});
  piece.anchoring = {{Requirement::clusters_together, When::outdoors, "", "", "", ""}};
  Area area;
  CHECK(placing_supplies({}, piece, area, House{}).empty());
  area.site.surroundings = Surroundings::outdoors;
  CHECK(quantity_of(placing_supplies({}, piece, area, House{}), "clusters-together-line") ==
        doctest::Approx(clusters_together_m(piece)));
  piece.anchoring[0].requirement = Requirement::clusters_to_frame;
  CHECK(placing_supplies({}, piece, area, House{}).empty());
}

TEST_CASE("what placing takes is in the counts of the piece and of the event, and adds up") {
  PlacedPiece placed;
  placed.lines = {line_to("front-1", AnchorKind::stake, 0, -1.8)};
  auto built = std::make_shared<BuiltPiece>();
  built->status = Status::ok;
  built->piece = tied_piece();
  Area area;
  area.id = "a1";
  Event event;
  for (const char* id : {"p1", "p2"}) {
    placed.id = id;
    area.pieces.push_back(placed);
  }
  event.areas.push_back(area);
  const EventCount count = count_event(event, {{"p1", built}, {"p2", built}}, {}, House{});
  CHECK(quantity_of(count.pieces[0].supplies, "stake") == 1);
  CHECK(quantity_of(count.supplies, "stake") == 2);
  CHECK(quantity_of(count.supplies, "securing-line-nylon-550lb") == doctest::Approx(7.8));
}

}  // namespace
}  // namespace quadrille
