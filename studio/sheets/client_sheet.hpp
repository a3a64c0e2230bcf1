// The client sheet: what the client gets, what it costs, and what is asked of the client.
#pragma once

#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// For each area its elevation to scale with numbered pieces, dimensions, a standing figure, colours and counts. Then what
/// the whole event comes to: pieces and balloons, the issued quote with its deposit and how long it holds, what the client
/// is to provide, cautions, and room to agree; with `options.area` only what is of that area, so neither sums nor prices.
/// A price comes from Event::issued alone. Costs, margins, wages, mark-ups and how long the work takes stand nowhere.
/// Empty where `options.area` names no area of the event.
std::vector<Page> client_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
