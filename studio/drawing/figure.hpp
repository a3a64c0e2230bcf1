// The standing figure that gives a drawing its scale.
#pragma once

#include "studio/paint/display_list.hpp"

namespace quadrille {

/// Outline of a standing person `height` high, feet on (x, floor), in the page's frame (y down).
PathSteps figure_path(double x, double floor, double height);

}  // namespace quadrille
