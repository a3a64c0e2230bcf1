// Lengths, masses, speeds, temperatures, angles and ratios as people write them, to SI and back. No locale anywhere.
//
// All factors are exact by definition: the international yard and pound agreement of 1959 (1 yd = 0.9144 m,
// 1 lb = 0.45359237 kg) and the international nautical mile (1852 m), as listed in NIST SP 811, appendix B (from
// memory).
#pragma once

#include <array>
#include <cmath>
#include <string>
#include <string_view>

#include "sdk/number.hpp"
#include "sdk/quantity.hpp"
#include "sdk/result.hpp"

namespace quadrille {

inline constexpr double metres_per_inch = 0.0254;
inline constexpr double metres_per_foot = 0.3048;
inline constexpr double kilograms_per_pound = 0.45359237;
inline constexpr double metres_per_second_per_mph = 0.44704;

inline constexpr std::array<UnitOfMeasure, 7> length_units{
    {{"m metre metres meter meters"},
     {"cm centimetre centimetres centimeter centimeters", 1, 100},
     {"mm millimetre millimetres millimeter millimeters", 1, 1000},
     {"km kilometre kilometres kilometer kilometers", 1000},
     {"in inch inches \"", 254, 10000},
     {"ft foot feet '", 3048, 10000},
     {"yd yard yards", 9144, 10000}}};
inline constexpr std::array<UnitOfMeasure, 5> mass_units{{{"kg kilogram kilograms"},
                                                          {"g gram grams", 1, 1000},
                                                          {"lb lbs pound pounds", 45359237, 1e8},
                                                          {"oz ounce ounces", 45359237, 16e8},
                                                          {"t tonne tonnes", 1000}}};
inline constexpr std::array<UnitOfMeasure, 5> speed_units{{{"m/s mps"},
                                                           {"km/h kmh kph", 1000, 3600},
                                                           {"mph mi/h", 44704, 100000},
                                                           {"kn kt kts knot knots", 1852, 3600},
                                                           {"ft/s fps", 3048, 10000}}};
inline constexpr std::array<UnitOfMeasure, 3> temperature_units{
    {{"°c c celsius"}, {"°f f fahrenheit", 5, 9, -32}, {"k kelvin", 1, 1, -273.15}}};
inline constexpr std::array<UnitOfMeasure, 2> angle_units{
    {{"rad radian radians"}, {"° deg degree degrees", 3.14159265358979323846, 180}}};
inline constexpr std::array<UnitOfMeasure, 2> ratio_units{{{""}, {"% percent", 1, 100}}};

/// A length [m]: "20ft", "8'6\"", "8' 6 1/2\"", "2.4m", "2,4 m", "230 mm", "30cm", "1/2 in"; bare numbers are metres.
/// Comma or point as decimal mark; grouped digits are refused. Any sign: the caller checks the range.
inline Result<double> parse_length(std::string_view text) {
  return parse_quantity(text, {"length", "2.4 m, 230 mm, 9 in, 20 ft or 8' 6\"", length_units, "ft", "in", 12});
}

/// A mass [kg]: "10kg", "350 g", "22lb", "5 lb 4 oz", "1.2 t"; bare numbers are kilograms. Otherwise as parse_length.
inline Result<double> parse_mass(std::string_view text) {
  return parse_quantity(text, {"mass", "10 kg, 350 g, 22 lb or 5 lb 4 oz", mass_units, "lb", "oz", 16});
}

/// A speed [m/s]: "24mph", "38 km/h", "10.7 m/s", "20 kn"; bare numbers are m/s. Otherwise as parse_length.
inline Result<double> parse_speed(std::string_view text) {
  return parse_quantity(text, {"speed", "24 mph, 38 km/h, 10.7 m/s or 20 kn", speed_units});
}

/// A temperature [degrees Celsius]: "20 °C", "68F", "293.15 K"; bare numbers are degrees Celsius. Refuses what lies
/// below absolute zero.
inline Result<double> parse_temperature(std::string_view text) {
  const auto celsius = parse_quantity(text, {"temperature", "20 °C, 68 °F or 293.15 K", temperature_units});
  if (celsius && *celsius < -273.15)
    return Result<double>::bad(quoted(text) + " is below absolute zero: nothing is colder than -273.15 °C.");
  return celsius;
}

/// An angle [rad]: "45deg", "45°", "0.785 rad"; bare numbers are radians.
inline Result<double> parse_angle(std::string_view text) {
  return parse_quantity(text, {"angle", "45 deg, 45° or 0.785 rad", angle_units});
}

/// A dimensionless number: "0.88", "0,88", "88 %", "7/8".
inline Result<double> parse_ratio(std::string_view text) {
  return parse_quantity(text, {"ratio", "0.88 or 88 %", ratio_units});
}

enum class LengthStyle { feet_inches, metres };
enum class MassStyle { pounds, kilograms };
enum class SpeedStyle { miles_per_hour, kilometres_per_hour, metres_per_second };
enum class TemperatureStyle { fahrenheit, celsius };

/// `metres` in feet and inches to the nearest half inch, halves away from zero: 8' 6 1/2", 17' 0 1/2", 1', 11", 1/2",
/// 0". After feet a half inch follows a 0, as the trade writes it: 17' 1/2" is read as seventeen and a half feet.
inline std::string print_feet_inches(double metres) {
  // A millionth of a half inch keeps what was typed as a quarter inch from falling just short of its rounding.
  const double halves = std::floor(std::abs(metres) / metres_per_inch * 2 + 0.5 + 1e-6);
  const double feet = std::floor(halves / 24), inches = std::floor((halves - feet * 24) / 2);
  const bool half = std::fmod(halves, 2) != 0;
  std::string text = metres < 0 && halves > 0 ? "-" : "";
  if (feet > 0) text += print_fixed(feet, 0) + "'";
  if (feet > 0 && (inches > 0 || half)) text += ' ';
  const bool with_inches = inches > 0 || (feet > 0 ? half : !half);
  if (with_inches) text += print_fixed(inches, 0);
  if (with_inches && half) text += ' ';
  if (half) text += "1/2";
  if (inches > 0 || half || feet == 0) text += '"';
  return text;
}

/// A length for people: feet and inches to the nearest half inch (8' 6 1/2"), or metres to the centimetre (2.60 m).
/// `metres` is finite and below 1e12 in size, as in all functions below.
inline std::string print_length(double metres, LengthStyle style) {
  return style == LengthStyle::feet_inches ? print_feet_inches(metres) : print_fixed(metres, 2) + " m";
}

/// A length in both systems, for messages that do not know which one their reader prefers: "2.60 m (8' 6 1/2")".
inline std::string print_both(double metres) {
  return print_length(metres, LengthStyle::metres) + " (" + print_length(metres, LengthStyle::feet_inches) + ")";
}

/// The next whole centimetre [m] at or above `metres`; a hundredth of a micrometre beyond one is taken for rounding.
inline double up_to_centimetre(double metres) { return std::ceil(metres * 100 - 1e-6) / 100; }

/// A bound for messages that say "at least": both figures rounded up, so that typing either one satisfies it.
/// `metres` is 0 or more.
inline std::string print_at_least(double metres) {
  const double halves = std::ceil(metres / metres_per_inch * 2 - 1e-6);
  return print_length(up_to_centimetre(metres), LengthStyle::metres) + " (" +
         print_feet_inches(halves * metres_per_inch / 2) + ")";
}

/// A bound for messages that say "at most": both figures rounded down. `metres` is 0 or more.
inline std::string print_at_most(double metres) {
  const double centimetres = std::floor(metres * 100 + 1e-6), halves = std::floor(metres / metres_per_inch * 2 + 1e-6);
  return print_length(centimetres / 100, LengthStyle::metres) + " (" + print_feet_inches(halves * metres_per_inch / 2) +
         ")";
}

/// A mass for people: "10.0 kg" or "22.0 lb".
inline std::string print_mass(double kilograms, MassStyle style, int decimals = 1) {
  return style == MassStyle::pounds ? print_fixed(kilograms / kilograms_per_pound, decimals) + " lb"
                                    : print_fixed(kilograms, decimals) + " kg";
}

/// A mass per length in both systems, for the same messages: "0.304 kg per metre (0.204 lb per foot)".
inline std::string print_mass_per_length(double kg_per_m) {
  return print_fixed(kg_per_m, 3) + " kg per metre (" +
         print_fixed(kg_per_m * metres_per_foot / kilograms_per_pound, 3) + " lb per foot)";
}

/// A speed for people: "24 mph", "38 km/h" or "10.7 m/s".
inline std::string print_speed(double metres_per_second, SpeedStyle style) {
  switch (style) {
    case SpeedStyle::miles_per_hour:
      return print_fixed(metres_per_second / metres_per_second_per_mph, 0) + " mph";
    case SpeedStyle::kilometres_per_hour:
      return print_fixed(metres_per_second * 3.6, 0) + " km/h";
    case SpeedStyle::metres_per_second:
      break;
  }
  return print_fixed(metres_per_second, 1) + " m/s";
}

/// A temperature for people: "68 °F" or "20 °C".
inline std::string print_temperature(double celsius, TemperatureStyle style) {
  return style == TemperatureStyle::fahrenheit ? print_fixed(celsius * 9 / 5 + 32, 0) + " °F"
                                               : print_fixed(celsius, 0) + " °C";
}

}  // namespace quadrille
