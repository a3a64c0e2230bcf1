// The order: spares and packs for the lines of a balloon list.
#pragma once

#include <span>
#include <vector>

#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// Fills in spares, packs and order of `lines`, whose `used` is known and which are sorted as EventCount::balloons.
/// Each group of lines of one colour and nominal size buys its packs together, at the least cost.
void fill_in_order(std::vector<BalloonLine>& lines, std::span<const Palette> palettes, const SpareRule& rule);

}  // namespace quadrille
