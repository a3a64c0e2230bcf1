// Writes what a piece's parameters stand at, and its colours: the counterpart of value_reader.
#pragma once

#include <vector>

#include "studio/files/element_writer.hpp"

namespace quadrille {

/// A <set>, <path> or <mix> in the piece's element for each value, by key. `kept` is the piece's.
void write_values(ElementWriter& piece, const Kept& kept, const ValueMap& values);

/// A <colour> for each slot, A first.
void write_colours(ElementWriter& piece, const Kept& kept, const std::vector<ColourReference>& colours);

}  // namespace quadrille
