// The safety sheet: what each area's pieces bear, when they come down, how they are secured, what to see to.
#pragma once

#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// One run of pages for each area, those outdoors first, each with its own signature; indoors short, without pictures
/// where there are no lines. Lying only where a piece is too wide for an upright page at 1:100. Reads `standing` and
/// `checklist`, and of `power` what there is; it says on the page what is missing. Empty where `options.area` names no
/// area.
std::vector<Page> safety_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
