// When a parameter matters: conditions on the values of others, as a piece type declares them.
#pragma once

#include <string>
#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// Reads "frame=square topper!=none|height>0", written as quadrille_parameter::only_with says; an empty text is no
/// condition. Fails with a sentence where a word is none of these.
Result<Conditions> parse_conditions(std::string_view text);

/// What is wrong with the conditions of `parameter` by its own table: no such parameter, no such choice, a kind that
/// cannot be asked so. Empty where nothing is.
std::string fault_of_conditions(const ParameterTable& table, const Parameter& parameter);

/// True where `parameter` matters as `values` stand. A condition on a parameter that is not there holds.
bool applies_now(const ParameterTable& table, const ValueMap& values, const Parameter& parameter);

/// What it waits for, in words: "Frame is Square, and Pattern is Stripes or Zigzag"; empty where it always matters.
std::string conditions_in_words(const ParameterTable& table, const Parameter& parameter);

}  // namespace quadrille
