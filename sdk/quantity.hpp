// Reads one quantity as people write it: a number, whole, decimal or with a fraction, and a unit. Knows no units
// itself; units.hpp has them. Never depends on the locale.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/result.hpp"

namespace quadrille {

/// A unit: n of it are (n + offset) × times ÷ over of the base unit. Two whole numbers keep 230 mm the double nearest
/// to 0.23, which 230 × 0.001 need not be.
struct UnitOfMeasure {
  std::string_view names;  ///< in lower case, separated by blanks; '' and " are the marks of feet and inches
  double times = 1, over = 1, offset = 0;
};

/// What is measured, and how it may be written.
struct Measure {
  std::string_view noun;                 ///< "length"
  std::string_view examples;             ///< for sentences: "2.4 m, 230 mm or 8' 6\""
  std::span<const UnitOfMeasure> units;  ///< the first is meant where no unit is written
  std::string_view large = {},
                   small = {};  ///< a pair that is written together, such as feet and inches: one name of each
  double small_per_large = 0;
};

/// A number at the head of a text.
struct Amount {
  double number = 0;
  bool whole = false;  ///< written with digits only
};

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
constexpr char to_lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

inline std::string in_lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) c = to_lower(c);
  return lower;
}

inline void skip_blanks(std::string_view& rest) {
  while (!rest.empty() && is_blank(rest.front())) rest.remove_prefix(1);
}

/// Takes the digits that `rest` begins with.
inline std::string_view take_digits(std::string_view& rest) {
  std::size_t length = 0;
  while (length < rest.size() && is_digit(rest[length])) ++length;
  const std::string_view digits = rest.substr(0, length);
  rest.remove_prefix(length);
  return digits;
}

/// Takes the mark and returns true where `rest` begins with it.
inline bool take(std::string_view& rest, char mark) {
  if (!rest.starts_with(mark)) return false;
  rest.remove_prefix(1);
  return true;
}

/// `text` with typographic signs written plainly: primes and curly quotes as ' and ", ½ as 1/2, the minus sign as '-',
/// blanks of every width as ' '.
inline std::string with_plain_marks(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 25> marks{{
      {"′", "'"},    {"’", "'"},    {"‘", "'"},      {"ʹ", "'"},      {"´", "'"},    {"`", "'"},    {"″", "\""},
      {"”", "\""},   {"“", "\""},   {"„", "\""},     {"˝", "\""},     {"−", "-"},    {"–", "-"},    {"º", "°"},
      {"℃", "°C"},   {"℉", "°F"},   {"½", " 1/2"},   {"¼", " 1/4"},   {"¾", " 3/4"}, {"⅛", " 1/8"}, {"⅜", " 3/8"},
      {"⅝", " 5/8"}, {"⅞", " 7/8"}, {"\u00A0", " "}, {"\u202F", " "},
  }};
  std::string plain;
  while (!text.empty()) {
    std::size_t taken = 0;
    for (const auto& [sign, written] : marks) {
      if (!text.starts_with(sign)) continue;
      plain += written;
      taken = sign.size();
      break;
    }
    if (taken == 0) {
      plain += text.front();
      taken = 1;
    }
    text.remove_prefix(taken);
  }
  // Two single primes, whatever they were written with, are the mark of inches.
  for (auto at = plain.find("''"); at != std::string::npos; at = plain.find("''")) plain.replace(at, 2, 1, '"');
  return plain;
}

/// Takes "1/2" from the head of `rest`; nothing is taken where no such fraction stands there.
inline Result<double> take_fraction(std::string_view& rest) {
  std::string_view ahead = rest;
  const std::string_view above = take_digits(ahead);
  const bool slash = take(ahead, '/');
  const std::string_view below = take_digits(ahead);
  if (above.empty() || !slash || below.empty()) return Result<double>::bad("");
  const auto numerator = parse_number(above), denominator = parse_number(below);
  const std::string_view written = rest.substr(0, rest.size() - ahead.size());
  if (!numerator || !denominator || *denominator == 0)
    return Result<double>::bad(quoted(written) + " is no fraction that can be used.");
  rest = ahead;
  return Result<double>::good(*numerator / *denominator);
}

/// Takes a decimal number from the head of `rest`: digits with at most one decimal mark, and perhaps an exponent.
inline Result<Amount> take_decimal(std::string_view& rest) {
  std::string_view ahead = rest;
  std::string text;
  int marks = 0;
  for (; !ahead.empty(); ahead.remove_prefix(1)) {
    const char c = ahead.front();
    const bool mark = (c == '.' || c == ',') && ahead.size() > 1 && is_digit(ahead[1]);
    if (!mark && !is_digit(c)) break;
    marks += mark ? 1 : 0;
    text += mark ? '.' : c;
  }
  if (text.empty()) return Result<Amount>::bad("");
  const std::string_view written = rest.substr(0, rest.size() - ahead.size());
  if (marks > 1)
    return Result<Amount>::bad(quoted(written) +
                               " can be read in more than one way: write one decimal mark, point or "
                               "comma, and do not group digits, as in 1234.5.");
  bool exponent = false;
  if (!ahead.empty() && to_lower(ahead.front()) == 'e') {
    std::string_view power = ahead.substr(1);
    const std::string_view sign = power.starts_with('-') ? "-" : "";
    if (!power.empty() && (power.front() == '-' || power.front() == '+')) power.remove_prefix(1);
    const std::string_view digits = take_digits(power);
    exponent = !digits.empty();
    if (exponent) {
      text.append("e").append(sign).append(digits);
      ahead = power;
    }
  }
  const auto number = parse_number(text);
  if (!number)
    return Result<Amount>::bad(quoted(rest.substr(0, rest.size() - ahead.size())) +
                               " is beyond the numbers that can be used.");
  rest = ahead;
  return Result<Amount>::good({*number, marks == 0 && !exponent});
}

