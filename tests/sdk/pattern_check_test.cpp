// The walk along the colours: every pattern, every cluster, every kind of mistake, with the plan and without it.
#include "sdk/pattern_check.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "sdk/cluster.hpp"

using namespace quadrille;

namespace {

constexpr PatternKind kinds[] = {PatternKind::solid, PatternKind::spiral, PatternKind::zigzag, PatternKind::stripes,
                                 PatternKind::diamond};

PatternPlan plan_of(PatternKind kind, int n, int slots, int hand = 1, int band = 4) {
  PatternPlan plan;
  plan.kind = kind;
  plan.cluster_size = n;
  plan.slots = slots;
  plan.hand = hand;
  plan.band = band;
  return plan;
}

/// Calls `check` with the plan of every pattern, cluster size, number of slots and hand.
template <class Check>
void for_every_plan(const Check& check) {
  for (const PatternKind kind : kinds)
    for (int n = 2; n <= 6; ++n)
      for (int slots = 1; slots <= 6; ++slots)
        for (const int hand : {1, -1}) {
          const PatternPlan plan = plan_of(kind, n, slots, hand);
          CAPTURE(static_cast<int>(kind));
          CAPTURE(n);
          CAPTURE(slots);
          CAPTURE(hand);
          check(plan);
        }
}

/// An upright stack of the clusters.
Piece stack(const std::vector<LaidCluster>& laid) {
  Piece piece;
  for (std::size_t i = 0; i < laid.size(); ++i) {
    ClusterMake make;
    make.size = static_cast<int>(laid[i].slots.size());
    const double at = static_cast<double>(i) * 0.2;
    piece.clusters.push_back(
        {static_cast<std::uint32_t>(i + 1), at, Vec3(0, 0, at), Vec3::UnitZ(), laid[i].half_steps * pi / make.size});
    for (const Balloon& balloon : ring_balloons(piece.clusters.back(), make, laid[i].slots))
      piece.balloons.push_back(balloon);
  }
  return piece;
}

/// The balloons of the cluster, each by its place around the rod, one after the other: what one sees of it.
std::vector<int> looks(const LaidCluster& cluster) {
  const auto n = static_cast<int>(cluster.slots.size());
  std::vector<int> seen(static_cast<std::size_t>(2 * n), -1);
  for (int place = 0; place < n; ++place) {
    const int at = ((cluster.half_steps + 2 * place) % (2 * n) + 2 * n) % (2 * n);
    seen[static_cast<std::size_t>(at)] = static_cast<int>(cluster.slots[static_cast<std::size_t>(place)]);
  }
  return seen;
}

bool names(const PatternBreak& found, std::size_t index) {
  const std::string number = std::to_string(index + 1);
  return found.text.find("luster " + number + " ") != std::string::npos ||
         found.text.find("and " + number + " ") != std::string::npos ||
         found.text.find("lusters " + number + " ") != std::string::npos;
}

}  // namespace

TEST_CASE("what is laid by a plan keeps it, and reads off a piece as it was laid") {
  for_every_plan([](const PatternPlan& plan) {
    const auto laid = lay_pattern(plan, 33);
    CHECK(pattern_breaks(laid, plan).empty());
    const auto read = laid_clusters(stack(laid));
    REQUIRE(read.size() == laid.size());
    for (std::size_t i = 0; i < laid.size(); ++i) CHECK(looks(read[i]) == looks(laid[i]));
  });
}

TEST_CASE("one wrongly turned cluster was found at some places only: the plan finds it at every index") {
  for_every_plan([](const PatternPlan& plan) {
    for (const int clusters : {2, 10, 33}) {
      const auto laid = lay_pattern(plan, clusters);
      for (std::size_t i = 0; i < laid.size(); ++i)
        for (int turn = 1; turn < 2 * plan.cluster_size; ++turn) {
          auto wrong = laid;
          wrong[i].half_steps += turn;
          const auto found = pattern_breaks(wrong, plan);
          if (looks(wrong[i]) == looks(laid[i])) {
            CHECK(found.empty());
            continue;
          }
          CAPTURE(i);
          REQUIRE(found.size() == 1);
          CHECK(found[0].cluster == i + 1);
          CHECK(found[0].text.find("turned the wrong way") != std::string::npos);
        }
    }
  });
}

