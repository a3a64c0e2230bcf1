// The written form of a parameter's value: on the command line, in the studio's fields and in a plugin's default_text.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "sdk/result.hpp"
#include "sdk/row_text.hpp"
#include "sdk/units.hpp"
#include "sdk/value.hpp"

namespace quadrille {

/// The words of `text` between blanks; a unit that stands apart belongs to the number before it ("1.2 m" is one word).
inline std::vector<std::string> words_with_units(std::string_view text) {
  const std::string plain = with_plain_marks(text);
  std::string_view rest = plain;
  std::vector<std::string> words;
  for (skip_blanks(rest); !rest.empty(); skip_blanks(rest)) {
    std::size_t length = 0;
    while (length < rest.size() && !is_blank(rest[length])) ++length;
    const char first = rest.front();
    const bool number = is_digit(first) || first == '-' || first == '+' || first == '.' || first == ',';
    if (number || words.empty()) words.emplace_back();
    words.back() += rest.substr(0, length);
    rest.remove_prefix(length);
  }
  return words;
}

/// A sentence where two neighbouring words look like one length with a blank in it (8' 6", 6 1/2"), which among several
/// lengths could mean two; otherwise empty.
inline std::string doubtful_blank(const std::vector<std::string>& words) {
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string before = in_lower_case(words[i - 1]);
    const bool feet = before.ends_with('\'') || before.ends_with("ft") || before.ends_with("feet");
    const bool inches = words[i].ends_with('"') || in_lower_case(words[i]).ends_with("in");
    const bool fraction = words[i].find('/') != std::string::npos && is_digit(before.back());
    if ((feet && inches) || fraction)
      return quoted(words[i - 1] + " " + words[i]) +
             " may be one length or two: write one length without blanks, as in "
             "8'6-1/2\".";
  }
  return {};
}

/// The parts of `text` between semicolons; an empty part at the end is left out.
inline std::vector<std::string_view> split_entries(std::string_view text) {
  std::vector<std::string_view> entries;
  for (std::size_t end = text.find(';'); end != std::string_view::npos; end = text.find(';')) {
    entries.push_back(text.substr(0, end));
    text.remove_prefix(end + 1);
  }
  skip_blanks(text);
  if (!text.empty()) entries.push_back(text);
  return entries;
}

/// Points "x y z; x z; …", each coordinate with an optional unit; two coordinates are x and z, with y = 0.
inline Result<Value> parse_path(std::string_view text) {
  std::vector<double> list;
  std::size_t number = 0;
  for (const std::string_view entry : split_entries(text)) {
    const std::string place = "Point " + std::to_string(++number) + ": ";
    const auto words = words_with_units(entry);
    if (words.size() != 2 && words.size() != 3)
      return Result<Value>::bad(place + quoted(entry) +
                                " is no point: write x y z, or x z, separated by blanks, and ';' "
                                "between points, as in 0 0; 1.2m 2.4m.");
    if (const std::string doubt = doubtful_blank(words); !doubt.empty()) return Result<Value>::bad(place + doubt);
    std::vector<double> point;
    for (const std::string& word : words) {
      const auto coordinate = parse_length(word);
      if (!coordinate) return Result<Value>::bad(place + coordinate.error);
      point.push_back(*coordinate);
    }
    if (point.size() == 2) point.insert(point.begin() + 1, 0.0);
    list.insert(list.end(), point.begin(), point.end());
  }
  return Result<Value>::good(Value::of_list(Kind::path, std::move(list)));
}

/// A balloon's nominal size [in]: "11in", "11\"" or "11". Sizes are names of the trade, so other units are refused.
inline Result<double> parse_nominal(std::string_view text) {
  static constexpr std::array<UnitOfMeasure, 1> units{{{"in inch inches \""}}};
  return parse_quantity(text, {"nominal balloon size", "11in or 11", units});
}

/// Entries "11in 0.28m 40%; …": nominal size, inflated diameter, share.
inline Result<Value> parse_mix(std::string_view text) {
  std::vector<double> list;
  std::size_t number = 0;
  for (const std::string_view entry : split_entries(text)) {
    const std::string place = "Entry " + std::to_string(++number) + ": ";
    const auto words = words_with_units(entry);
    if (words.size() != 3)
      return Result<Value>::bad(place + quoted(entry) +
                                " is no balloon with a share: write nominal size, inflated diameter "
                                "and share, and ';' between entries, as in 11in 0.28m 60%; 5in 0.12m 40%.");
    if (const std::string doubt = doubtful_blank(words); !doubt.empty()) return Result<Value>::bad(place + doubt);
    const Result<double> parts[] = {parse_nominal(words[0]), parse_length(words[1]), parse_ratio(words[2])};
    for (const auto& part : parts) {
      if (!part) return Result<Value>::bad(place + part.error);
      list.push_back(*part);
    }
    if (*parts[0] <= 0 || *parts[1] <= 0 || *parts[2] < 0)
      return Result<Value>::bad(place + "sizes are to be above 0, and the share 0 or more.");
  }
  return Result<Value>::good(Value::of_list(Kind::mix, std::move(list)));
}

