// The frame of an arch for drawing and for the frame analysis: nodes, members with joints, feet, and where to tie lines.
#pragma once

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// Fills frame, supports, tie points and spine of `piece`. Rod sections meet at nodes, joined by sleeves.
void add_frame(Piece& piece, const Outline& outline, const Request& request);

}  // namespace quadrille::arch
