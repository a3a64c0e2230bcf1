// The frame of an arch: what it is cut into, and for drawing and for the frame analysis nodes, members with joints, feet,
// and where to tie lines.
#pragma once

#include <vector>

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// The stretches of rod between the fittings at the corners, in order; legs are cut from their feet up.
std::vector<RodRun> rod_runs(const Outline& outline);

/// Fills frame, supports, tie points and spine of `piece`. Rod sections meet at nodes, joined by sleeves; the fitting at
/// a corner is joined like a sleeve at either end.
void add_frame(Piece& piece, const Outline& outline, const Request& request);

}  // namespace quadrille::arch
