// Splits at the first '=' and reads the value as the kind that the table gives.
#include "studio/command/try_values.hpp"

#include <string_view>
#include <utility>

#include "sdk/quoted.hpp"
#include "sdk/value_text.hpp"
#include "studio/host/resolve.hpp"

namespace quadrille {
Result<ValueMap> values_of(const PieceType& type, std::span<const std::string> words) {
  ValueMap values;
  for (const std::string& word : words) {
    const std::size_t mark = word.find('=');
    if (mark == std::string::npos || mark == 0)
      return Result<ValueMap>::bad(quoted(word) + " is not of the form key=value, as in rod-length=6m.");
    const std::string_view key = std::string_view(word).substr(0, mark);
    const Parameter* parameter = type.find(key);
    if (!parameter) return Result<ValueMap>::bad(no_such_parameter(type, key));
    auto value = parse_value(parameter->kind, std::string_view(word).substr(mark + 1));
    if (!value) return Result<ValueMap>::bad(parameter->key + ": " + value.error);
    if (!values.emplace(parameter->key, std::move(*value.value)).second)
      return Result<ValueMap>::bad("The parameter " + parameter->key + " is given twice; give it once.");
  }
  return Result<ValueMap>::good(std::move(values));
}

}  // namespace quadrille
