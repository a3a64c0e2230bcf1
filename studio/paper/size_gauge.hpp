// The gauge: every diameter that balloons are blown to, in its true size, to set and check the sizer by.
#pragma once

#include <string>
#include <vector>

#include "studio/paper/area_layout.hpp"
#include "studio/takeoff/sizer.hpp"

namespace quadrille {

/// A diameter that a piece's balloons are blown to.
struct GaugeUse {
  SizerLine size;
  std::string piece;  ///< its name, or that of those that are alike; empty where none is told
};

/// Pages with the diameters of `uses`, each once, those within 3 mm of each other by one curve in their middle (common
/// practice, no source: on a sizer nobody tells them apart), with the pieces that use it: as circles where one under the
/// other they fit on a page, else as quarters of a circle about one corner, else as a part of one with the measure around;
/// and a line of 100 mm to see whether the print is in true size. No label breaks a curve or lies on one.
std::vector<Page> gauge_pages(const std::vector<GaugeUse>& uses, const Setting& setting);

}  // namespace quadrille
