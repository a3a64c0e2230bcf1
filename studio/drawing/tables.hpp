// The tables of a sheet, as blocks of rows: the colours of each piece, all balloons, all supplies. They print what
// EventCount holds and count nothing themselves.
#pragma once

#include <span>
#include <string>

#include "sdk/units.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/flow.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

struct TableInput {
  const EventCount& count;
  std::span<const Palette> palettes;
  LengthStyle lengths = LengthStyle::metres;
  double width = 70;  ///< mm, of a column
};

/// Name, measures and counts of one piece, and a row for each of its slots: swatch, letter, colour, balloons. `number`
/// is what the drawing calls it; empty where it is the only piece.
Block key_block(const PlacedPiece& placed, const ScenePiece& shown, const std::string& number, const TableInput& input);

/// Balloons by colour, nominal size and inflated diameter, and their sum.
Block balloon_block(const std::string& heading, const TableInput& input);

/// Supplies with their quantities, ordered by name; no rows where there are none.
Block supply_block(const std::string& heading, const TableInput& input);

/// What the site has too far to the side to be drawn, and how far; no rows where there is nothing.
Block far_off_block(const Scene& scene, const TableInput& input);

}  // namespace quadrille
