// How a column must be secured, and what to warn of.
#pragma once

#include "plugins/column/request.hpp"

namespace quadrille::column {

void add_anchoring_rules(Piece& piece, const Request& request);
void warn_of_standing(Piece& piece, const Request& request);

}  // namespace quadrille::column
