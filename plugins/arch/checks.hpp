// What an arch refuses, what it warns of, and the facts it computes besides its geometry.
#pragma once

#include <optional>

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// The bent rod; throws Infeasible where the span cannot be reached with the rod.
std::optional<Elastica> bend_rod(const Request& request);

/// Facts, and warnings about frame and dressing.
void add_facts(Piece& piece, const Outline& outline, const Request& request, const Elastica* elastica);
void add_warnings(Piece& piece, const Request& request);

/// Throws Infeasible, with the piece so far, where what was laid cannot be built.
void refuse_impossible(const Piece& piece, const Request& request, int most_clusters);

}  // namespace quadrille::arch
