// Do pieces fit the wall they stand before?
#pragma once

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"

namespace quadrille {

/// What stands out less than this [m] is not told: walls are not measured better (common practice, no source).
inline constexpr double off_wall_slack_m = 0.05;

/// A warning "beyond-wall" for every piece of an area with a wall that is wider or higher than that wall, or stands off
/// its end to the left or the right: by how much, and where it would fit. Balloons and frame count, base plates do not.
/// Pieces that are hidden, refused or of a missing type are passed over.
Findings check_off_wall(const Event& event, const BuiltEvent& built);

}  // namespace quadrille
