// Money: whole minor units of an ISO 4217 currency, and shares in parts per million. No floating point touches it.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"

namespace quadrille {

/// An amount in the minor unit of a currency that is known from elsewhere: cents, pence, yen.
using Minor = std::int64_t;

/// A share in parts per million: 82,500 is 8.25 %.
using PartsPerMillion = std::int64_t;

inline constexpr PartsPerMillion whole_ppm = 1'000'000;
/// No amount is larger, on either side of nothing; what would be is refused.
inline constexpr Minor highest_amount = 1'000'000'000'000'000;

/// How many digits the minor unit of a currency has (USD 2, JPY 0, KWD 3), or nothing for a code that ISO 4217 does not
/// list or that has no minor unit (XAU). Source: ISO 4217, list one.
std::optional<int> minor_digits(std::string_view currency);

/// amount × numerator ÷ denominator, rounded to the nearest unit, halves away from nothing. Valid: the amount and the
/// result within highest_amount, 0 ≤ numerator ≤ 1e9, 1 ≤ denominator ≤ 1e9; throws std::invalid_argument for other
/// factors and std::overflow_error for other amounts.
Minor scaled(Minor amount, std::int64_t numerator, std::int64_t denominator);

/// `share` of the amount, rounded as `scaled` does; share from 0 to 1e9 parts per million.
Minor share_of(Minor amount, PartsPerMillion share);

/// The tax that a price with tax holds: price × share ÷ (1 + share), rounded as `scaled` does.
Minor tax_within(Minor price_with_tax, PartsPerMillion share);

/// The amount in parts that go as `weights` (each 0 to 1e9, not all 0, at most 1,000,000 of them) and sum to the amount
/// exactly: each rounded down, what is left over goes unit by unit to the largest remainders, of equal ones the first.
/// Throws std::invalid_argument for other weights.
std::vector<Minor> split(Minor amount, std::span<const std::int64_t> weights);

/// "1234.50 USD", "-3 JPY": a point as the decimal mark, no grouping; the code of a currency whose digits are not known
/// stands after the whole minor units, "1234 minor units of ABC".
std::string print_money(Minor amount, std::string_view currency);

/// "465.00": the amount as print_money has it without its currency, for tables over which that stands once. An amount of
/// a currency that is not known keeps its name.
std::string print_figure(Minor amount, const std::string& currency);

/// Reads an amount as people write it, "1234.50", "1234,5", "12": at most as many decimals as the currency has. The
/// error says what is accepted.
Result<Minor> parse_money(std::string_view text, std::string_view currency);

/// "8.25 %"
std::string print_share(PartsPerMillion share);
/// Reads "8.25 %", "8,25" (in per cent) as parts per million, from 0 to 1000 %; at most four decimals.
Result<PartsPerMillion> parse_share(std::string_view text);

}  // namespace quadrille