TEST_CASE("wrong colours near the ends were missed: the plan finds them at every index and names the colour") {
  for_every_plan([](const PatternPlan& plan) {
    for (const int clusters : {1, 10, 33}) {
      const auto laid = lay_pattern(plan, clusters);
      for (std::size_t i = 0; i < laid.size(); ++i)
        for (std::uint32_t slot = 0; slot < 6; ++slot) {
          auto wrong = laid;
          const std::uint32_t planned = wrong[i].slots[1];
          wrong[i].slots[1] = slot;
          const auto found = pattern_breaks(wrong, plan);
          CHECK(found.size() == (planned == slot ? 0 : 1));
          if (found.empty()) continue;
          CHECK(found[0].cluster == i + 1);
          CHECK(found[0].text.find(slot_letter(slot)) != std::string::npos);
          CHECK(found[0].text.find(slot_letter(planned)) != std::string::npos);
        }
    }
  });
}

TEST_CASE("a cluster of AABB in a spiral of ABAB was missed, and one of three balloons must not pass either") {
  const PatternPlan plan = plan_of(PatternKind::spiral, 4, 2);
  for (std::size_t i = 0; i < 33; ++i) {
    auto wrong = lay_pattern(plan, 33);
    wrong[i].slots = {0, 0, 1, 1};
    REQUIRE(pattern_breaks(wrong, plan).size() == 1);
    CHECK(pattern_breaks(wrong, plan)[0].cluster == i + 1);
    const auto unplanned = pattern_breaks(stack(wrong));
    REQUIRE(unplanned.size() == 1);
    CHECK(unplanned[0].cluster == i + 1);
    wrong[i].slots = {0, 1, 0};
    REQUIRE(pattern_breaks(wrong, plan).size() == 1);
    CHECK(pattern_breaks(wrong, plan)[0].text.find("3 balloons instead of 4") != std::string::npos);
  }
}

TEST_CASE("a shift of all the rest was not told: the plan tells it once, from the cluster where it begins") {
  for_every_plan([](const PatternPlan& plan) {
    const auto laid = lay_pattern(plan, 33);
    for (std::size_t from = 0; from + 2 < laid.size(); ++from) {
      auto wrong = laid;
      for (std::size_t i = from; i < wrong.size(); ++i) wrong[i].half_steps += 2;
      std::size_t first = from;  // the first that one can see
      while (first < laid.size() && looks(wrong[first]) == looks(laid[first])) ++first;
      const auto found = pattern_breaks(wrong, plan);
      CHECK(found.empty() == (first == laid.size()));
      if (found.empty() || first + 4 > laid.size()) continue;
      CAPTURE(from);
      CHECK(found.size() == 1);
      CHECK(found[0].cluster == first + 1);
      CHECK(found[0].text.starts_with("From cluster " + std::to_string(first + 1) + " on "));
    }
  });
}

TEST_CASE("a change of hand on the way was not told: the plan tells it once, from the cluster where it begins") {
  for (int n = 2; n <= 6; ++n)
    for (int slots = 2; slots <= n; ++slots)
      for (std::size_t from = 1; from < 29; ++from) {
        const PatternPlan plan = plan_of(PatternKind::spiral, n, slots);
        const auto laid = lay_pattern(plan, 33);
        auto wrong = laid;
        for (std::size_t i = from; i < wrong.size(); ++i) wrong[i].half_steps = wrong[i - 1].half_steps - 1;
        CAPTURE(n);
        CAPTURE(slots);
        CAPTURE(from);
        const auto found = pattern_breaks(wrong, plan);
        REQUIRE(found.size() == 1);
        CHECK(found[0].cluster == from + 1);
        // Of duplets, and where the colours repeat after one step back, the hands look alike but for a shift.
        const bool shift = found[0].text.find("shifted") != std::string::npos;
        CHECK((shift ? looks(wrong[from + 1]) != looks(laid[from + 1])
                     : found[0].text.find("other hand") != std::string::npos));
      }
}

