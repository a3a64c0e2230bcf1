// The lists of an event as tables, for people and for spreadsheets.
#pragma once

#include <iosfwd>
#include <vector>

#include "studio/command/list_table.hpp"
#include "studio/command/reckon.hpp"

namespace quadrille {

/// Balloons, the order of balloons, supplies with their order, pieces.
std::vector<ListTable> tables_of(const EventOrder& order);

/// The same for a terminal of 100 columns, with air and power.
void print_text(const EventOrder& order, const PreparedEvent& prepared, std::ostream& out);

}  // namespace quadrille
