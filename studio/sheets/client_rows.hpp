// Rows that only the client's sheet has.
#pragma once

#include <string>

#include "studio/model/palette.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// An empty block under a heading, which says that it goes on where it does.
Block titled_block(const std::string& heading, double width);

/// Text of up to 16 lines, hanging beside a dot.
Row bullet_row(const std::string& text, double width);

/// A swatch of the colour (null = none chosen), its name, and a figure at the right.
Row colour_row(const Colour* colour, const std::string& name, const std::string& figure, double width);

}  // namespace quadrille
