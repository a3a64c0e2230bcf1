// Counts of events put together by hand, and the rule that the totals are the sums of the pieces.
#include "studio/takeoff/count.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <memory>
#include <numeric>

namespace quadrille {
namespace {

const std::vector<Palette> palettes{
    {"fair",
     "Fair",
     "USD",
     {{"brick", "Brick", 170, 60, 40, Finish::matte, {{11, 100, 900}, {5, 50, 300}}},
      {"cream", "Cream", 250, 240, 220, Finish::pearl, {{11, 100, 1100}, {11, 25, 350}}}}}};

PlacedPiece placed(std::string id, std::vector<ColourReference> colours) {
  PlacedPiece piece;
  piece.id = id;
  piece.name = "Piece " + id;
  piece.type = "arch";
  piece.colours = std::move(colours);
  return piece;
}

Event event_of(std::vector<PlacedPiece> pieces) {
  Area area;
  area.id = "a1";
  for (auto& piece : pieces) area.pieces.push_back(std::move(piece));
  Event event;
  event.areas.push_back(area);
  return event;
}

/// An arch of `clusters` quads, two balloons of slot A and two of slot B in each.
std::shared_ptr<BuiltPiece> arch_of_quads(std::uint32_t clusters, double inflated_m) {
  auto built = std::make_shared<BuiltPiece>();
  built->status = Status::ok;
  for (std::uint32_t number = 1; number <= clusters; ++number) {
    Cluster cluster;
    cluster.number = number;
    built->piece.clusters.push_back(cluster);
    for (std::uint32_t place = 0; place < 4; ++place) {
      Balloon balloon;
      balloon.diameter_m = inflated_m;
      balloon.nominal_in = 11;
      balloon.slot = place % 2;
      balloon.cluster = number;
      balloon.place = place;
      built->piece.balloons.push_back(balloon);
    }
  }
  built->piece.supplies = {{"rod", "Rod, 1.5 m", "piece", 4}, {"line", "Line", "m", 12.5}};
  return built;
}

const std::vector<ColourReference> brick_and_cream{{"fair", "brick"}, {"fair", "cream"}};

TEST_CASE("an arch of 33 quads in two colours needs 66 and 66") {
  // Common practice, no source: 33 clusters of four, two of each colour per cluster, 132 balloons.
  // Spares for 66 at 2 % and 95 %: failures before the 66th sound one have P(0) = 0.98^66 = 0.26359 and
  // P(k + 1)/P(k) = (66 + k)/(k + 1) · 0.02, so 0.34793, 0.23311, 0.10568: P(≤ 2) = 0.8446, P(≤ 3) = 0.9503, so 3.
  // Brick: one pack of 100. Cream: 69 = one pack of 100 at 11.00 or three of 25 at 10.50: the three.
  const auto event = event_of({placed("p1", brick_and_cream)});
  const BuiltEvent built{{"p1", arch_of_quads(33, 0.2286)}};
  const EventCount count = count_event(event, built, palettes);
  CHECK(count.total_balloons == 132);
  REQUIRE(count.balloons.size() == 2);
  CHECK(count.balloons[0] ==
        BalloonLine{11, 0.229, {"fair", "brick"}, "Brick", 66, 3, 0, 100, 1, 100, {{100, 1, 900}}});
  CHECK(count.balloons[1] == BalloonLine{11, 0.229, {"fair", "cream"}, "Cream", 66, 3, 0, 25, 3, 75, {{25, 3, 350}}});
  REQUIRE(count.pieces.size() == 1);
  CHECK(count.pieces[0].clusters == 33);
  CHECK(count.pieces[0].by_slot == std::vector<std::int64_t>{66, 66});
  CHECK(count.pieces[0].area == "a1");
  CHECK_FALSE(count.pieces[0].as_last_calculated);
}

TEST_CASE("both slots in one colour are one line") {
  const auto event = event_of({placed("p1", {{"fair", "brick"}, {"fair", "brick"}})});
  const EventCount count = count_event(event, {{"p1", arch_of_quads(10, 0.28)}}, palettes);
  REQUIRE(count.balloons.size() == 1);
  CHECK(count.balloons[0].used == 40);
  CHECK(count.pieces[0].by_slot == std::vector<std::int64_t>{20, 20});
}

TEST_CASE("supplies add up by key within one unit only") {
  const auto event = event_of({placed("p1", brick_and_cream), placed("p2", brick_and_cream)});
  auto second = arch_of_quads(2, 0.28);
  second->piece.supplies = {{"line", "Line", "m", 2.5}, {"line", "Line", "piece", 1}, {"line", "Line", "m", 5}};
  const EventCount count = count_event(event, {{"p1", arch_of_quads(1, 0.28)}, {"p2", second}}, palettes);
  REQUIRE(count.supplies.size() == 3);
  CHECK(count.supplies[0] == SupplyLine{"line", "Line", "m", 20});
  CHECK(count.supplies[1] == SupplyLine{"line", "Line", "piece", 1});
  CHECK(count.supplies[2] == SupplyLine{"rod", "Rod, 1.5 m", "piece", 4});
  CHECK(count.pieces[1].supplies.size() == 2);
}

TEST_CASE("inflated diameters are told apart by the millimetre, and share their packs") {
  // 0.2286 m (9 in) and 0.2290 m both round to 229 mm; 0.2540 m (10 in) is another line.
  // One bag of 72, and its spares as above: P(0) = 0.98^72 = 0.23350, then 0.33624, 0.24546, 0.12109: P(≤ 2) = 0.8152,
  // P(≤ 3) = 0.9363, P(≤ 4) = 0.9363 + 0.12109 · 75/4 · 0.02 = 0.9817: 4 spares, shared out 48 : 24 as 2.67 : 1.33, so 3
  // and 1. 9 in: 51 brick; 10 in: 25; together 76, one pack of 100, bought on the first line.
  const std::vector<ColourReference> brick{{"fair", "brick"}, {"fair", "brick"}};
  const auto event = event_of({placed("p1", brick), placed("p2", brick), placed("p3", brick)});
  const BuiltEvent built{
      {"p1", arch_of_quads(6, 0.2286)}, {"p2", arch_of_quads(6, 0.254)}, {"p3", arch_of_quads(6, 0.229)}};
  const EventCount count = count_event(event, built, palettes);
  REQUIRE(count.balloons.size() == 2);
  CHECK(count.balloons[0] ==
        BalloonLine{11, 0.229, {"fair", "brick"}, "Brick", 48, 3, 0, 100, 1, 100, {{100, 1, 900}}});
  CHECK(count.balloons[1] == BalloonLine{11, 0.254, {"fair", "brick"}, "Brick", 24, 1, 0, 100, 0, 0, {}});
  REQUIRE(count.bags.size() == 1);
  CHECK(count.bags[0].used == 72);
  CHECK(count.bags[0].spares == 4);
  CHECK(count.bags[0].order == 100);
  CHECK(count.bags[0].cost_minor == 900);
  CHECK(count.bags[0].lines == 2);
}

TEST_CASE("a size that the palette does not sell is ordered by the balloon") {
  const auto event = event_of({placed("p1", brick_and_cream)});
  auto built = arch_of_quads(1, 0.28);
  for (Balloon& balloon : built->piece.balloons) balloon.nominal_in = 16;
  House house;
  house.failures = {{0, std::nullopt, 0, {}}};
  const EventCount count = count_event(event, {{"p1", built}}, palettes, house);
  CHECK_FALSE(count.bags[0].cost_minor.has_value());
  CHECK(count.balloons[0] == BalloonLine{16, 0.28, {"fair", "brick"}, "Brick", 2, 0, 0, 0, 0, 2, {}});
}

TEST_CASE("slots without a colour and colours that no palette has keep lines of their own") {
  const auto event = event_of({placed("p1", {{"", ""}, {"fair", "teal"}}), placed("p2", {{"fair", "brick"}})});
  const EventCount count =
      count_event(event, {{"p1", arch_of_quads(1, 0.28)}, {"p2", arch_of_quads(1, 0.28)}}, palettes);
  REQUIRE(count.balloons.size() == 4);
  CHECK(count.balloons[0].colour_name == "no colour (slot A)");
  CHECK(count.balloons[1].colour_name == "no colour (slot B)");
  CHECK(count.balloons[2].colour_name == "Brick");
  CHECK(count.balloons[3].colour_name == "teal (not in palette fair)");
  CHECK(count.balloons[3].colour == ColourReference{"fair", "teal"});
}

TEST_CASE("a piece of a missing type counts as last calculated") {
  auto stranger = placed("p1", brick_and_cream);
  stranger.last_built = LastBuilt{2, 2, 0.3, 12, {{11, 0.28, 0, 30}, {11, 0.28, 1, 18}, {5, 0.12, 0, 7}}};
  const EventCount count = count_event(event_of({stranger, placed("p2", {})}), {}, palettes);
  CHECK(count.total_balloons == 55);
  REQUIRE(count.pieces.size() == 2);
  CHECK(count.pieces[0].as_last_calculated);
  CHECK(count.pieces[0].clusters == 12);
  CHECK(count.pieces[0].by_slot == std::vector<std::int64_t>{37, 18});
  CHECK_FALSE(count.pieces[0].not_built);
  CHECK(count.pieces[1].balloons == 0);
}

TEST_CASE("what was never calculated, or was refused, is not built: it once stood as calculated, with 0 balloons") {
  auto refused = arch_of_quads(5, 0.28);
  refused->status = Status::bad_parameter;
  const auto event = event_of({placed("p1", brick_and_cream), placed("p2", brick_and_cream), placed("p3", {})});
  const EventCount count = count_event(event, {{"p2", refused}, {"p3", arch_of_quads(1, 0.28)}}, palettes);
  REQUIRE(count.pieces.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) CHECK_FALSE(count.pieces[i].as_last_calculated);
  CHECK(count.pieces[0].not_built);
  CHECK(count.pieces[1].not_built);
  CHECK_FALSE(count.pieces[2].not_built);
}

TEST_CASE("a piece's balloons are counted by slot, size and diameter") {
  // By hand: 3 quads have 6 balloons of each of 2 slots; one of slot B is made larger.
  auto built = arch_of_quads(3, 0.28);
  built->piece.balloons[1].diameter_m = 0.2804;  // the same millimetre
  built->piece.balloons[3].diameter_m = 0.30;
  const std::vector<LastBuilt::Count> expected{{11, 0.28, 0, 6}, {11, 0.28, 1, 5}, {11, 0.3, 1, 1}};
  CHECK(counts_of(built->piece) == expected);
}

TEST_CASE("a damaged last build cannot wreck the count") {
  auto stranger = placed("p1", brick_and_cream);
  stranger.last_built = LastBuilt{1, 1, 1, -4, {{11, 0.28, 4'000'000'000u, 3}, {11, 0.28, 0, -9}}};
  const EventCount count = count_event(event_of({stranger}), {}, palettes);
  CHECK(count.total_balloons == 3);
  CHECK(count.pieces[0].clusters == 0);
  CHECK(count.pieces[0].by_slot.empty());
}

TEST_CASE("a refused piece counts nothing and a hidden one is left out") {
  auto hidden = placed("p2", brick_and_cream);
  hidden.hidden = true;
  auto refused = arch_of_quads(5, 0.28);
  refused->status = Status::infeasible;
  auto earlier = placed("p1", brick_and_cream);
  earlier.last_built = LastBuilt{1, 1, 1, 5, {{11, 0.28, 0, 20}}};
  const EventCount count =
      count_event(event_of({earlier, hidden}), {{"p1", refused}, {"p2", arch_of_quads(5, 0.28)}}, palettes);
  CHECK(count.total_balloons == 0);
  CHECK(count.balloons.empty());
  CHECK(count.supplies.empty());
  REQUIRE(count.pieces.size() == 1);
  CHECK(count.pieces[0].balloons == 0);
  CHECK(count.pieces[0].not_built);
  CHECK_FALSE(count.pieces[0].as_last_calculated);
}

TEST_CASE("totals are the sums of the pieces, whatever the order of the pieces") {
  std::vector<PlacedPiece> pieces;
  BuiltEvent built;
  std::int64_t expected = 0;
  for (std::uint32_t i = 0; i < 7; ++i) {
    const std::string id = "p" + std::to_string(i);
    pieces.push_back(placed(id, i % 2 == 0 ? brick_and_cream : std::vector<ColourReference>{{"fair", "cream"}}));
    built[id] = arch_of_quads(3 + i, i % 3 == 0 ? 0.28 : 0.23);
    expected += 4 * (3 + i);
  }
  const EventCount count = count_event(event_of(pieces), built, palettes);
  const auto used = [](const auto& lines) {
    return std::accumulate(lines.begin(), lines.end(), std::int64_t{0},
                           [](auto sum, const auto& l) { return sum + l.used; });
  };
  CHECK(count.total_balloons == expected);
  CHECK(used(count.balloons) == expected);
  for (const PieceCount& piece : count.pieces) {
    CHECK(used(piece.lines) == piece.balloons);
    CHECK(std::accumulate(piece.by_slot.begin(), piece.by_slot.end(), std::int64_t{0}) == piece.balloons);
  }
  // Each colour and size buys enough in all.
  for (std::size_t first = 0; first < count.balloons.size();) {
    std::int64_t needed = 0, order = 0;
    std::size_t i = first;
    for (; i < count.balloons.size() && count.balloons[i].colour_name == count.balloons[first].colour_name; ++i) {
      needed += count.balloons[i].used + count.balloons[i].spares;
      order += count.balloons[i].order;
    }
    CHECK(order >= needed);
    first = i;
  }
  std::ranges::reverse(pieces);
  const EventCount turned = count_event(event_of(pieces), built, palettes);
  CHECK(turned.balloons == count.balloons);
  CHECK(turned.supplies == count.supplies);
}

}  // namespace
}  // namespace quadrille
