#include "studio/form/typed.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/form/field_units.hpp"
#include "studio/form/sums.hpp"
#include "studio/form/trimmed.hpp"
#include "studio/model/near_word.hpp"
#include "studio/model/parameter_check.hpp"

namespace quadrille {
namespace {

Result<Value> read_choice(const Parameter& parameter, std::string_view text) {
  const std::string wanted = in_lower_case(trimmed_text(text));
  std::vector<std::string> labels;
  for (const Choice& choice : parameter.choices) {
    if (wanted == choice.key || wanted == in_lower_case(choice.label))
      return Result<Value>::good(Value::of_text(Kind::choice, choice.key));
    labels.push_back(in_lower_case(choice.label));
  }
  std::string list;
  for (std::size_t i = 0; i < parameter.choices.size(); ++i)
    list += (i == 0 ? "" : i + 1 == parameter.choices.size() ? " or " : ", ") + parameter.choices[i].label;
  const auto meant = near_word(wanted, labels);
  return Result<Value>::bad(parameter.label + " is " + list + ", not " + quoted(text) +
                            (meant ? "; did you mean " + quoted(*meant) + "?" : "."));
}

Result<double> read_number(const Parameter& parameter, std::string_view text, Units units) {
  if (parameter.kind == Kind::flag) return parse_flag(trimmed_text(text));
  return read_sum(text, measure_of(parameter.kind), unit_of(parameter, units).name);
}

/// In the units of the form rather than both: the field shows them.
std::string fault_of_typed(const Parameter& parameter, const Value& value, Units units) {
  std::string fault = fault_of_value(parameter, value);
  const bool number = is_number(parameter.kind) && parameter.kind != Kind::flag;
  const bool outside = number && (value.number < parameter.hard_min || value.number > parameter.hard_max);
  if (fault.empty() || !outside) return fault;
  return parameter.label + " is " + value_in_words(parameter, value, units) + ": " + range_in_words(parameter, units) +
         " would be accepted.";
}

}  // namespace

Result<Value> read_typed(const Parameter& parameter, std::string_view text, Units units) {
  if (parameter.kind == Kind::choice) return read_choice(parameter, text);
  Value value;
  if (is_number(parameter.kind)) {
    const auto number = read_number(parameter, text, units);
    if (!number) return Result<Value>::bad(number.error);
    value = Value::of_number(parameter.kind, *number == 0 ? 0.0 : *number);
  } else {
    const auto read = parse_value(parameter.kind, text);
    if (!read) return read;
    value = *read;
  }
  if (std::string fault = fault_of_typed(parameter, value, units); !fault.empty())
    return Result<Value>::bad(std::move(fault));
  return Result<Value>::good(std::move(value));
}

Result<Value> read_field(const Parameter& parameter, const Value& now, std::string_view text, Units units) {
  if (trimmed_text(text) == text_of(parameter, now, units).text) return Result<Value>::good(now);
  return read_typed(parameter, text, units);
}

}  // namespace quadrille