/// Pattern rows: words of the slot letters A to F, in either case, between blanks, commas, '/' or new lines. The value
/// holds them in capitals with single blanks between.
inline Result<Value> parse_rows(std::string_view text) {
  const auto words = row_words(text);
  if (!words) return Result<Value>::bad(words.error);
  std::string rows;
  for (const std::string& word : *words) rows.append(rows.empty() ? "" : " ").append(word);
  return Result<Value>::good(Value::of_text(Kind::rows, std::move(rows)));
}

inline Result<double> parse_whole_number(std::string_view text) {
  skip_blanks(text);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  const auto whole = parse_whole(text);
  constexpr std::int64_t limit = std::int64_t{1} << 53;  // beyond it a double skips whole numbers
  if (!whole || *whole > limit || *whole < -limit)
    return Result<double>::bad(quoted(text) + " is no whole number: write it with digits only, as in 33.");
  return Result<double>::good(static_cast<double>(*whole));
}

/// "yes", "true", "on", "1" are 1; "no", "false", "off", "0" are 0; in either case.
inline Result<double> parse_flag(std::string_view text) {
  const std::string word = in_lower_case(text);
  if (word == "yes" || word == "true" || word == "on" || word == "1") return Result<double>::good(1);
  if (word == "no" || word == "false" || word == "off" || word == "0") return Result<double>::good(0);
  return Result<double>::bad(quoted(text) + " is neither yes nor no: write one of them.");
}

/// The value that `text` writes. Fails with a sentence that says what would be accepted. Ranges and choices are not
/// checked here: they belong to the parameter.
inline Result<Value> parse_value(Kind kind, std::string_view text) {
  const auto as_value = [kind](const Result<double>& number) {
    return number ? Result<Value>::good(Value::of_number(kind, *number)) : Result<Value>::bad(number.error);
  };
  switch (kind) {
    case Kind::length:
      return as_value(parse_length(text));
    case Kind::angle:
      return as_value(parse_angle(text));
    case Kind::mass:
      return as_value(parse_mass(text));
    case Kind::ratio:
      return as_value(parse_ratio(text));
    case Kind::balloon:
      return as_value(parse_nominal(text));
    case Kind::flag:
      return as_value(parse_flag(text));
    case Kind::count:
    case Kind::slots:
    case Kind::seed:
      return as_value(parse_whole_number(text));
    case Kind::choice:
      return Result<Value>::good(Value::of_text(kind, std::string(text)));
    case Kind::rows:
      return parse_rows(text);
    case Kind::path:
      return parse_path(text);
    case Kind::mix:
      return parse_mix(text);
  }
  return Result<Value>::bad("A value of an unknown kind cannot be read.");
}

/// Numbers of `list` three by three, with the units of the columns, and "; " between.
inline std::string print_triples(const std::vector<double>& list, std::string_view first_unit,
                                 std::string_view second_unit) {
  std::string text;
  for (std::size_t i = 0; i + 2 < list.size(); i += 3) {
    if (i > 0) text += "; ";
    text.append(print_number(list[i])).append(first_unit).append(" ");
    text.append(print_number(list[i + 1])).append(second_unit).append(" ").append(print_number(list[i + 2]));
  }
  return text;
}

/// The written form in SI units with shortest numbers: parse_value gives exactly `value` back. Numbers are finite,
/// lists hold whole triples, and rows are as parse_rows makes them.
inline std::string print_value(const Value& value) {
  switch (value.kind) {
    case Kind::length:
      return print_number(value.number) + "m";
    case Kind::angle:
      return print_number(value.number) + "rad";
    case Kind::mass:
      return print_number(value.number) + "kg";
    case Kind::balloon:
      return print_number(value.number) + "in";
    case Kind::ratio:
      return print_number(value.number);
    case Kind::flag:
      return value.number != 0 ? "yes" : "no";
    case Kind::count:
    case Kind::slots:
    case Kind::seed:
      return print_fixed(value.number, 0);
    case Kind::choice:
    case Kind::rows:
      return value.text;
    case Kind::path:
      return print_triples(value.list, "", "");
    case Kind::mix:
      return print_triples(value.list, "in", "m");
  }
  return {};
}

/// "height=2.4m": a parameter and its value as one word for the command line and for remedies.
inline std::string print_setting(std::string_view key, const Value& value) {
  return std::string(key) + "=" + print_value(value);
}

}  // namespace quadrille
