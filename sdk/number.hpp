// Numbers as text, in one way for every file and command: no locale, no printf, no strtod.
#pragma once

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>

namespace quadrille {

/// Shortest text that reads back as the same double: "2.4", "1e+30". Never depends on the locale. `number` is finite.
inline std::string print_number(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number == 0 ? 0.0 : number);
  return {text, end.ptr};
}

/// With exactly `decimals` decimals, rounded to nearest as the C library does: print_fixed(2.345, 1) is "2.3".
/// `number` is finite; decimals is 0 to 12, otherwise the nearer of both is taken. Never prints "-0".
inline std::string print_fixed(double number, int decimals) {
  char text[336];  // 309 digits of the largest double, sign, point and 12 decimals
  const auto end =
      std::to_chars(text, text + sizeof text, number, std::chars_format::fixed, std::clamp(decimals, 0, 12));
  if (end.ec != std::errc()) return print_number(number);
  std::string printed(text, end.ptr);
  if (printed.starts_with('-') && printed.find_first_not_of("-0.") == std::string::npos) printed.erase(0, 1);
  return printed;
}

/// With at most `digits` significant digits, without useless zeros, for people: 0.0123, 1.5e+06. `number` is finite;
/// digits is 1 to 17, otherwise the nearer of both is taken.
inline std::string print_significant(double number, int digits) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number == 0 ? 0.0 : number, std::chars_format::general,
                                 std::clamp(digits, 1, 17));
  return {text, end.ptr};
}

/// `number` to 12 significant digits, the same on every machine even where its last bits come from a mathematics
/// library that differs. `number` is finite; not finite is returned as it is.
inline double to_twelve_digits(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number, std::chars_format::scientific, 11);
  double rounded = number;
  if (std::isfinite(number)) std::from_chars(text, end.ptr, rounded);
  return rounded;
}

/// The finite number that is the whole of `text` ("2.4", "-1e3", "+5"); nothing for anything else: a comma, blanks, a
/// unit, "nan", "inf", hexadecimals, or a number beyond the range of double.
inline std::optional<double> parse_number(std::string_view text) {
  const bool plus = text.starts_with('+');
  if (plus) text.remove_prefix(1);
  if (text.empty() || (plus && text.starts_with('-'))) return std::nullopt;
  double number = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
  if (end.ec != std::errc() || end.ptr != text.data() + text.size() || !std::isfinite(number)) return std::nullopt;
  return number;
}

/// The whole number that is the whole of `text`; nothing for anything else, or beyond 64 bits.
inline std::optional<std::int64_t> parse_whole(std::string_view text) {
  std::int64_t number = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
  if (text.empty() || end.ec != std::errc() || end.ptr != text.data() + text.size()) return std::nullopt;
  return number;
}

}  // namespace quadrille
