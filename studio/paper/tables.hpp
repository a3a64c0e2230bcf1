// The tables of a whole event on a sheet: all balloons, all supplies. They print what EventCount holds and count
// nothing themselves.
#pragma once

#include <span>
#include <string>

#include "sdk/units.hpp"
#include "studio/model/palette.hpp"
#include "studio/paper/flow.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

struct TableInput {
  const EventCount& count;
  std::span<const Palette> palettes;
  LengthStyle lengths = LengthStyle::metres;
  double width = 70;  ///< mm, of the narrowest column they are set in
};

/// Balloons by colour, nominal size and inflated diameter, and their sum.
Block balloon_block(const std::string& heading, const TableInput& input);

/// Supplies with their quantities, ordered by name; no rows where there are none.
Block supply_block(const std::string& heading, const TableInput& input);

}  // namespace quadrille
