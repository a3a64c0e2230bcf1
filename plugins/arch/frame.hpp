// The frame of an arch for drawing and for the frame analysis: nodes, members with joints, feet, and where to tie
// lines.
#pragma once

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// Fills frame, supports, tie points and spine of `piece`. Rod sections meet at nodes, joined by sleeves.
void add_frame(Piece& piece, const Outline& outline, const Request& request);

/// Lengths of the rod sections, in order from the left foot.
std::vector<double> section_lengths(double length_m, double piece_m);

}  // namespace quadrille::arch
