// Money against the published list of currencies and against arithmetic without bounds.
#include "studio/model/money.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <boost/multiprecision/cpp_int.hpp>
#include <numeric>
#include <stdexcept>

#include "tests/reference_table.hpp"

using namespace quadrille;
using Big = boost::multiprecision::cpp_int;

namespace {

/// amount × numerator ÷ denominator to the nearest, halves away from nothing, in numbers without bounds.
Minor scaled_exactly(Minor amount, std::int64_t numerator, std::int64_t denominator) {
  const Big product = boost::multiprecision::abs(Big(amount)) * numerator;
  const Big rounded = (2 * product + denominator) / (2 * Big(denominator));
  return static_cast<Minor>(amount < 0 ? -rounded : rounded);
}

}  // namespace

TEST_CASE("every currency of ISO 4217 has the digits of its published list") {
  const ReferenceTable table("iso4217.csv");
  CHECK(table.rows() == 179);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string& code = table.text(row, "code");
    CAPTURE(code);
    const int digits = static_cast<int>(table.number(row, "minor_digits"));
    CHECK(minor_digits(code) == (digits < 0 ? std::nullopt : std::optional(digits)));
  }
  for (const char* const unknown : {"", "usd", "US", "QQQ", "D A", "AED AFN"}) CHECK(!minor_digits(unknown));
}

TEST_CASE("amounts are scaled as numbers without bounds are, halves away from nothing") {
  CHECK(scaled(5, 1, 2) == 3);
  CHECK(scaled(-5, 1, 2) == -3);
  CHECK(scaled(4, 1, 3) == 1);
  CHECK(share_of(19'99, 82'500) == 1'65);  // 8.25 % of 19.99 is 1.649175
  CHECK(share_of(10'00, 195'000) == 1'95);
  const Big highest = highest_amount;
  CHECK(rc::check("scaled", [&] {
    const Minor amount = *rc::gen::inRange<Minor>(-1'000'000'000'000, 1'000'000'000'001);
    const auto numerator = *rc::gen::inRange<std::int64_t>(0, 1'000'000'001);
    const auto denominator = *rc::gen::inRange<std::int64_t>(1, 1'000'000'001);
    const Big exact = boost::multiprecision::abs(Big(amount)) * numerator / denominator;
    if (exact >= highest) {
      RC_ASSERT_THROWS_AS(scaled(amount, numerator, denominator), std::overflow_error);
    } else {
      RC_ASSERT(scaled(amount, numerator, denominator) == scaled_exactly(amount, numerator, denominator));
    }
  }));
  CHECK_THROWS_AS(scaled(1, -1, 2), std::invalid_argument);
  CHECK_THROWS_AS(scaled(1, 1, 0), std::invalid_argument);
  CHECK_THROWS_AS(scaled(highest_amount + 1, 1, 2), std::overflow_error);
}

TEST_CASE("tax that is in a price and tax that is put on it belong together") {
  CHECK(tax_within(119'00, 190'000) == 19'00);  // 100 and 19 %
  CHECK(tax_within(10'00, 200'000) == 1'67);    // 8.333… and 20 %
  CHECK(tax_within(10'00, 0) == 0);
  CHECK(rc::check("the net of a gross gives its tax again, within the unit that rounding costs", [] {
    const Minor gross = *rc::gen::inRange<Minor>(0, 1'000'000'000);
    const auto share = *rc::gen::inRange<PartsPerMillion>(0, 1'000'000);
    const Minor tax = tax_within(gross, share);
    RC_ASSERT(std::abs(share_of(gross - tax, share) - tax) <= 1);
  }));
}

TEST_CASE("a split gives everything away, to each within one unit of its share") {
  const std::int64_t thirds[] = {1, 1, 1};
  CHECK(split(100, thirds) == std::vector<Minor>{34, 33, 33});
  CHECK(split(-100, thirds) == std::vector<Minor>{-34, -33, -33});
  const std::int64_t uneven[] = {0, 5, 3};
  CHECK(split(10, uneven) == std::vector<Minor>{0, 6, 4});  // 6.25 and 3.75
  CHECK(rc::check("split", [] {
    const Minor amount = *rc::gen::inRange<Minor>(-highest_amount, highest_amount);
    const auto weights = *rc::gen::nonEmpty(
        rc::gen::container<std::vector<std::int64_t>>(rc::gen::inRange<std::int64_t>(0, 1'000'000'001)));
    const Big sum = std::accumulate(weights.begin(), weights.end(), Big(0));
    RC_PRE(sum > 0);
    const auto parts = split(amount, weights);
    RC_ASSERT(std::accumulate(parts.begin(), parts.end(), Minor{0}) == amount);
    for (std::size_t i = 0; i < parts.size(); ++i)
      RC_ASSERT(boost::multiprecision::abs(Big(parts[i]) * sum - Big(amount) * weights[i]) < sum);
  }));
  CHECK_THROWS_AS(split(1, {}), std::invalid_argument);
  const std::int64_t nothing[] = {0, 0};
  CHECK_THROWS_AS(split(1, nothing), std::invalid_argument);
}

TEST_CASE("amounts are printed and read in the digits of their currency") {
  CHECK(print_money(123'450, "USD") == "1234.50 USD");
  CHECK(print_money(-5, "EUR") == "-0.05 EUR");
  CHECK(print_money(1234, "JPY") == "1234 JPY");
  CHECK(print_money(1234, "KWD") == "1.234 KWD");
  CHECK(print_money(1234, "QQQ") == "1234 minor units of QQQ");
  CHECK(*parse_money("1234.5", "USD") == 123'450);
  CHECK(*parse_money(" 1234,50 USD", "USD") == 123'450);
  CHECK(*parse_money("USD -0.05", "USD") == -5);
  CHECK(*parse_money("12", "KWD") == 12'000);
  for (const char* const bad :
       {"", "1.234", "1,234.50", "12.", ".5", "1e3", "nan", "12 EUR", "99999999999999999", "--1"})
    CHECK_MESSAGE(!parse_money(bad, "USD"), bad);
  CHECK(parse_money("1.5", "JPY").error ==
        "'1.5' is no amount of JPY; write whole units such as 1250, without grouping.");
  CHECK(rc::check("what is printed reads back", [] {
    const Minor amount = *rc::gen::inRange<Minor>(-highest_amount, highest_amount + 1);
    const std::string currency = *rc::gen::elementOf(std::vector<std::string>{"USD", "JPY", "KWD", "CLF"});
    RC_ASSERT(*parse_money(print_money(amount, currency), currency) == amount);
  }));
}

TEST_CASE("shares are printed and read in per cent") {
  CHECK(print_share(82'500) == "8.25 %");
  CHECK(print_share(0) == "0 %");
  CHECK(print_share(1'500'000) == "150 %");
  CHECK(print_share(1) == "0.0001 %");
  CHECK(*parse_share("8,25") == 82'500);
  CHECK(*parse_share("8.875 %") == 88'750);
  CHECK(*parse_share("1000%") == 10'000'000);
  for (const char* const bad : {"", "%", "-1", "1000.1", "1.23456", "a"}) CHECK_MESSAGE(!parse_share(bad), bad);
}
