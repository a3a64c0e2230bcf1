// What was typed into a field, as a value of its parameter.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

/// The value that `text` writes for the parameter. Numbers may be sums (see sums.hpp); a bare number is in the field's
/// unit, where on the command line it is in SI units: beside a field its unit stands. A choice is taken by its label or its
/// key, in either case. Fails with a sentence that says what would be accepted: no such quantity, outside the hard range,
/// no whole number, no such choice.
Result<Value> read_typed(const Parameter& parameter, std::string_view text, Units units);

/// As read_typed, in a field that shows `now`: its own text gives back the very value, though it was rounded to be shown.
Result<Value> read_field(const Parameter& parameter, const Value& now, std::string_view text, Units units);

}  // namespace quadrille
