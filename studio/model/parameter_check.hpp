// A value held against its parameter: what is wrong with it and what would be accepted, in words.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "studio/model/parameter.hpp"

namespace quadrille {

/// Numbers in the list of one value, and bytes in its text, at most.
inline constexpr std::size_t most_list = 300'000, most_value_text = 1u << 20;

/// What is wrong with `value` for `parameter`: another kind, not finite, outside the hard range, not whole, no choice
/// of it, rows with other letters than A to F, broken lists. One sentence that names the parameter by its label and says
/// what would be accepted, lengths and masses in both systems; empty where the value is good.
std::string fault_of_value(const Parameter& parameter, const Value& value);

/// "0.5 m to 6 m (1' 7 1/2\" to 19' 8\")": the hard range of a parameter that is a number, lengths and masses in both
/// systems.
std::string accepted_range(const Parameter& parameter);

/// "did you mean 20ft (6.096 m)?", for a length that was probably meant in another unit than metres: as it stands
/// `number` lies outside what the parameter usually is (its display range), in feet, inches, centimetres or millimetres
/// within. At most two units are offered; empty where none fits, and for other kinds.
std::string unit_meant(const Parameter& parameter, double number);

/// "0.5 m", "45°", "2 kg", "33", "88 in"…: a number of this kind for people, exact to at least six digits.
std::string in_words(Kind kind, double number);

/// The same value in the one form that is built from and compared: no -0, rows in capitals, unused fields empty. `value`
/// is one in which fault_of_value finds nothing.
Value in_one_form(const Value& value);

/// The value nearest to `value` that fault_of_value accepts, for kinds that are numbers: drawn into the hard range, whole
/// where it must be. Nothing for other kinds and for what is not finite.
std::optional<Value> nearest_accepted(const Parameter& parameter, const Value& value);

}  // namespace quadrille
