// What a push at the crown does to an arch, of a rigid frame or of a flexible rod: the fact, and the warning with what
// would hold.
#pragma once

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

/// Fact sway_n_per_m, a level push square to the arch ÷ how far the crown gives way: of a rigid frame without its weight, of
/// a flexible rod dressed as it stands. For a rigid frame topple_weight_n_per_m too. After weight_n_per_m; nothing for feet
/// that turn, for a rod that flops over by itself and for one too flat to be checked.
void add_sway_facts(Piece& piece, const Outline& outline, const Request& request);

/// Warns where the named push would sway the crown too far, or a rigid frame leans over by itself, with the rod that would
/// do. A flexible rod that flops over by itself is left to warn_of_toppling.
void warn_of_sway(Piece& piece, const Outline& outline, const Request& request);

}  // namespace quadrille::arch
