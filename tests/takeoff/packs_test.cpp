// Packs against hand derivation and against trying everything.
#include "studio/takeoff/packs.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <limits>
#include <random>
#include <utility>

namespace quadrille {
namespace {

struct Sum {
  std::int64_t balloons = 0, cost = 0, packs = 0;
};

Sum sum_of(const std::vector<BoughtPacks>& bought) {
  Sum sum;
  for (const BoughtPacks& kind : bought) {
    sum.balloons += kind.packs * kind.pack_size;
    sum.cost += kind.packs * kind.price_minor;
    sum.packs += kind.packs;
  }
  return sum;
}

using Cost = std::pair<std::int64_t, std::int64_t>;  // cost, packs

/// Tries every number of every offer.
Cost best_by_trying(std::int64_t needed, std::span<const Pack> offers) {
  if (needed <= 0) return {0, 0};
  if (offers.empty()) return {std::numeric_limits<std::int64_t>::max() / 2, 0};
  Cost best{std::numeric_limits<std::int64_t>::max(), 0};
  const Pack& first = offers.front();
  for (std::int64_t packs = 0; (packs - 1) * first.count < needed; ++packs) {
    Cost rest = best_by_trying(needed - packs * first.count, offers.subspan(1));
    rest.first += packs * first.price_minor;
    rest.second += packs;
    best = std::min(best, rest);
  }
  return best;
}

TEST_CASE("one pack size: as many as reach the need") {
  const std::vector<Pack> hundred{{11, 100, 900}};
  CHECK(cheapest_packs(1, hundred) == std::vector<BoughtPacks>{{100, 1, 900}});
  CHECK(cheapest_packs(100, hundred) == std::vector<BoughtPacks>{{100, 1, 900}});
  CHECK(cheapest_packs(101, hundred) == std::vector<BoughtPacks>{{100, 2, 900}});
  CHECK(cheapest_packs(0, hundred).empty());
  CHECK(cheapest_packs(-5, hundred).empty());
  CHECK(cheapest_packs(5, {}).empty());
}

TEST_CASE("several pack sizes: the mixture that costs least") {
  // 130 of packs of 100 at 9.00, 25 at 3.50: 100 + 2 × 25 cost 16.00, two of 100 cost 18.00.
  const std::vector<Pack> offers{{11, 25, 350}, {11, 100, 900}};
  CHECK(cheapest_packs(130, offers) == std::vector<BoughtPacks>{{100, 1, 900}, {25, 2, 350}});
  // 160: 100 + 3 × 25 cost 19.50, two of 100 cost 18.00.
  CHECK(cheapest_packs(160, offers) == std::vector<BoughtPacks>{{100, 2, 900}});
  // Small packs that are cheaper by the balloon are not passed over.
  const std::vector<Pack> odd{{11, 100, 900}, {11, 25, 200}};
  CHECK(cheapest_packs(100, odd) == std::vector<BoughtPacks>{{25, 4, 200}});
}

TEST_CASE("equal cost: fewer packs") {
  const std::vector<Pack> offers{{11, 50, 500}, {11, 100, 1000}};
  CHECK(cheapest_packs(300, offers) == std::vector<BoughtPacks>{{100, 3, 1000}});
}

TEST_CASE("offers that cannot be bought are passed over") {
  const std::vector<Pack> offers{{11, 0, 1}, {11, -5, 1}, {11, 10, -1}, {11, 20, 300}, {11, 20, 250}};
  CHECK(cheapest_packs(30, offers) == std::vector<BoughtPacks>{{20, 2, 250}});
}

TEST_CASE("never dearer than trying everything, and always enough") {
  std::mt19937 random(20270619);
  const auto pick = [&](int least, int most) {
    return static_cast<std::int64_t>(random() % static_cast<unsigned>(most - least + 1)) + least;
  };
  for (int round = 0; round < 5000; ++round) {
    std::vector<Pack> offers;
    const auto sizes = pick(1, 3);
    for (std::int64_t i = 0; i < sizes; ++i) offers.push_back({11, pick(2, 12), pick(0, 40)});
    const std::int64_t needed = pick(1, 90);
    const auto bought = cheapest_packs(needed, offers);
    const Sum sum = sum_of(bought);
    CAPTURE(needed);
    REQUIRE(sum.balloons >= needed);
    REQUIRE(Cost{sum.cost, sum.packs} == best_by_trying(needed, offers));
    REQUIRE(std::ranges::is_sorted(bought, std::ranges::greater{}, &BoughtPacks::pack_size));
  }
}

TEST_CASE("large needs stay exact and quick") {
  // Per balloon 100 at 9.00 beats 72 at 6.60 (9.1667 against 9.00): 1,000,000 = 10,000 × 100 exactly.
  const std::vector<Pack> offers{{11, 72, 660}, {11, 100, 900}};
  CHECK(cheapest_packs(1'000'000, offers) == std::vector<BoughtPacks>{{100, 10'000, 900}});
  // 72 more: 10,001 × 100 costs 9.00 more, one pack of 72 only 6.60.
  CHECK(cheapest_packs(1'000'072, offers) == std::vector<BoughtPacks>{{100, 10'000, 900}, {72, 1, 660}});
}

}  // namespace
}  // namespace quadrille