/// Takes a number from the head of `rest`: "3", "2.4", "2,4", ".5", "1e-3", "1/2", "6 1/2" or "6-1/2". The error is
/// empty where none begins there.
inline Result<Amount> take_amount(std::string_view& rest) {
  const auto as_amount = [](const Result<double>& fraction, double whole) {
    return fraction ? Result<Amount>::good({whole + *fraction, false}) : Result<Amount>::bad(fraction.error);
  };
  const auto fraction = take_fraction(rest);
  if (fraction || !fraction.error.empty()) return as_amount(fraction, 0);
  auto amount = take_decimal(rest);
  if (!amount || !amount->whole) return amount;
  std::string_view ahead = rest;
  if (!take(ahead, '-')) skip_blanks(ahead);
  if (ahead.size() == rest.size()) return amount;
  const auto part = take_fraction(ahead);
  if (!part && part.error.empty()) return amount;
  rest = ahead;
  return as_amount(part, amount->number);
}

/// Takes the unit from the head of `rest`, in lower case; empty where a number or nothing follows.
inline std::string take_unit(std::string_view& rest) {
  skip_blanks(rest);
  const bool mark = rest.starts_with('\'') || rest.starts_with('"');
  const std::size_t length = mark ? 1 : std::min(rest.find_first_of(" \t\r\n0123456789+-'\".,"), rest.size());
  const std::string unit = in_lower_case(rest.substr(0, length));
  rest.remove_prefix(length);
  if (length > 0) take(rest, '.');  // "8 ft. 6 in."
  return unit;
}

inline bool has_name(const UnitOfMeasure& unit, std::string_view name) {
  std::string_view names = unit.names;
  while (!names.empty()) {
    const std::size_t end = std::min(names.find(' '), names.size());
    if (names.substr(0, end) == name) return true;
    names.remove_prefix(std::min(end + 1, names.size()));
  }
  return false;
}

/// The unit of this name, the first of the measure where `name` is empty, or null.
inline const UnitOfMeasure* find_unit(const Measure& measure, std::string_view name) {
  if (name.empty()) return &measure.units.front();
  for (const UnitOfMeasure& unit : measure.units)
    if (has_name(unit, name)) return &unit;
  return nullptr;
}

/// Where `rest` goes on with the smaller unit of a pair (the inches after feet), takes it and changes `number` and
/// `unit` to the smaller one. Returns what is wrong, or an empty text.
inline std::string take_smaller(std::string_view& rest, const Measure& measure, const Amount& first, double& number,
                                const UnitOfMeasure*& unit) {
  if (rest.empty() || measure.large.empty() || !has_name(*unit, measure.large)) return {};
  std::string_view ahead = rest;
  if (take(ahead, '-')) skip_blanks(ahead);
  const auto second = take_amount(ahead);
  if (!second) return second.error;
  const UnitOfMeasure* small = find_unit(measure, measure.small);
  const std::string name = take_unit(ahead);
  if (!name.empty() && !has_name(*small, name)) return {};
  if (!first.whole || second->number >= measure.small_per_large)
    return "With two units the first number is to be whole and the second below " +
           print_number(measure.small_per_large) + ".";
  number = first.number * measure.small_per_large + second->number;
  unit = small;
  rest = ahead;
  return {};
}

/// The whole of `text` as a quantity in the measure's base unit. Fails with a sentence where it is no such quantity,
/// has something after it, groups digits, or goes beyond the range of double. Any sign: the caller checks the range.
inline Result<double> parse_quantity(std::string_view text, const Measure& measure) {
  using Answer = Result<double>;
  const std::string noun(measure.noun), remedy = ": write it like " + std::string(measure.examples) + ".";
  const std::string plain = with_plain_marks(text);
  std::string_view rest = plain;
  skip_blanks(rest);
  if (rest.empty()) return Answer::bad("No " + noun + " is given" + remedy);
  const bool negative = take(rest, '-');
  if (!negative) take(rest, '+');
  skip_blanks(rest);

  const auto first = take_amount(rest);
  if (!first) return Answer::bad(first.error.empty() ? quoted(text) + " is no " + noun + remedy : first.error);
  const std::string name = take_unit(rest);
  const UnitOfMeasure* unit = find_unit(measure, name);
  if (!unit) return Answer::bad(quoted(name) + " is no unit of " + noun + remedy);
  skip_blanks(rest);
  double number = first->number;
  if (const std::string wrong = take_smaller(rest, measure, *first, number, unit); !wrong.empty())
    return Answer::bad(quoted(text) + " is no clear " + noun + ". " + wrong);
  skip_blanks(rest);
  if (!rest.empty()) return Answer::bad(quoted(rest) + " after the " + noun + " is not understood" + remedy);

  const double base = ((negative ? -number : number) + unit->offset) * unit->times / unit->over;
  if (!std::isfinite(base)) return Answer::bad(quoted(text) + " is beyond the numbers that can be used.");
  return Answer::good(base);
}

}  // namespace quadrille