TEST_CASE("two mistakes are told as two, and a stretch that comes right again as a stretch") {
  const PatternPlan plan = plan_of(PatternKind::spiral, 4, 3);
  auto wrong = lay_pattern(plan, 33);
  wrong[5].slots[0] = 4;
  wrong[20].half_steps += 2;
  auto found = pattern_breaks(wrong, plan);
  REQUIRE(found.size() == 2);
  CHECK(found[0].cluster == 6);
  CHECK(found[1].cluster == 21);
  wrong = lay_pattern(plan, 33);
  for (std::size_t i = 10; i < 20; ++i) wrong[i].half_steps += 2;
  found = pattern_breaks(wrong, plan);
  REQUIRE(found.size() == 1);
  CHECK(found[0].text.starts_with("From cluster 11 to 20 "));
}

TEST_CASE("a row left out of typed rows runs the rest ahead") {
  PatternPlan plan = plan_of(PatternKind::rows, 4, 3);
  plan.rows = *slot_rows("AABC ABBA CCAB BACA ABCC", 4);
  auto laid = lay_pattern(plan, 20);
  CHECK(pattern_breaks(laid, plan).empty());
  laid = lay_pattern(plan, 21);
  for (std::size_t i = 7; i + 1 < laid.size(); ++i) laid[i].slots = laid[i + 1].slots;
  laid.pop_back();
  const auto found = pattern_breaks(laid, plan);
  REQUIRE(found.size() == 1);
  CHECK(found[0].cluster == 8);
  CHECK(found[0].text.find("runs 1 cluster ahead") != std::string::npos);
}

TEST_CASE("without the plan no regular pattern raises a false alarm") {
  for_every_plan([](const PatternPlan& given) {
    if (given.hand < 0 && given.slots > 2) return;  // seen in a mirror
    PatternPlan plan = given;
    for (plan.band = 1; plan.band <= 34; plan.band += plan.band < 8 ? 1 : 3)
      for (int clusters = 1; clusters <= 36; clusters += clusters < 12 ? 1 : 3) {
        const auto found = pattern_breaks(stack(lay_pattern(plan, clusters)));
        CAPTURE(plan.band);
        CAPTURE(clusters);
        CHECK_MESSAGE(found.empty(), (found.empty() ? "" : found[0].text));
      }
  });
  PatternPlan free = plan_of(PatternKind::rows, 4, 3);
  free.rows = *slot_rows("AABC ABBA CCAB BACA ABCC CABB BBCA ACBA CBAB AACB", 4);
  CHECK(pattern_breaks(stack(lay_pattern(free, 10))).empty());
}

TEST_CASE("clusters in which one colour of a garland flows into the next were told as mistakes") {
  PatternPlan flow = plan_of(PatternKind::rows, 3, 4);
  for (const char* text :
       {"A A A A A A A A A A A A ABB B B B B B B B B B B B B BBC C C C C C C C C C C C C",
        "A A A A A A A A A A A AAB A AAB ABB B ABB B B B B B B B B B B B B B B B B B B B B B B B B B B",
        "A A A A A A A A A A A A A A A A A A A A A A A A A A A A A AAB"}) {
    flow.rows = *slot_rows(text, 3);
    CAPTURE(text);
    auto laid = lay_pattern(flow, static_cast<int>(flow.rows.size()));
    const auto found = pattern_breaks(stack(laid));
    CHECK_MESSAGE(found.empty() == !std::string(text).ends_with("AAB"), (found.empty() ? "" : found[0].text));
    // A garland's clusters are turned as they fall.
    for (std::size_t i = 0; i < laid.size(); ++i) laid[i].half_steps = static_cast<int>(i * i);
    CHECK(pattern_breaks(stack(laid)).size() == found.size());
  }
}

