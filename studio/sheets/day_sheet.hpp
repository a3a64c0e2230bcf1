// The day sheet: who does what when, as a chart and a list, with contacts and access.
#pragma once

#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// Of the whole event, whichever area is asked for: one crew does it. Upright pages. Reads `plan` and, for contacts,
/// `house`; it says on the page what is missing. Empty where `options.area` names no area.
std::vector<Page> day_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
