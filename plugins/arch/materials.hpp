// What an arch takes: supplies to bring, units of work, and how it must be secured.
#pragma once

#include "plugins/arch/outline.hpp"
#include "plugins/arch/request.hpp"

namespace quadrille::arch {

void add_supplies(Piece& piece, const Outline& outline, const Request& request);
void add_work(Piece& piece, const Outline& outline, const Request& request);
void add_anchoring_rules(Piece& piece, const Request& request);

}  // namespace quadrille::arch
