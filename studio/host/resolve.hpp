// Values as the event keeps them against a piece type's table: one value per parameter, or a refusal in words.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/built.hpp"
#include "studio/host/piece_type.hpp"

namespace quadrille {

struct Resolved {
  std::vector<Value> values;       ///< one per parameter, in the order of the table; empty where refused
  std::optional<Message> refusal;  ///< names the key to blame and what would be accepted
};

/// Defaults overridden by `values`; earlier keys stand for the present ones. Refuses unknown keys, a parameter given
/// under two keys, and what fault_of_value refuses.
Resolved resolve(const PieceType& type, const ValueMap& values);

/// What is wrong with `value` for `parameter`: another kind, not finite, outside the hard range, not whole, no choice
/// of it, rows with other letters than A to F, broken lists. One sentence that names the parameter by its label and says
/// what would be accepted, lengths and masses in both systems; empty where the value is good.
std::string fault_of_value(const Parameter& parameter, const Value& value);

/// The sentence about a key that the type does not have: what it takes, and which of it was probably meant.
std::string no_such_parameter(const PieceType& type, std::string_view key);

/// "did you mean 20ft (6.096 m)?", for a length that was probably meant in another unit than metres: as it stands
/// `number` lies outside what the parameter usually is (its display range), in feet, inches, centimetres or millimetres
/// within. At most two units are offered; empty where none fits, and for other kinds.
std::string unit_meant(const Parameter& parameter, double number);

/// "0.5 m", "45°", "2 kg", "33", "88 in"…: a number of this kind for people, exact to at least six digits.
std::string in_words(Kind kind, double number);

}  // namespace quadrille
