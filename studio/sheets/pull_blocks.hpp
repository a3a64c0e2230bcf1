// The parts of the pull list, each as rows of `width` [mm] of a column.
#pragma once

#include <vector>

#include "studio/paper/area_layout.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// What it all weighs, how often one walks to the vehicle, what is not known.
std::vector<Block> load_blocks(const Setting& setting, double width);

/// What to fill and to charge at home.
std::vector<Block> home_blocks(const Setting& setting, double width);

/// Balloons in bags by colour and size, with spares.
std::vector<Block> balloon_bag_blocks(const Setting& setting, double width);

/// Kits and supplies, a block for each place where they are kept.
std::vector<Block> place_blocks(const Setting& setting, double width);

/// Tools, a block of their own.
std::vector<Block> tool_blocks(const Setting& setting, double width);

}  // namespace quadrille
