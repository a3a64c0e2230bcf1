// The cluster chart says what stands: a piece laid again from the chart alone is the piece.
#include "studio/making/cluster_chart.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "studio/making/hand.hpp"
#include "tests/making/laid.hpp"

using namespace quadrille;
using namespace quadrille::laid;

namespace {

/// A helper who knows only the chart: mounts cluster after cluster as it says and looks where each colour ends up. True
/// where the slot of every balloon agrees with the piece.
bool gives_back(const ClusterChart& chart, const Piece& piece, bool by_repeat) {
  double angle = chart.start_rad;
  for (std::size_t i = 0; i < chart.clusters.size(); ++i) {
    // With a repeat only the first block is read, and the turn of its first cluster is that of the one that begins the next.
    std::size_t row = i;
    if (by_repeat && chart.repeat > 0) row = i % chart.repeat == 0 && i > 0 ? chart.repeat : i % chart.repeat;
    const ChartCluster& read = chart.clusters[row];
    const auto n = static_cast<double>(read.balloons.size());
    if (i > 0) angle += read.half_steps.value() * pi / n;
    for (std::size_t place = 0; place < read.balloons.size(); ++place)
      if (slot_towards(piece, i, angle + 2 * pi * static_cast<double>(place) / n) !=
          static_cast<int>(read.balloons[place].slot))
        return false;
  }
  return true;
}

}  // namespace

TEST_CASE("who follows the chart lays the piece again, whichever the pattern, the size and the hand") {
  for (const PatternKind kind :
       {PatternKind::solid, PatternKind::spiral, PatternKind::zigzag, PatternKind::stripes, PatternKind::diamond})
    for (int size = 2; size <= 6; ++size)
      for (int slots = 1; slots <= 4; ++slots)
        for (const int hand : {1, -1}) {
          CAPTURE(static_cast<int>(kind));
          CAPTURE(size);
          CAPTURE(slots);
          CAPTURE(hand);
          const PatternPlan plan = plan_of(kind, size, slots, hand, 3);
          for (const Piece& piece : {pole(plan, 27), half_circle(plan, 27)}) {
            const ClusterChart chart = cluster_chart(piece);
            REQUIRE(chart.rings);
            CHECK(gives_back(chart, piece, false));
            CHECK(gives_back(chart, piece, true));
          }
        }
}

TEST_CASE("a chart with two balloons exchanged does not give the piece back") {
  const Piece piece = pole(plan_of(PatternKind::spiral, 4, 4), 10);
  ClusterChart chart = cluster_chart(piece);
  std::swap(chart.clusters[5].balloons[0], chart.clusters[5].balloons[1]);
  CHECK_FALSE(gives_back(chart, piece, false));
  chart = cluster_chart(piece);
  chart.clusters[5].half_steps = -chart.clusters[5].half_steps.value();
  CHECK_FALSE(gives_back(chart, piece, false));
}

TEST_CASE("the repeat is the shortest one") {
  // A spiral is one cluster again and again. Stripes of 3 clusters in 2 colours repeat after 6, a zigzag that turns back
  // every 3 after 6 as well: by hand.
  CHECK(cluster_chart(pole(plan_of(PatternKind::spiral, 4, 3), 20)).repeat == 1);
  CHECK(cluster_chart(pole(plan_of(PatternKind::stripes, 4, 2, 1, 3), 20)).repeat == 6);
  CHECK(cluster_chart(pole(plan_of(PatternKind::zigzag, 4, 2, 1, 3), 20)).repeat == 6);
  // It must be there twice.
  CHECK(cluster_chart(pole(plan_of(PatternKind::stripes, 4, 2, 1, 3), 11)).repeat == 0);
  CHECK(cluster_chart(pole(plan_of(PatternKind::stripes, 4, 2, 1, 3), 12)).repeat == 6);
  // One strange cluster, and nothing repeats.
  Piece piece = pole(plan_of(PatternKind::spiral, 4, 2), 20);
  piece.balloons[40].slot = 5;
  CHECK(cluster_chart(piece).repeat == 0);
  CHECK(letters_of(cluster_chart(piece).clusters[10]) == "FBAB");
  CHECK(cluster_chart(piece).colour_repeat == 0);
  // One cluster of another size, and only colours and turns repeat.
  piece = pole(plan_of(PatternKind::spiral, 4, 2), 20);
  for (Balloon& balloon : piece.balloons)
    if (balloon.cluster == 11) balloon.diameter_m += 0.02;
  CHECK(cluster_chart(piece).repeat == 0);
  CHECK(cluster_chart(piece).colour_repeat == 1);
}

TEST_CASE("clusters of unlike balloons are no rings and bear no turns") {
  Piece piece = pole(plan_of(PatternKind::spiral, 4, 2), 6);
  piece.balloons[5].diameter_m = 0.13;
  const ClusterChart chart = cluster_chart(piece);
  CHECK_FALSE(chart.rings);
  for (const ChartCluster& cluster : chart.clusters) CHECK_FALSE(cluster.half_steps);
  CHECK(front_runs(piece, chart).empty());
}

