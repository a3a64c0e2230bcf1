// Money adds up: tax by line, discount, sums, deposit.
#include "studio/quote/charges.hpp"

#include <doctest/doctest.h>

#include <array>
#include <random>
#include <stdexcept>
#include <vector>

namespace quadrille {
namespace {

Charge charge(QuoteLineKind kind, Minor price, PartsPerMillion tax, bool holds_tax = false) {
  return {kind, {}, "", price, tax, holds_tax};
}

TEST_CASE("value added tax in the prices, by hand") {
  // 20 % within 465.00 is 465.00 × 20/120 = 77.50; within 52.99 it is 8.8317, so 8.83.
  // 10 % off 517.99 is 51.799, so 51.80, and holds 51.80 / 6 = 8.6333, so 8.63 of tax.
  // Tax: 77.50 + 8.83 - 8.63 = 77.70. Net: 387.50 + 44.16 - 43.17 = 388.49. Total: 517.99 - 51.80 = 466.19.
  // Deposit: 50 % of 466.19 is 233.095, halves up: 233.10, which leaves 233.09.
  const std::vector charges{charge(QuoteLineKind::piece, 46'500, 200'000, true),
                            charge(QuoteLineKind::delivery, 5'299, 200'000, true)};
  const Quote quote = quote_of(charges, {"GBP", true, 100'000, 500'000, 30'000});
  REQUIRE(quote.lines.size() == 3);
  CHECK(quote.lines[0].net_minor == 38'750);
  CHECK(quote.lines[0].tax_minor == 7'750);
  CHECK(quote.lines[1].tax_minor == 883);
  CHECK(quote.lines[2].kind == QuoteLineKind::discount);
  CHECK(quote.lines[2].text == "Discount, 10 %");
  CHECK(quote.lines[2].net_minor == -4'317);
  CHECK(quote.lines[2].tax_minor == -863);
  CHECK(quote.net_minor == 38'849);
  CHECK(quote.tax_minor == 7'770);
  CHECK(quote.total_minor == 46'619);
  CHECK(quote.deposit_minor == 23'310);
  CHECK(quote.balance_minor == 23'309);
}

TEST_CASE("sales tax on top, delivery without, by hand") {
  // 8.25 % of 465.00 is 38.3625, so 38.36; of 145.00 it is 11.9625, so 11.96; delivery of 44.37 is not taxed.
  // 5 % off: of the taxed 610.00 it is 30.50, and 2.51625 of tax, so 2.52; of 44.37 it is 2.2185, so 2.22.
  // Net: 465.00 + 145.00 + 44.37 - 30.50 - 2.22 = 621.65. Tax: 38.36 + 11.96 - 2.52 = 47.80. Total: 669.45.
  // Deposit: half is 334.725, so 334.73, which leaves 334.72.
  const std::vector charges{charge(QuoteLineKind::piece, 46'500, 82'500), charge(QuoteLineKind::piece, 14'500, 82'500),
                            charge(QuoteLineKind::delivery, 4'437, 0)};
  const Quote quote = quote_of(charges, {"USD", false, 50'000, 500'000, 30'000});
  REQUIRE(quote.lines.size() == 5);
  CHECK(quote.lines[0].tax_minor == 3'836);
  CHECK(quote.lines[1].tax_minor == 1'196);
  CHECK(quote.lines[2].tax_minor == 0);
  CHECK(quote.lines[3].text == "Discount, 5 % on what is taxed at 8.25 %");
  CHECK(quote.lines[3].net_minor == -3'050);
  CHECK(quote.lines[3].tax_minor == -252);
  CHECK(quote.lines[4].text == "Discount, 5 % on what is taxed at 0 %");
  CHECK(quote.lines[4].net_minor == -222);
  CHECK(quote.net_minor == 62'165);
  CHECK(quote.tax_minor == 4'780);
  CHECK(quote.total_minor == 66'945);
  CHECK(quote.deposit_minor == 33'473);
  CHECK(quote.balance_minor == 33'472);
}

TEST_CASE("currencies without and with three minor digits, by hand") {
  // 10 % of 1255 yen is 125.5, so 126. 5 % of 12.345 dinars is 0.61725, so 0.617.
  const std::vector yen{charge(QuoteLineKind::piece, 1'255, 100'000)};
  CHECK(quote_of(yen, {"JPY", false, 0, 0, 0}).total_minor == 1'381);
  const std::vector dinars{charge(QuoteLineKind::piece, 12'345, 50'000)};
  const Quote quote = quote_of(dinars, {"KWD", false, 0, 0, 0});
  CHECK(quote.tax_minor == 617);
  CHECK(print_money(quote.total_minor, quote.currency) == "12.962 KWD");
}

TEST_CASE("no deposit is asked up to the amount that the house says") {
  const std::vector charges{charge(QuoteLineKind::piece, 30'000, 0)};
  CHECK(quote_of(charges, {"USD", false, 0, 500'000, 30'000}).deposit_minor == 0);
  CHECK(quote_of(charges, {"USD", false, 0, 500'000, 29'999}).deposit_minor == 15'000);
  CHECK(quote_of(charges, {"USD", false, 1'000'000, 500'000, 0}).total_minor == 0);
  CHECK(quote_of({}, {"USD", false, 50'000, 500'000, 0}) == Quote{});
}

/// |a × b - c × d| ≤ most, where the products do not fit in 64 bits.
bool near(Minor a, std::int64_t b, Minor c, std::int64_t d, std::int64_t most) {
  const __int128 off = static_cast<__int128>(a) * b - static_cast<__int128>(c) * d;
  return off <= most && off >= -static_cast<__int128>(most);
}

TEST_CASE("of 10,000 random quotes in currencies of 0, 2 and 3 digits the lines, tax and total agree") {
  std::mt19937_64 random(20'270'619);
  const auto up_to = [&](std::int64_t most) {
    return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(most + 1));
  };
  constexpr std::array currencies{"JPY", "ISK", "USD", "EUR", "GBP", "KWD", "TND"};
  constexpr std::array<PartsPerMillion, 6> taxes{0, 50'000, 82'500, 70'000, 200'000, 88'750};
  for (int round = 0; round < 10'000; ++round) {
    const bool with_tax = up_to(1) == 1;
    const QuoteTerms terms{currencies[static_cast<std::size_t>(up_to(6))], with_tax,
                           up_to(3) == 0 ? up_to(whole_ppm) : 0, up_to(whole_ppm), up_to(100'000)};
    std::vector<Charge> charges;
    for (std::int64_t i = up_to(12); i > 0; --i)
      charges.push_back(charge(QuoteLineKind::piece, up_to(up_to(1) == 0 ? 999 : 99'999'999),
                               taxes[static_cast<std::size_t>(up_to(5))], with_tax && up_to(3) != 0));
    const Quote quote = quote_of(charges, terms);
    REQUIRE(quote.currency == terms.currency);
    Minor net = 0, tax = 0, gross = 0, told = 0, off = 0;
    std::size_t place = 0;
    for (const QuoteLine& line : quote.lines) {
      net += line.net_minor;
      tax += line.tax_minor;
      gross += line.total_minor();
      // The tax of a line is its share of the net to within half a minor unit; where the price holds the tax, net and
      // tax are each rounded, so that it is within one.
      REQUIRE(near(line.tax_minor, whole_ppm, line.net_minor, line.tax, whole_ppm));
      const Minor as_told = with_tax ? line.total_minor() : line.net_minor;
      if (line.kind == QuoteLineKind::discount) {
        off -= as_told;
        REQUIRE(line.net_minor <= 0);
      } else {
        told += as_told;
        const Charge& asked = charges[place++];
        REQUIRE((asked.holds_tax ? line.total_minor() : line.net_minor) == asked.price_minor);
      }
    }
    REQUIRE(place == charges.size());
    REQUIRE(quote.net_minor == net);
    REQUIRE(quote.tax_minor == tax);
    REQUIRE(quote.total_minor == gross);
    REQUIRE(quote.total_minor == net + tax);
    REQUIRE(quote.deposit_minor + quote.balance_minor == quote.total_minor);
    REQUIRE(quote.deposit_minor >= 0);
    REQUIRE(quote.balance_minor >= 0);
    // Each of at most six discounts is rounded for itself.
    REQUIRE(near(off, whole_ppm, told, terms.discount, 3 * whole_ppm));
  }
}

TEST_CASE("what cannot be reckoned with is thrown, not wrapped around") {
  const std::vector charges{charge(QuoteLineKind::piece, highest_amount, 0),
                            charge(QuoteLineKind::piece, highest_amount, 0)};
  CHECK_THROWS_AS(quote_of(charges, {}), std::overflow_error);
  CHECK_THROWS_AS(quote_of({}, {"USD", false, whole_ppm + 1, 0, 0}), std::invalid_argument);
  CHECK_THROWS_AS(quote_of({}, {"USD", false, 0, -1, 0}), std::invalid_argument);
}

}  // namespace
}  // namespace quadrille
