// Values as the event keeps them against a piece type's table: one value per parameter, or a refusal in words.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sdk/built.hpp"
#include "studio/host/piece_type.hpp"
#include "studio/model/parameter_check.hpp"

namespace quadrille {

struct Resolved {
  std::vector<Value> values;       ///< one per parameter, in the order of the table; empty where refused
  std::optional<Message> refusal;  ///< names the key to blame and what would be accepted
};

/// Defaults overridden by `values`; earlier keys stand for the present ones. Refuses unknown keys, a parameter given
/// under two keys, and what fault_of_value refuses.
Resolved resolve(const PieceType& type, const ValueMap& values);

/// The sentence about a key that the type does not have: what it takes, and which of it was probably meant.
std::string no_such_parameter(const PieceType& type, std::string_view key);

}  // namespace quadrille
