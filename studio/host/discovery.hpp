// Finds plugin files and passes them through the gate.
#pragma once

#include "studio/host/piece_type.hpp"
#include "studio/host/search_plan.hpp"

namespace quadrille {

/// Loads every "*.so" of the folders, sorted by name within each, through the gate (gate.hpp). A file that is met
/// again, under another folder or through a link, is taken once. A type whose id was found earlier is refused. A folder
/// that is not there is passed over; one that cannot be read is reported among the refused. Libraries stay loaded.
/// Never throws for what a file holds.
PieceTypes find_piece_types(const SearchPlan& plan);

}  // namespace quadrille
