#include "studio/model/money.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <stdexcept>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

// ISO 4217 list one of 2024-06-25: every code with a minor unit, by the number of its digits.
constexpr std::array<std::string_view, 5> codes_by_digits{
    "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    "",
    "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF "
    "CHW CNY COP COU CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG "
    "HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK "
    "MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE "
    "SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWG",
    "BHD IQD JOD KWD LYD OMR TND",
    "CLF UYW",
};

constexpr std::int64_t highest_factor = 1'000'000'000;

constexpr std::array<Minor, 5> powers_of_ten{1, 10, 100, 1000, 10'000};

void check_amount(Minor amount) {
  if (amount > highest_amount || amount < -highest_amount)
    throw std::overflow_error("an amount of money is beyond what is reckoned with");
}

/// Reads digits with at most `decimals` after a point or comma, as a whole number of the last decimal; nothing for
/// other text, for more than `most_digits` digits, and beyond highest_amount.
std::optional<std::int64_t> parse_decimals(std::string_view text, int decimals, int most_digits) {
  std::int64_t number = 0;
  int digits = 0, after = -1;
  for (const char c : text) {
    if (c == '.' || c == ',') {
      if (after >= 0 || digits == 0) return std::nullopt;
      after = 0;
      continue;
    }
    if (c < '0' || c > '9' || ++digits > most_digits) return std::nullopt;
    if (after >= 0 && ++after > decimals) return std::nullopt;
    number = number * 10 + (c - '0');
  }
  if (digits == 0 || after == 0) return std::nullopt;
  const Minor power = powers_of_ten.at(static_cast<std::size_t>(decimals - std::max(after, 0)));
  if (number > highest_amount / power) return std::nullopt;
  return number * power;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

/// `number` in units of its last decimal, written with a point.
std::string print_decimals(std::int64_t number, int decimals) {
  std::string text = std::to_string(number < 0 ? -number : number);
  if (decimals > 0) {
    const auto places = static_cast<std::size_t>(decimals);
    if (text.size() <= places) text.insert(0, places + 1 - text.size(), '0');
    text.insert(text.size() - places, ".");
  }
  return (number < 0 ? "-" : "") + text;
}

}  // namespace

std::optional<int> minor_digits(std::string_view currency) {
  if (!is_currency(currency)) return std::nullopt;
  for (std::size_t digits = 0; digits < codes_by_digits.size(); ++digits)
    if (codes_by_digits[digits].find(currency) != std::string_view::npos) return static_cast<int>(digits);
  return std::nullopt;
}

Minor scaled(Minor amount, std::int64_t numerator, std::int64_t denominator) {
  if (numerator < 0 || numerator > highest_factor || denominator < 1 || denominator > highest_factor)
    throw std::invalid_argument("a factor of an amount of money is out of range");
  check_amount(amount);
  const Minor size = amount < 0 ? -amount : amount;
  // Whole multiples of the denominator apart from the rest: each product then fits.
  const Minor whole = size / denominator, rest = size % denominator;
  if (numerator > 0 && whole > highest_amount / numerator)
    throw std::overflow_error("an amount of money is beyond what is reckoned with");
  const std::int64_t fine = rest * numerator;
  const Minor rounded = whole * numerator + fine / denominator + (fine % denominator >= (denominator + 1) / 2 ? 1 : 0);
  check_amount(rounded);
  return amount < 0 ? -rounded : rounded;
}

Minor share_of(Minor amount, PartsPerMillion share) { return scaled(amount, share, whole_ppm); }

Minor tax_within(Minor price_with_tax, PartsPerMillion share) {
  return scaled(price_with_tax, share, whole_ppm + share);
}

std::vector<Minor> split(Minor amount, std::span<const std::int64_t> weights) {
  check_amount(amount);
  if (weights.size() > 1'000'000) throw std::invalid_argument("an amount of money is split in too many parts");
  std::int64_t sum = 0;
  for (const std::int64_t weight : weights) {
    if (weight < 0 || weight > highest_factor)
      throw std::invalid_argument("a part of an amount of money is out of range");
    sum += weight;
  }
  if (sum == 0) throw std::invalid_argument("an amount of money cannot be split in parts of nothing");
  const Minor size = amount < 0 ? -amount : amount;
  const Minor whole = size / sum, rest = size % sum;
  std::vector<Minor> parts;
  std::vector<std::int64_t> remainders;
  Minor left = size;
  for (const std::int64_t weight : weights) {
    // rest < sum ≤ 1e15 and weight ≤ 1e9: their product may need more than 63 bits.
    const auto [quotient, remainder] = [&]() -> std::pair<std::int64_t, std::int64_t> {
      std::int64_t q = 0, r = 0;
      for (int bit = 29; bit >= 0; --bit) {  // weight < 2^30, from its highest bit
        q *= 2;
        r *= 2;
        if ((weight >> bit) & 1) r += rest;
        q += r / sum;
        r %= sum;
      }
      return {q, r};
    }();
    parts.push_back(whole * weight + quotient);
    remainders.push_back(remainder);
    left -= parts.back();
  }
  std::vector<std::size_t> order(parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, std::ranges::greater(), [&](std::size_t part) { return remainders[part]; });
  for (std::size_t i = 0; i < static_cast<std::size_t>(left); ++i) ++parts[order[i]];
  if (amount < 0)
    for (Minor& part : parts) part = -part;
  return parts;
}

std::string print_money(Minor amount, std::string_view currency) {
  const auto digits = minor_digits(currency);
  if (!digits) return std::to_string(amount) + " minor units of " + std::string(currency);
  return print_decimals(amount, *digits) + " " + std::string(currency);
}

Result<Minor> parse_money(std::string_view text, std::string_view currency) {
  const auto digits = minor_digits(currency);
  if (!digits)
    return Result<Minor>::bad(quoted(std::string(currency)) + " is no currency with a known minor unit, such as USD.");
  std::string_view number = trimmed(text);
  if (number.ends_with(currency)) number = trimmed(number.substr(0, number.size() - currency.size()));
  if (number.starts_with(currency)) number = trimmed(number.substr(currency.size()));
  const bool negative = number.starts_with('-');
  if (negative) number.remove_prefix(1);
  const auto amount = parse_decimals(number, *digits, 17);
  if (!amount)
    return Result<Minor>::bad(
        quoted(std::string(text)) + " is no amount of " + std::string(currency) + "; write " +
        (*digits == 0 ? "whole units such as 1250"
                      : "an amount such as " +
                            print_decimals(125 * powers_of_ten.at(static_cast<std::size_t>(*digits)) / 10, *digits)) +
        ", without grouping.");
  return Result<Minor>::good(negative ? -*amount : *amount);
}

std::string print_share(PartsPerMillion share) {
  std::string text = print_decimals(share, 4);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text + " %";
}

Result<PartsPerMillion> parse_share(std::string_view text) {
  std::string_view number = trimmed(text);
  if (number.ends_with('%')) number = trimmed(number.substr(0, number.size() - 1));
  const auto share = parse_decimals(number, 4, 9);
  if (!share || *share > 10 * whole_ppm)
    return Result<PartsPerMillion>::bad(quoted(std::string(text)) +
                                        " is no share; write per cent from 0 to 1000, such as 8.25 %.");
  return Result<PartsPerMillion>::good(*share);
}

std::string print_figure(Minor amount, const std::string& currency) {
  const std::string text = print_money(amount, currency);
  return minor_digits(currency) ? text.substr(0, text.rfind(' ')) : text;
}

}  // namespace quadrille
