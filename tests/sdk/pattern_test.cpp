// Patterns: how colours run, how clusters are turned, and what the check says of a wrong one.
#include "sdk/pattern.hpp"

#include <doctest/doctest.h>

#include <array>
#include <map>
#include <set>

#include "sdk/cluster.hpp"
#include "sdk/pattern_check.hpp"

using namespace quadrille;

namespace {

PatternPlan plan_of(PatternKind kind, int n = 4, int slots = 2, int hand = 1) {
  PatternPlan plan;
  plan.kind = kind;
  plan.cluster_size = n;
  plan.slots = slots;
  plan.hand = hand;
  return plan;
}

/// An upright stack of clusters laid by the plan.
Piece stack(const PatternPlan& plan, int clusters) {
  Piece piece;
  ClusterMake make;
  make.size = plan.cluster_size;
  const auto laid = lay_pattern(plan, clusters);
  for (std::size_t i = 0; i < laid.size(); ++i) {
    const double at = static_cast<double>(i) * 0.2;
    piece.clusters.push_back(
        {static_cast<std::uint32_t>(i + 1), at, Vec3(0, 0, at), Vec3::UnitZ(), laid[i].half_steps * pi / make.size});
    for (const Balloon& balloon : ring_balloons(piece.clusters.back(), make, laid[i].slots))
      piece.balloons.push_back(balloon);
  }
  return piece;
}

std::map<std::uint32_t, int> colours_of(const Piece& piece) {
  std::map<std::uint32_t, int> colours;
  for (const Balloon& balloon : piece.balloons) ++colours[balloon.slot];
  return colours;
}

using Place = std::array<long, 3>;
std::set<Place> places_of(const Piece& piece) {
  std::set<Place> places;
  for (const Balloon& balloon : piece.balloons) {
    const Vec3 p = balloon.centre * 1e6;
    places.insert({std::lround(p.x()), std::lround(p.y()), std::lround(p.z())});
  }
  return places;
}

}  // namespace

TEST_CASE("33 quads in a spiral of two colours take 66 balloons of each, the same colours opposite each other") {
  // Common practice, no source.
  const Piece piece = stack(plan_of(PatternKind::spiral), 33);
  CHECK(piece.balloons.size() == 132);
  CHECK(colours_of(piece) == std::map<std::uint32_t, int>{{0, 66}, {1, 66}});
  for (const LaidCluster& cluster : lay_pattern(plan_of(PatternKind::spiral), 33)) {
    CHECK(cluster.slots[0] == cluster.slots[2]);
    CHECK(cluster.slots[1] == cluster.slots[3]);
    CHECK(cluster.slots[0] != cluster.slots[1]);
  }
}

TEST_CASE("each cluster of a spiral is turned by 180°/n to the one before and the turn never changes hand") {
  for (int n = 2; n <= 6; ++n)
    for (const int hand : {1, -1}) {
      const auto laid = lay_pattern(plan_of(PatternKind::spiral, n, 2, hand), 40);
      for (std::size_t i = 1; i < laid.size(); ++i)
        CHECK((laid[i].half_steps - laid[i - 1].half_steps - hand + 4 * n) % (2 * n) == 0);
    }
}

TEST_CASE("the other hand has the balloons in the same places and differs only in colours") {
  for (int n = 2; n <= 6; ++n) {
    CAPTURE(n);
    const Piece right = stack(plan_of(PatternKind::spiral, n, 2, 1), 24),
                left = stack(plan_of(PatternKind::spiral, n, 2, -1), 24);
    CHECK(places_of(right) == places_of(left));
    CHECK(colours_of(right) == colours_of(left));
    if (n > 2) CHECK(right.balloons != left.balloons);
  }
}

TEST_CASE("a zigzag changes hand every band, so that it is back where it began after two") {
  PatternPlan plan = plan_of(PatternKind::zigzag);
  plan.band = 3;
  const auto laid = lay_pattern(plan, 13);
  const int expected[] = {0, 1, 2, 3, 2, 1, 0, 1, 2, 3, 2, 1, 0};
  for (std::size_t i = 0; i < laid.size(); ++i) CHECK(laid[i].half_steps == expected[i]);
}

TEST_CASE("stripes give every cluster one colour, changing every band") {
  PatternPlan plan = plan_of(PatternKind::stripes, 4, 3);
  plan.band = 2;
  const auto laid = lay_pattern(plan, 8);
  const std::uint32_t expected[] = {0, 0, 1, 1, 2, 2, 0, 0};
  for (std::size_t i = 0; i < laid.size(); ++i) CHECK(laid[i].slots == SlotRow(4, expected[i]));
}

TEST_CASE("diamonds close around the rod: going once round by either crease meets the same colour") {
  for (int n = 2; n <= 6; ++n) {
    CAPTURE(n);
    const int side = diamond_side(n);
    CHECK(n % side == 0);
    const auto laid = lay_pattern(plan_of(PatternKind::diamond, n, 2), 6 * n);
    const auto at = [&](int cluster, int position) {
      const LaidCluster& ring = laid[static_cast<std::size_t>(cluster)];
      return ring.slots[static_cast<std::size_t>(((position - ring.half_steps) / 2 % n + n) % n)];
    };
    int other = 0;
    for (int cluster = 0; cluster + 2 * side < 6 * n; ++cluster)
      for (int place = 0; place < n; ++place) {
        const int position = laid[static_cast<std::size_t>(cluster)].half_steps + 2 * place;
        // Two sides up along one crease the two-coloured checker of diamonds repeats; one side up it changes.
        CHECK(at(cluster + 2 * side, position + 2 * side) == at(cluster, position));
        CHECK(at(cluster + side, position + side) != at(cluster, position));
        other += at(cluster, position) == 1;
      }
    CHECK(other > 0);
  }
}

TEST_CASE("colours are spread so that one used twice lies opposite itself where the cluster allows") {
  CHECK(spread_slots(4, 2) == SlotRow{0, 1, 0, 1});
  CHECK(spread_slots(4, 3) == SlotRow{0, 1, 0, 2});
  CHECK(spread_slots(4, 4) == SlotRow{0, 1, 2, 3});
  CHECK(spread_slots(5, 2) == SlotRow{0, 1, 0, 1, 0});
  CHECK(spread_slots(6, 3) == SlotRow{0, 1, 2, 0, 1, 2});
  CHECK(spread_slots(6, 4) == SlotRow{0, 1, 2, 0, 1, 3});
}

TEST_CASE("typed rows are read in either case and by any gap, and say what is wrong with a row") {
  const auto rows = slot_rows("AABB, abba\nC/AbAb", 4);
  REQUIRE(rows);
  CHECK(*rows == std::vector<SlotRow>{{0, 0, 1, 1}, {0, 1, 1, 0}, {2, 2, 2, 2}, {0, 1, 0, 1}});
  CHECK(slot_rows("AABB ABX", 4).error.find("Row 2 ('ABX')") != std::string::npos);
  CHECK(slot_rows("AABB ABA", 4).error.find("3 letters") != std::string::npos);
}
