#include "studio/form/field_units.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/units.hpp"
#include "sdk/value_text.hpp"
#include "sdk/vec.hpp"
#include "studio/form/sums.hpp"

namespace quadrille {
namespace {

constexpr double large_m = 1.5, middling_m = 0.1;
constexpr UnitOfMeasure plain_units[] = {{""}};
constexpr UnitOfMeasure nominal_units[] = {{"in inch inches \""}};

FieldUnit length_unit(double usual_m, Units units) {
  if (units == Units::feet) {
    if (usual_m >= large_m) return {"ft", metres_per_foot, true};
    return {"in", metres_per_inch, false};
  }
  if (usual_m >= large_m) return {"m", 1, false};
  return usual_m >= middling_m ? FieldUnit{"cm", 0.01, false} : FieldUnit{"mm", 0.001, false};
}

/// True where typing `text` into the field gives this number, to the last bits of its rounding.
bool reads_as(const Parameter& parameter, const FieldUnit& unit, const std::string& text, double number) {
  const auto read = read_sum(text, measure_of(parameter.kind), unit.name);
  return read && std::abs(*read - number) <= 1e-12 * std::max(1.0, std::abs(number));
}

ValueText number_text(const Parameter& parameter, double number, const FieldUnit& unit) {
  if (is_whole(parameter.kind)) return {print_fixed(number, 0), true};
  if (unit.feet_and_inches) {
    const std::string feet = print_feet_inches(number);
    return {feet, reads_as(parameter, unit, feet, number)};
  }
  constexpr int most_digits = 6, rounded_digits = 4;
  const std::string text = print_significant(number / unit.base_per_unit, most_digits);
  if (reads_as(parameter, unit, text, number)) return {text, true};
  return {print_significant(number / unit.base_per_unit, rounded_digits), false};
}

std::string with_unit(const std::string& text, const FieldUnit& unit) {
  if (unit.feet_and_inches || unit.name.empty()) return text;
  return text + (unit.name == "°" ? "" : " ") + unit.name;
}

/// A bound rounded to what one would type, towards the inside of the range.
double inward(double bound, double step, bool least) {
  const double steps = bound / step;
  return step * (least ? std::ceil(steps - 1e-6) : std::floor(steps + 1e-6));
}

std::string label_of_choice(const Parameter& parameter, const std::string& key) {
  const auto choice = std::ranges::find(parameter.choices, key, &Choice::key);
  return choice == parameter.choices.end() ? key : choice->label;
}

}  // namespace

FieldUnit unit_of(const Parameter& parameter, Units units) {
  switch (parameter.kind) {
    case Kind::length:
      return length_unit(std::max(std::abs(parameter.display_min), std::abs(parameter.display_max)), units);
    case Kind::angle:
      return {"°", pi / 180, false};
    case Kind::mass:
      return units == Units::feet ? FieldUnit{"lb", kilograms_per_pound, false} : FieldUnit{"kg", 1, false};
    case Kind::balloon:
      return {"in", 1, false};
    default:
      return {};
  }
}

Measure measure_of(Kind kind) {
  switch (kind) {
    case Kind::length:
      return {"length", "2.4 m, 230 mm, 9 in, 20 ft or 8' 6\"", length_units, "ft", "in", 12};
    case Kind::angle:
      return {"angle", "45° or 0.785 rad", angle_units};
    case Kind::mass:
      return {"mass", "10 kg, 350 g, 22 lb or 5 lb 4 oz", mass_units, "lb", "oz", 16};
    case Kind::ratio:
      return {"number", "0.95 or 95%", ratio_units};
    case Kind::balloon:
      return {"nominal balloon size", "11 or 11in", nominal_units};
    default:
      return {"whole number", "33", plain_units};
  }
}

ValueText text_of(const Parameter& parameter, const Value& value, Units units) {
  if (value.kind == Kind::flag) return {value.number != 0 ? "yes" : "no", true};
  if (is_number(value.kind)) return number_text(parameter, value.number, unit_of(parameter, units));
  if (value.kind == Kind::choice) return {label_of_choice(parameter, value.text), true};
  return {print_value(value), true};
}

std::string value_in_words(const Parameter& parameter, const Value& value, Units units) {
  const std::string text = text_of(parameter, value, units).text;
  return is_number(value.kind) ? with_unit(text, unit_of(parameter, units)) : text;
}

std::string range_in_words(const Parameter& parameter, Units units) {
  if (parameter.kind == Kind::flag || !is_number(parameter.kind)) return {};
  const FieldUnit unit = unit_of(parameter, units);
  const auto bound = [&](double number, bool least) {
    double shown = number;
    if (unit.feet_and_inches)
      shown = inward(number, metres_per_inch / 2, least);
    else if (!number_text(parameter, number, unit).exact)
      shown = inward(number, unit.base_per_unit / 100, least);
    return with_unit(number_text(parameter, shown, unit).text, unit);
  };
  return bound(parameter.hard_min, true) + " to " + bound(parameter.hard_max, false);
}

std::string typing_help(const Parameter& parameter, Units units) {
  const bool feet = units == Units::feet;
  switch (parameter.kind) {
    case Kind::length: {
      const std::string unit = unit_of(parameter, units).name;
      const std::string words = unit == "ft" ? "feet" : unit == "in" ? "inches" : unit;
      return "A bare number is in " + words + ". " + (feet ? "8'6\", 1/2 in, 2.4 m" : "2.4 m, 30 cm, 8'6\"") +
             " or a sum such as " + (feet ? "20 ft / 3" : "2.4 m + 30 cm") + " can be typed too.";
    }
    case Kind::mass:
      return std::string("A bare number is in ") + (feet ? "pounds" : "kilograms") +
             ". 10 kg, 22 lb or a sum can be typed too.";
    case Kind::angle:
      return "A bare number is in degrees.";
    case Kind::ratio:
      return "A number or a percentage: 0.95 or 95%.";
    case Kind::balloon:
      return "A nominal size in inches: 11.";
    case Kind::rows:
      return "One word of slot letters per cluster, such as AABB ABBA.";
    case Kind::path:
      return "Insert adds a row, Ctrl+Del removes one. As one text: points x y z in metres or with units, "
             "and ';' between points.";
    case Kind::mix:
      return "Insert adds a row, Ctrl+Del removes one. As one text: 11in 0.28m 60%; 5in 0.12m 40%.";
    default:
      return {};
  }
}

}  // namespace quadrille
