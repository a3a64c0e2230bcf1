// Quantities as people type them into a field: one, or a sum of several.
#pragma once

#include <string_view>

#include "sdk/quantity.hpp"
#include "sdk/result.hpp"

namespace quadrille {

/// The value of `text` in the measure's base unit. Takes what parse_quantity takes, and
/// - sums and differences of quantities with units: "2.4m + 30cm", "8'6\" - 3in";
/// - a quantity times or divided by a plain number: "3 * 9in", "20ft/3" (also × and ÷, and x between blanks);
/// - brackets: "(20ft - 2ft) / 3", and a '=' before all;
/// - the same of plain numbers alone, the result of which is in `bare_unit`: "8" and "16/2" in a field of feet are 8 ft.
///   An empty `bare_unit` is the measure's own first unit.
/// × and ÷ bind closer than + and −. A '-' in the midst of a length stays what it is there: 8'-6" is 8 ft 6 in and 6-1/2
/// is six and a half; with a blank before it, it takes away. Fails with a sentence: a plain number added to a quantity, two
/// quantities multiplied, a division by a quantity or by 0, an operator or bracket without its match, or what
/// parse_quantity refuses.
Result<double> read_sum(std::string_view text, const Measure& measure, std::string_view bare_unit);

}  // namespace quadrille