TEST_CASE("without the plan ten zigzag clusters had seven wrong numbers named: only a wrong cluster is ever named") {
  for_every_plan([](const PatternPlan& given) {
    if (given.hand < 0 && given.slots > 2) return;
    PatternPlan plan = given;
    for (plan.band = 1; plan.band <= 9; plan.band += 2)
      for (const int clusters : {6, 10, 20, 33}) {
        const auto laid = lay_pattern(plan, clusters);
        for (std::size_t i = 0; i < laid.size(); ++i)
          for (int mistake = 0; mistake < 4; ++mistake) {
            auto wrong = laid;
            if (mistake == 0) wrong[i].slots[1] = 5;
            if (mistake == 1) wrong[i].slots = SlotRow(laid[i].slots.size(), 1);
            if (mistake == 2) wrong[i].half_steps += 2;
            if (mistake == 3) wrong[i].half_steps -= 2;
            if (looks(wrong[i]) == looks(laid[i])) continue;
            CAPTURE(plan.band);
            CAPTURE(clusters);
            CAPTURE(i);
            CAPTURE(mistake);
            for (const PatternBreak& found : pattern_breaks(stack(wrong))) CHECK_MESSAGE(names(found, i), found.text);
          }
      }
  });
}

TEST_CASE("without the plan a colour that no other cluster has is found at every place of a spiral and a zigzag") {
  for (const PatternKind kind : {PatternKind::solid, PatternKind::spiral, PatternKind::zigzag, PatternKind::stripes})
    for (int n = 2; n <= 6; ++n)
      for (const int clusters : {5, 10, 33}) {
        const auto laid = lay_pattern(plan_of(kind, n, 2), clusters);
        for (std::size_t i = 0; i < laid.size(); ++i) {
          auto wrong = laid;
          wrong[i].slots[1] = 5;
          CAPTURE(static_cast<int>(kind));
          CAPTURE(n);
          CAPTURE(clusters);
          CAPTURE(i);
          const auto found = pattern_breaks(stack(wrong));
          REQUIRE(found.size() == 1);
          CHECK(found[0].cluster == i + 1);
          CHECK(found[0].text.find("F") != std::string::npos);
        }
      }
  for (int n = 3; n <= 6; ++n)
    for (std::size_t i = 0; i < 33; ++i) {
      auto wrong = lay_pattern(plan_of(PatternKind::diamond, n, 2), 33);
      wrong[i].slots[1] = 5;
      CAPTURE(n);
      CAPTURE(i);
      const auto found = pattern_breaks(stack(wrong));
      REQUIRE(found.size() == 1);
      CHECK(found[0].cluster == i + 1);
    }
}

TEST_CASE("without the plan a spiral's wrongly turned cluster was missed near the ends: now all but the last two") {
  for (int n = 3; n <= 6; ++n)
    for (int slots = 2; slots <= n; ++slots)
      for (const std::size_t clusters : {std::size_t{20}, std::size_t{33}})
        for (std::size_t i = 0; i + 2 < clusters; ++i) {
          const auto laid = lay_pattern(plan_of(PatternKind::spiral, n, slots), static_cast<int>(clusters));
          auto wrong = laid;
          wrong[i].half_steps += 2;
          if (looks(wrong[i]) == looks(laid[i])) continue;
          CAPTURE(n);
          CAPTURE(slots);
          CAPTURE(i);
          const auto found = pattern_breaks(stack(wrong));
          REQUIRE(found.size() == 1);
          CHECK(found[0].cluster == i + 1);
          CHECK(found[0].text.find("turned the wrong way") != std::string::npos);
        }
}

TEST_CASE("without the plan a shift of a spiral's rest is told where it begins") {
  for (std::size_t from = 3; from < 30; ++from) {
    auto wrong = lay_pattern(plan_of(PatternKind::spiral, 4, 2), 33);
    for (std::size_t i = from; i < wrong.size(); ++i) wrong[i].half_steps += 2;
    CAPTURE(from);
    const auto found = pattern_breaks(stack(wrong));
    REQUIRE(found.size() == 1);
    CHECK(found[0].cluster == from + 1);
    CHECK(found[0].text.find("shifted") != std::string::npos);
  }
}
