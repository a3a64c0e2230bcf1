// The build sheet: what one makes each piece from.
#pragma once

#include <vector>

#include "studio/paper/sheet.hpp"

namespace quadrille {

/// For each kind of piece (those made alike share a sheet that names them all): the frame with its sections, joints, feet
/// and lines; the clusters numbered on the piece; the cluster chart, or a garland stretch by stretch; running marks, sizes
/// and spares, how to mend. Behind them the gauge of all sizes in true size. A page says so where there is nothing to
/// build; pieces that cannot be built are named on the last page with the reason. Empty where `options.area` names no area
/// of the event.
std::vector<Page> build_sheet(const SheetInput& input, const SheetOptions& options);

}  // namespace quadrille
