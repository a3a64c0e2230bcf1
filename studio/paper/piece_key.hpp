// The key of a drawing: what each piece is, and the colours of its slots. Pieces that are alike share one entry.
#pragma once

#include <string>
#include <vector>

#include "studio/drawing/elevation.hpp"
#include "studio/model/event.hpp"
#include "studio/paper/flow.hpp"
#include "studio/paper/tables.hpp"

namespace quadrille {

/// "2, 4–6": numbers from 1 in rising order, three or more in a row as a range.
std::string print_numbers(const std::vector<std::size_t>& numbers);

/// A block for every kind of piece of the area, in the order of the first of each: the numbers and names of the pieces,
/// their measures and counts, and a row for each slot in use: swatch, letter, colour, balloons ("6 × 22" where six
/// pieces have 22 each). Pieces are alike that would print the same but for number and name, and were built; as many
/// share a block as have room for their numbers in a third of its width.
std::vector<Block> key_blocks(const Area& area, const Scene& scene, const TableInput& input);

/// The marks of what the securing lines end at; no rows where none is drawn.
Block anchor_block(const Scene& scene, double width);

/// What the site has too far to the side to be drawn, and how far; no rows where there is nothing.
Block far_off_block(const Scene& scene, const TableInput& input);

}  // namespace quadrille
