// What an arch refuses, what it warns of, and the facts it computes besides its bending.
#pragma once

#include <optional>

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"
#include "sdk/piece.hpp"

namespace quadrille::arch {

/// Facts, and warnings about frame and dressing.
void add_facts(Piece& piece, const Outline& outline, const Request& request, const Elastica* elastica);
void add_warnings(Piece& piece, const Outline& outline, const Request& request);

/// Notes values that were changed and have no effect with the frame, the pattern or the base that was chosen.
void note_ignored(Piece& piece, const Values& values, const Outline& outline, const Request& request);

/// Throws Infeasible, with the piece so far, where what was laid cannot be built.
void refuse_impossible(const Piece& piece, const Outline& outline, const Request& request, int most_clusters);

}  // namespace quadrille::arch
