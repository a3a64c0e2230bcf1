// Splits at the first '=' and reads the value as the kind that the table gives.
#include "studio/command/try_values.hpp"

#include <string_view>
#include <utility>

#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/host/resolve.hpp"

namespace quadrille {
namespace {

std::string_view trimmed(std::string_view text) {
  skip_blanks(text);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

/// A choice in the table's own letters where it was typed in others, such as Square for square.
std::string own_letters(const Parameter& parameter, std::string_view typed) {
  for (const Choice& choice : parameter.choices)
    if (choice.key == typed) return choice.key;
  for (const Choice& choice : parameter.choices)
    if (in_lower_case(choice.key) == in_lower_case(trimmed(typed))) return choice.key;
  return std::string(typed);
}

Result<Value> read(const Parameter& parameter, std::string_view text) {
  if (parameter.kind == Kind::choice) return parse_value(parameter.kind, own_letters(parameter, text));
  if (parameter.kind == Kind::flag) return parse_value(parameter.kind, trimmed(text));
  auto value = parse_value(parameter.kind, text);
  if (value || !is_whole(parameter.kind)) return value;
  return Result<Value>::bad(quoted(text) + " is no whole number: " + accepted_range(parameter) + " would be accepted.");
}

}  // namespace

Result<ValueMap> values_of(const PieceType& type, std::span<const std::string> words) {
  ValueMap values;
  for (const std::string& word : words) {
    const std::size_t mark = word.find('=');
    if (mark == std::string::npos || mark == 0)
      return Result<ValueMap>::bad(quoted(word) + " is not of the form key=value, as in rod-length=6m.");
    const std::string_view key = std::string_view(word).substr(0, mark);
    const Parameter* parameter = type.find(key);
    if (!parameter) return Result<ValueMap>::bad(no_such_parameter(type, key));
    auto value = read(*parameter, std::string_view(word).substr(mark + 1));
    if (!value) return Result<ValueMap>::bad(parameter->key + ": " + value.error);
    if (!values.emplace(parameter->key, std::move(*value.value)).second)
      return Result<ValueMap>::bad("The parameter " + parameter->key + " is given twice; give it once.");
  }
  return Result<ValueMap>::good(std::move(values));
}

}  // namespace quadrille
