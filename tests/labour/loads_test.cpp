// Loads and trips, by hand.
#include "studio/labour/loads.hpp"

#include <doctest/doctest.h>

#include <numeric>

#include "sdk/vec.hpp"

namespace quadrille {
namespace {

constexpr TripLimit limit{20, 100};

TEST_CASE("trips are packed heaviest first") {
  // 12 + 8, 11 + 9, 5: three trips for 45 kg, of which no two go on one.
  const Trips trips = trips_of({{9, 0, false}, {12, 0, false}, {5, 0, false}, {8, 0, false}, {11, 0, false}}, limit);
  CHECK(trips.trips == 3);
  CHECK(trips.mass_kg == 45);
  CHECK(trips.heaviest_kg == 12);
  // Three of 11 kg do not share a trip, though two trips would bear their mass.
  CHECK(trips_of({{11, 0, false}, {11, 0, false}, {11, 0, false}}, limit).trips == 3);
}

TEST_CASE("what can be divided fills what is left of the trips") {
  CHECK(trips_of({{11, 0, false}, {11, 0, false}, {18, 0, true}}, limit).trips == 2);
  CHECK(trips_of({{11, 0, false}, {11, 0, false}, {18.5, 0, true}}, limit).trips == 3);
  CHECK(trips_of({{61, 0, true}}, limit).trips == 4);
}

TEST_CASE("bulk asks for trips as mass does") {
  // Five clusters of 40 l: two on a trip of 100 l.
  CHECK(trips_of({{0, 40, false}, {0, 40, false}, {0, 40, false}, {0, 40, false}, {0, 40, false}}, limit).trips == 3);
  CHECK(trips_of({{0, 250, true}}, limit).trips == 3);
}

TEST_CASE("what is too heavy for one takes as many as bear it") {
  const Trips trips = trips_of({{45, 0, false}, {3, 0, false}}, limit);
  CHECK(trips.trips == 4);  // three people under one plate, and one more trip
  CHECK(trips.heaviest_kg == 45);
}

TEST_CASE("nothing is no trip") {
  CHECK(trips_of({}, limit).trips == 0);
  CHECK(trips_of({{0, 0, true}}, limit).trips == 0);
}

TEST_CASE("a frame weighs its tubes") {
  // A tube of 25 mm with a wall of 1.5 mm, aluminium of 2700 kg/m³, 3 m long in two members: π/4 × (0.025² − 0.022²) m²
  // = 1.10741e-4 m²; × 3 m × 2700 = 0.897 kg.
  Frame frame;
  frame.nodes = {Vec3(0, 0, 0), Vec3(0, 0, 2), Vec3(1, 0, 2)};
  for (const std::uint32_t from : {0u, 1u}) {
    FrameMember member;
    member.from = from;
    member.to = from + 1;
    member.outer_m = 0.025;
    member.inner_m = 0.022;
    member.density_kg_m3 = 2700;
    frame.members.push_back(member);
  }
  CHECK(frame_mass_kg(frame) == doctest::Approx(0.897).epsilon(1e-3));
}

TEST_CASE("ballast is carried in its containers, full or empty, and plates by themselves") {
  House house = standard_house();
  house.container_l = 10;
  house.rates["container-mass"] = 0.5;
  Piece piece;
  piece.supports.resize(2);
  for (Support& support : piece.supports) {
    support.own_mass_kg = 8;
    support.ballast_kg = 25;
  }
  PlacedPiece placed;
  placed.lines.resize(2);
  placed.lines[0].anchor = AnchorKind::dead_weight;
  placed.lines[0].mass_kg = 12;
  CHECK(ballast_kg(piece) == 50);
  CHECK(dead_weights_kg(placed) == 12);
  const auto mass_of = [&](bool filled) {
    const auto items = items_of(placed, {}, &piece, house, filled);
    return std::accumulate(items.begin(), items.end(), 0.0,
                           [](double sum, const LoadItem& item) { return sum + item.mass_kg; });
  };
  // Two plates, 3 + 3 + 2 containers, 50 + 12 kg in them.
  CHECK(mass_of(true) == doctest::Approx(16 + 8 * 0.5 + 62));
  CHECK(mass_of(false) == doctest::Approx(16 + 8 * 0.5));
}

TEST_CASE("supplies weigh what the house says, but for what is weighed otherwise") {
  House house;
  for (const char* key : {"stake", "rod", "ballast", "dead-weight", "base-plate"}) {
    SupplyStock stock;
    stock.key = key;
    stock.mass_kg = 0.6;
    house.supplies.push_back(stock);
  }
  PieceCount count;
  for (const char* key :
       {"stake", "rod-steel-20mm", "ballast-water", "dead-weight-12kg", "base-plate-450mm-8kg", "glitter"})
    count.supplies.push_back({key, "", "piece", 4});
  BalloonLine line;
  line.nominal_in = 11;
  line.used = 100;  // 3 g each
  count.lines = {line};
  const auto items = items_of({}, count, nullptr, house, true);
  REQUIRE(items.size() == 1);
  CHECK(items[0].mass_kg == doctest::Approx(4 * 0.6 + 0.3));
  CHECK(items[0].divisible);
}

TEST_CASE("made clusters are bulky") {
  // 8 balloons of 0.24 m: π/6 × 0.24³ m³ = 7.2382 l each; 57.906 l in a heap of which they fill 0.64: 90.48 l.
  PieceCount count;
  count.clusters = 2;
  BalloonLine line;
  line.inflated_m = 0.24;
  line.used = 8;
  count.lines = {line};
  const auto made = made_clusters(count);
  REQUIRE(made.size() == 2);
  CHECK(made[0].bulk_l == doctest::Approx(45.24).epsilon(1e-3));
  count.clusters = 0;
  CHECK(made_clusters(count).front().bulk_l == doctest::Approx(90.48).epsilon(1e-3));
}

}  // namespace
}  // namespace quadrille
