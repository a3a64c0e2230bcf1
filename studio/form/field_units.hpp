// The unit in which a parameter is shown and typed, and its values as texts for people.
#pragma once

#include <string>
#include <string_view>

#include "sdk/quantity.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// The unit of one field. A bare number that is typed there is in it.
struct FieldUnit {
  std::string name;  ///< as it stands beside the field: "m", "cm", "mm", "ft", "in", "kg", "lb", "°"; empty: none
  double base_per_unit = 1;  ///< one of it in the unit that values are kept in
  bool feet_and_inches = false;
};

/// By how large the parameter usually is, its display range: metres from 1.5 m up, centimetres from 0.1 m, else
/// millimetres; in feet, feet and inches from 1.5 m up, else inches. Nominal balloon sizes are in inches always.
FieldUnit unit_of(const Parameter& parameter, Units units);

/// How quantities of the kind are measured and written; of a kind that has no unit, a plain number.
Measure measure_of(Kind kind);

/// A value as it stands in its field. `exact` is false where it had to be rounded: then only reading it back through
/// read_field gives the very value.
struct ValueText {
  std::string text;
  bool exact = true;
};

/// In the field's unit, which stands beside it and is not repeated (feet and inches bear their marks). A number is written
/// in full where six digits do, else rounded to four. A choice by its label, a flag as yes or no, rows as typed; paths and mixes
/// in their written form, in SI units.
ValueText text_of(const Parameter& parameter, const Value& value, Units units);

/// The same with its unit, for sentences: "2.4 m", "8' 6\"", "45°", "Square".
std::string value_in_words(const Parameter& parameter, const Value& value, Units units);

/// "0.5 m to 6 m": the hard range in the field's unit, each end rounded inward so that typing it is accepted; empty for
/// kinds that have none.
std::string range_in_words(const Parameter& parameter, Units units);

/// What may be typed: "A bare number is in feet. 8'6\", 2.4 m, 30 cm or a sum such as 20 ft / 3 can be typed too."
std::string typing_help(const Parameter& parameter, Units units);

}  // namespace quadrille
