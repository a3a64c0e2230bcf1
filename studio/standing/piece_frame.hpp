// From a built piece and its lines to the frame that is analysed.
#pragma once

#include <vector>

#include "sdk/built.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/assumptions.hpp"
#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// A line that is rigged, with its cord.
struct RiggedLine {
  LineRun run;
  Cord cord;
};

/// Beams for the members (sleeve joints pass all moments, hinges none; what is bent from straight is a springy rod and
/// twists as pultruded glass does), feet for plates and sockets, hooks and ledges that hold against moving and let turn,
/// and a cable for each line, in the order of `lines`. A rod that leaves a clamped foot within 30° of upright is clamped
/// upright. `piece` has passed the host's gate.
FrameModel frame_of_piece(const Piece& piece, const std::vector<RiggedLine>& lines, const Assumptions& assumptions);

}  // namespace quadrille
