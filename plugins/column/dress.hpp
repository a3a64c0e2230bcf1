// The balloons of a column: clusters up the pole, topper and collars.
#pragma once

#include "plugins/column/request.hpp"
#include "plugins/column/stack.hpp"

namespace quadrille::column {

/// Fills clusters and balloons of `piece`; throws Infeasible where a topper or collar finds no seat.
void add_balloons(Piece& piece, const Request& request, const Stack& stack);

/// Where the pole ends [m]: inside the top cluster, or inside the seat of the topper.
double pole_length_m(const Request& request, const Stack& stack);

}  // namespace quadrille::column
