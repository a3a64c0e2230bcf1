// Marks for what a securing line is anchored to: told apart by shape.
#pragma once

#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// A cross for a stake, a filled square for a dead weight, a diamond for a structure; 1.3 mm to each side of `at`.
void add_anchor_mark(Marks& marks, AnchorKind kind, Point2 at);

}  // namespace quadrille