TEST_CASE(
    "a right-hand spiral climbs to the right on a pole and on both legs of an arch, a left-hand one to the left") {
  for (const int hand : {1, -1})
    for (int size = 3; size <= 5; ++size) {
      const PatternPlan plan = plan_of(PatternKind::spiral, size, 2, hand);
      const Climb wanted = hand > 0 ? Climb::right : Climb::left;
      for (const Piece& piece : {pole(plan, 12), half_circle(plan, 24)})
        CHECK(climb_of_legs(piece, cluster_chart(piece)) == wanted);
      // From outside: the balloon 1 that faces the audience (least y) and that of the next cluster, by their x.
      const Piece piece = pole(plan, 2);
      const double aside = piece.balloons[static_cast<std::size_t>(size)].centre.x() - piece.balloons[0].centre.x();
      CHECK((aside > 0) == (hand > 0));
      CHECK(front_runs(piece, cluster_chart(piece))[0].x_m == doctest::Approx(aside));
    }
}

namespace {

/// Rows written as words, turned to the right.
PatternPlan rows_of(const char* text, int size = 4) {
  PatternPlan plan = plan_of(PatternKind::rows, size, 4);
  plan.rows = *slot_rows(text, size);
  return plan;
}

ClusterChart chart_of(const PatternPlan& plan, int clusters) { return cluster_chart(pole(plan, clusters)); }

}  // namespace

// By hand: turned all to the left, cluster 3 of ABAB AAAA BABA BBBB has its place 0 at -90° for 90°, and every second
// balloon of it is alike. The sheet drew fat arrows along runs of one colour that were not there.
TEST_CASE(
    "the side does not matter where each colour comes to the same places either way, and there are no runs then") {
  const PatternPlan plan = rows_of("ABAB AAAA BABA BBBB");
  const ClusterChart chart = chart_of(plan, 20);
  CHECK(side_matters(chart) == SideMatters::together);
  for (const Piece& piece : {pole(plan, 20), half_circle(plan, 20)}) {
    CHECK(climb_of_legs(piece, cluster_chart(piece)) == Climb::neither);
    for (const FrontRun& run : front_runs(piece, cluster_chart(piece))) CHECK(run.climb == Climb::neither);
  }
  CHECK(side_matters(chart_of(plan_of(PatternKind::stripes, 4, 2), 20)) == SideMatters::never);
  CHECK(side_matters(chart_of(plan_of(PatternKind::spiral, 4, 2), 20)) == SideMatters::each);
  CHECK(side_matters(chart_of(plan_of(PatternKind::zigzag, 4, 2), 20)) == SideMatters::each);
  // Cluster 3 is AABB at 90°, and at -90° it is AABB seen from behind.
  CHECK(side_matters(chart_of(rows_of("ABAB AAAA AABB BBBB"), 20)) == SideMatters::each);
}

TEST_CASE("with every cluster turned to the other side the piece is laid: it is the same where the chart says so") {
  for (const char* text : {"ABAB AAAA BABA BBBB", "ABAB AAAA AABB BBBB", "ABAC AAAA BACA", "AABB", "ABAB", "AAAA BBBB",
                           "ABAB AAAA ABAB BBBB", "ABAB BABA", "ABCB CCCC"}) {
    CAPTURE(text);
    PatternPlan plan = rows_of(text);
    const Piece right = pole(plan, 16);
    plan.hand = -1;
    const Piece left = pole(plan, 16);
    bool same = true;
    for (const Cluster& cluster : right.clusters)
      for (int place = 0; place < 8; ++place) {
        const double angle = place * pi / 4;
        const auto at = static_cast<std::size_t>(cluster.number - 1);
        same = same && slot_towards(right, at, angle) == slot_towards(left, at, angle);
      }
    CHECK(same == (side_matters(cluster_chart(right)) != SideMatters::each));
  }
}

// By hand: A faces the front, the next cluster BABA is turned by 45° to the right. Its A stand at 135° and -45°, B at 45°.
TEST_CASE("colours climb to where their like is, not to where the clusters are turned") {
  const Piece piece = pole(rows_of("ABAB BABA"), 2);
  CHECK(cluster_chart(piece).clusters[1].half_steps == 1);
  const auto runs = front_runs(piece, cluster_chart(piece));
  REQUIRE(runs.size() == 1);
  CHECK(runs[0].climb == Climb::left);
  CHECK(runs[0].steps == -1);
}

TEST_CASE("legs that mirror each other are told, and a spiral's do not") {
  CHECK(cluster_chart(half_circle(plan_of(PatternKind::solid, 4, 1), 21)).mirrored);
  // 21 clusters in stripes of 3 in 2 colours: seven stripes, A first and last.
  CHECK(cluster_chart(half_circle(plan_of(PatternKind::stripes, 4, 2, 1, 3), 21)).mirrored);
  CHECK_FALSE(cluster_chart(half_circle(plan_of(PatternKind::stripes, 4, 2, 1, 3), 20)).mirrored);
  CHECK_FALSE(cluster_chart(half_circle(plan_of(PatternKind::spiral, 4, 4), 21)).mirrored);
  CHECK_FALSE(cluster_chart(pole(plan_of(PatternKind::solid, 4, 1), 21)).mirrored);
}

TEST_CASE("turns in words: a half step of n balloons is a 2n-th of a turn") {
  CHECK(print_turn(1, 4) == "1/8 turn right");
  CHECK(print_turn(-1, 4) == "1/8 turn left");
  CHECK(print_turn(1, 2) == "1/4 turn right");
  CHECK(print_turn(-1, 5) == "1/10 turn left");
  CHECK(print_turn(2, 4) == "1/4 turn right");
  CHECK(print_turn(4, 4) == "1/2 turn");
  CHECK(print_turn(0, 4) == "not turned");
  CHECK(print_bearing(0) == "front");
  CHECK(print_bearing(pi / 2) == "right");
  CHECK(print_bearing(-pi / 4) == "front left");
  CHECK(print_bearing(pi) == "back");
}
