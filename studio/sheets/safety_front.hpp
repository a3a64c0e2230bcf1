// Securing lines as one sees them from the front.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "sdk/vec.hpp"
#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

struct FrontLine {
  Point2 from, to;  ///< on the page [mm]
  Vec3 run;         ///< from the tie point to the anchor [m]
  AnchorKind anchor = AnchorKind::stake;
  std::string label;
};

/// Whether a line leaves the plane of the elevation, by the same measure as that.
inline bool is_out_of_plane(const Vec3& run) { return std::abs(run.y()) > 0.05; }

/// Lines that fall on each other as one, whose label says which comes forward and which goes back: "L1 front, L2 back".
/// From the left by their anchors.
std::vector<FrontLine> seen_from_front(const std::vector<FrontLine>& lines);

}  // namespace quadrille
