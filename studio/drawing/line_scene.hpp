// The securing lines of an area in its elevation.
#pragma once

#include "studio/drawing/elevation.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Adds the lines of all pieces that are drawn as built to a scene that has its pieces, figure and site, and widens its
/// extent by them. A line whose anchor lies more than 3 m beyond that is cut off there. Lines that cannot run are left
/// out: the standing check says why.
void add_lines(const Area& area, const BuiltEvent& built, Scene& scene);

}  // namespace quadrille
