// How the pieces of an area are secured: lines and anchors from the front and from above, to one scale.
#pragma once

#include <cstddef>
#include <vector>

#include "studio/paper/flow.hpp"
#include "studio/sheets/safety_subject.hpp"

namespace quadrille {

/// A block with a picture for each run of neighbours that can be seen at 1:75 or larger side by side; a piece that is
/// wider has one of its own, however small. The elevation stands over the plan with the same left and right. Walkways,
/// structures, feet, lines and anchors are in it; lines are told by their labels, with length, angle and pull where there
/// is room for it. At most `height` high each [mm], the first one `first_height` where that is not much smaller. No block
/// where no piece can be drawn.
std::vector<Block> safety_pictures(const SafetySubject& subject, const Setting& setting, double width, double height,
                                   double first_height);

}  // namespace quadrille
