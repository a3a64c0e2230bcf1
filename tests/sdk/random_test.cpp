// The seeded generator: the published sequences to the last bit, then evenness of everything mapped from them.
#include "sdk/random.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <boost/math/distributions/chi_squared.hpp>
#include <cstdint>
#include <map>
#include <vector>

using namespace quadrille;

namespace {

/// Pearson's statistic of `counts` against these expectations.
double chi_square(const std::vector<double>& counts, const std::vector<double>& expected) {
  double sum = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double off = counts[i] - expected[i];
    sum += off * off / expected[i];
  }
  return sum;
}

/// True where a fair generator would give such a statistic with a chance of neither less than 1e-5 nor more than
/// 1 - 1e-5 (Boost.Math's distribution): neither uneven nor too even to be chance.
bool looks_fair(const std::vector<double>& counts, const std::vector<double>& expected) {
  const boost::math::chi_squared law(static_cast<double>(counts.size() - 1));
  const double tail = cdf(complement(law, chi_square(counts, expected)));
  CAPTURE(tail);
  return tail > 1e-5 && tail < 1 - 1e-5;
}

bool looks_even(const std::vector<double>& counts) {
  double total = 0;
  for (const double count : counts) total += count;
  return looks_fair(counts, std::vector<double>(counts.size(), total / static_cast<double>(counts.size())));
}

constexpr std::uint64_t seeds[] = {0, 1, 2, 42, 4294967295u};

}  // namespace

TEST_CASE("the seeding sequence is SplitMix64 as published") {
  // First five numbers for the seed 1234567 as Rosetta Code lists them ("Pseudo-random numbers/Splitmix64"), seen in
  // several independent test suites.
  std::uint64_t state = 1234567;
  for (const std::uint64_t expected :
       {6457827717110365317u, 3203168211198807973u, 9817491932198370423u, 4593380528125082431u, 16408922859458223821u})
    CHECK(splitmix64(state) == expected);
}

TEST_CASE("the sequence is xoshiro256** as published") {
  // From the state 1, 2, 3, 4: the ten numbers that the tests of the crate rand_xoshiro give as the output of the
  // authors' reference implementation.
  Random random = Random::from_state({1, 2, 3, 4});
  for (const std::uint64_t expected :
       {std::uint64_t{11520}, std::uint64_t{0}, std::uint64_t{1509978240}, std::uint64_t{1215971899390074240},
        std::uint64_t{1216172134540287360}, std::uint64_t{607988272756665600}, std::uint64_t{16172922978634559625u},
        std::uint64_t{8476171486693032832}, std::uint64_t{10595114339597558777u}, std::uint64_t{2904607092377533576}})
    CHECK(random.next() == expected);
}

TEST_CASE("a seed enters through SplitMix64") {
  std::uint64_t counter = 7;
  std::array<std::uint64_t, 4> state{};
  for (auto& word : state) word = splitmix64(counter);
  Random seeded(7), set = Random::from_state(state);
  for (int i = 0; i < 100; ++i) CHECK(seeded.next() == set.next());
}

TEST_CASE("the same seed repeats, another does not, and a copy goes on alike") {
  Random a(5), b(5), other(6);
  CHECK(a.next() == b.next());
  CHECK(a.next() != other.next());
  Random copy = a;
  CHECK(a.next() == copy.next());
}

TEST_CASE("reals are multiples of 2^-53 in [0, 1), evenly spread") {
  // 11520 = 0x2D00 is below 2^11 × 6: the top 53 bits of the first published number are 5, those of the second 0.
  Random published = Random::from_state({1, 2, 3, 4});
  CHECK(published.unit() == 5 * 0x1p-53);
  CHECK(published.unit() == 0);
  for (const auto seed : seeds) {
    Random random(seed);
    std::vector<double> cells(64);
    for (int i = 0; i < 64'000; ++i) {
      const double drawn = random.unit();
      REQUIRE(drawn >= 0);
      REQUIRE(drawn < 1);
      ++cells[static_cast<std::size_t>(drawn * 64)];
    }
    CHECK(looks_even(cells));
  }
}

TEST_CASE("neighbouring reals do not depend on each other") {
  for (const auto seed : seeds) {
    Random random(seed);
    std::vector<double> cells(16 * 16);
    for (int i = 0; i < 64'000; ++i) {
      const auto first = static_cast<std::size_t>(random.unit() * 16),
                 second = static_cast<std::size_t>(random.unit() * 16);
      ++cells[first * 16 + second];
    }
    CHECK(looks_even(cells));
  }
}

TEST_CASE("a range is kept, also where it is a point") {
  Random random(3);
  for (int i = 0; i < 1000; ++i) {
    const double drawn = random.within(-0.5, 2.5);
    REQUIRE(drawn >= -0.5);
    REQUIRE(drawn <= 2.5);
  }
  CHECK(random.within(1.5, 1.5) == 1.5);
}

TEST_CASE("whole numbers stay below the count, each as likely, also where 2^64 is no multiple of it") {
  Random one(9);
  CHECK(one.below(1) == 0);
  for (const auto seed : seeds) {
    Random random(seed);
    std::vector<double> counts(7);
    for (int i = 0; i < 70'000; ++i) ++counts.at(random.below(7));
    CHECK(looks_even(counts));
  }
  // With count 3 × 2^62, a plain remainder of 64 bits would give the lowest third twice as often as the others, since
  // 2^64 = 3 × 2^62 + 2^62.
  Random random(11);
  const std::uint64_t third = std::uint64_t{1} << 62;
  std::vector<double> thirds(3);
  for (int i = 0; i < 30'000; ++i) ++thirds.at(random.below(3 * third) / third);
  CHECK(looks_even(thirds));
}

TEST_CASE("shares are hit in proportion, and a share of nothing never") {
  const std::array<double, 5> shares{0, 0.5, 0.2, 0.3, 0};
  for (const auto seed : seeds) {
    Random random(seed);
    std::vector<double> counts(5);
    for (int i = 0; i < 20'000; ++i) ++counts.at(random.pick(shares));
    CHECK(counts[0] == 0);
    CHECK(counts[4] == 0);
    CHECK(looks_fair({counts[1], counts[2], counts[3]}, {10'000, 4'000, 6'000}));
  }
}

TEST_CASE("every order of a shuffle is as likely, and nothing is lost") {
  for (const auto seed : seeds) {
    Random random(seed);
    std::map<std::array<int, 4>, double> orders;
    for (int i = 0; i < 24'000; ++i) {
      std::array<int, 4> items{1, 2, 3, 4};
      random.shuffle(items);
      ++orders[items];
    }
    CHECK(orders.size() == 24);  // 4! orders and no other
    std::vector<double> counts;
    for (const auto& [order, count] : orders) {
      auto sorted = order;
      std::ranges::sort(sorted);
      CHECK(sorted == std::array<int, 4>{1, 2, 3, 4});
      counts.push_back(count);
    }
    CHECK(looks_even(counts));
  }
  std::vector<int> none;
  Random(1).shuffle(none);
  CHECK(none.empty());
}
