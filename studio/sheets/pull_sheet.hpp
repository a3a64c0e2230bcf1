// The pull list: everything to put in the vehicle, where it is kept, what to fill at home, what comes back.
#pragma once

#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// Of the whole event, whichever area is asked for: one vehicle carries it. Upright pages. Reads `house` and `supplies`,
/// and of `power` and `plan` what there is; it says on the page what is missing. Empty where `options.area` names no area.
std::vector<Page> pull_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
