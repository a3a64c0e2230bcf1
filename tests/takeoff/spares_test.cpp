// Spares against tabulated quantiles, hand derivation, and the definition.
#include "studio/takeoff/spares.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "sdk/number.hpp"
#include "tests/places.hpp"
#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream stream(line);
  for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
  return cells;
}

TEST_CASE("all 200 tabulated rows give the same spares, whether spares may fail or not") {
  // Source: scipy.stats, see the first line of the table.
  std::ifstream file(source_place("tests/reference/binomial.csv"));
  REQUIRE(file);
  std::string line;
  int rows = 0;
  while (std::getline(file, line)) {
    if (line.starts_with('#') || line.starts_with("n,")) continue;
    const auto cells = cells_of(line);
    REQUIRE(cells.size() >= 7);
    const auto balloons = parse_whole(cells[0]).value();
    const SpareRule rule{parse_number(cells[1]).value(), 1 - parse_number(cells[2]).value()};
    CAPTURE(line);
    CHECK(spares_if_sound(balloons, rule) == parse_whole(cells[3]).value());
    CHECK(spares_to_order(balloons, rule) == parse_whole(cells[6]).value());
    ++rows;
  }
  CHECK(rows == 200);
}

TEST_CASE("few balloons by hand") {
  // One balloon that fails with 1/2: P(X ≤ 0) = 1/2, P(X ≤ 1) = 1.
  CHECK(spares_if_sound(1, {0.5, 0.5}) == 0);
  CHECK(spares_if_sound(1, {0.5, 0.4}) == 1);
  // If spares fail too, s spares are short when all 1 + s fail: (1/2)^(1+s) ≤ 0.05 needs 1 + s ≥ 4.32, so s = 4.
  CHECK(spares_to_order(1, {0.5, 0.05}) == 4);
  // Two balloons with 0.1: P(X = 2) = 0.01, P(X ≥ 1) = 0.19.
  CHECK(spares_if_sound(2, {0.1, 0.2}) == 0);
  CHECK(spares_if_sound(2, {0.1, 0.05}) == 1);
  CHECK(spares_if_sound(2, {0.1, 0.005}) == 2);
}

TEST_CASE("nothing to spare without balloons or without failures") {
  CHECK(spares_to_order(0, {0.02, 0.05}) == 0);
  CHECK(spares_if_sound(0, {0.02, 0.05}) == 0);
  CHECK(spares_to_order(500, {0.0, 0.05}) == 0);
  CHECK(spares_if_sound(500, {0.0, 0.05}) == 0);
}

TEST_CASE("a million balloons follow the normal approximation") {
  // De Moivre-Laplace: the 95 % quantile is about n p + 1.6449 sqrt(n p (1 − p)); here 20000 + 1.6449 · 140 = 20230.3.
  // The skewness moves it by (z² − 1)(1 − 2p)/6 < 0.3, the whole number by 1. Negative binomial: mean n p/(1 − p) =
  // 20408.16, sd sqrt(n p)/(1 − p) = 144.31, 20645.5.
  const SpareRule rule{0.02, 0.05};
  CHECK(std::abs(static_cast<double>(spares_if_sound(1'000'000, rule)) - 20'230.3) < 1.5);
  CHECK(std::abs(static_cast<double>(spares_to_order(1'000'000, rule)) - 20'645.5) < 1.5);
  // At an even chance of running short the quantile is the mean to within one.
  CHECK(std::abs(spares_if_sound(1'000'000, {0.3, 0.5}) - 300'000) <= 1);
}

TEST_CASE("more care, more failures and more balloons never need fewer spares") {
  std::int64_t last = 0;
  for (const double chance : {0.5, 0.2, 0.1, 0.05, 0.01, 1e-3, 1e-6, 1e-9, 1e-12}) {
    const auto spares = spares_to_order(150, {0.02, chance});
    CHECK(spares >= last);
    CHECK(spares >= spares_if_sound(150, {0.02, chance}));
    last = spares;
  }
  last = 0;
  for (std::int64_t balloons = 0; balloons < 400; ++balloons) {
    const auto spares = spares_to_order(balloons, {0.03, 0.05});
    CHECK(spares >= last);
    last = spares;
  }
}

TEST_CASE("the chance of running short is what the spares keep it to") {
  // By hand, two balloons that fail with 0.1 and one spare: short when two or three of three fail,
  // 3 · 0.01 · 0.9 + 0.001 = 0.028. Without a spare 1 − 0.81 = 0.19.
  CHECK(chance_of_running_short(2, 1, 0.1) == doctest::Approx(0.028));
  CHECK(chance_of_running_short(2, 0, 0.1) == doctest::Approx(0.19));
  CHECK(chance_of_running_short(2, -1, 0.1) == 1);
  CHECK(chance_of_running_short(0, 0, 0.1) == 0);
  CHECK(chance_of_running_short(66, 0, 0) == 0);
  // Source: the table's P_enough_with_negbinom and P_enough_one_fewer, see its first line.
  const ReferenceTable table("binomial.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto balloons = static_cast<std::int64_t>(table.number(row, "n"));
    const auto spares = static_cast<std::int64_t>(table.number(row, "spares_if_spares_fail_too"));
    const double rate = table.number(row, "p_fail");
    CAPTURE(row);
    CHECK(std::abs(chance_of_running_short(balloons, spares, rate) -
                   (1 - table.number(row, "P_enough_with_negbinom"))) < 1e-8);
    if (spares > 0) CHECK(chance_of_running_short(balloons, spares - 1, rate) > 1 - table.number(row, "confidence"));
  }
}

TEST_CASE("a rule that cannot be meant is refused") {
  CHECK_THROWS_AS(spares_to_order(10, {-0.1, 0.05}), std::invalid_argument);
  CHECK_THROWS_AS(spares_to_order(10, {1.0, 0.05}), std::invalid_argument);
  CHECK_THROWS_AS(spares_to_order(10, {std::nan(""), 0.05}), std::invalid_argument);
  CHECK_THROWS_AS(spares_if_sound(10, {0.02, 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(spares_if_sound(10, {0.02, 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(spares_if_sound(-1, {0.02, 0.05}), std::invalid_argument);
}

}  // namespace
}  // namespace quadrille
