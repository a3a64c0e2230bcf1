// The gauge: every diameter that balloons are blown to, in its true size, to set and check the sizer by.
#pragma once

#include <vector>

#include "studio/paper/area_layout.hpp"
#include "studio/takeoff/sizer.hpp"

namespace quadrille {

/// Pages with the diameters of `sizes`, each once, those within 2 mm of each other by one curve in their middle (common
/// practice, no source: no hand blows more evenly): as circles where the paper is large enough, else as quarters of a
/// circle, else as a piece of one with the measure around; and a line of 100 mm to see whether the print is in true size.
std::vector<Page> gauge_pages(const std::vector<SizerLine>& sizes, const Setting& setting);

}  // namespace quadrille
