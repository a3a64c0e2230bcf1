// The order of balloons: spares, what the stockroom gives, and packs, bag by bag.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/spares.hpp"

namespace quadrille {

/// The rule for balloons of one size and finish: the house's failure rate (drawn to 0 to 0.9) and its chance of running
/// short (drawn to 1e-6 to 0.5).
SpareRule spare_rule(const House& house, double nominal_in, Finish finish);

/// Spares of `used` balloons of one colour and size: spares_to_order, and at least the house's figure "least-spares" (one)
/// where they can fail at all. The chance is for each colour and size, not for the event: a bag that runs short is mended
/// from a neighbour's, and a chance for the whole event would order more of everything for each colour that is added.
/// The least is for what nothing can stand in for: one 3 ft topper that fails once in 20 is within a chance of 5 % without
/// any spare. EventCount::short_chance says what it comes to for the event.
std::int64_t spares_of_bag(std::int64_t used, const SpareRule& rule, const House& house);

/// Fills in spares, stock, packs and order of `lines`, whose `used` is known and which are sorted as
/// EventCount::balloons, and returns their bags. The stockroom is one pool: entries of one colour and size add up, and
/// what it gives to one line it does not give to another. Packs are the stockroom's own for that colour and size where it
/// says any, else the palette's, bought at the least cost.
std::vector<BalloonBag> fill_in_order(std::vector<BalloonLine>& lines, std::span<const Palette> palettes,
                                      const House& house);

}  // namespace quadrille
