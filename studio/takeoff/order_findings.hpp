// What stands in the way of an order: sizes that are not sold, prices that are not known, currencies that differ.
#pragma once

#include <span>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {

/// - "size-not-sold" (problem), for each bag: balloons of a size that the colour is not sold in, where the stockroom does
///   not hold enough of them; the remedy lists the sizes of the colour and the most alike colours of the size. Its place
///   and slot are those of the piece that has them; where several do, the text lists them. A slot without a colour, and a
///   colour or palette that is not there, are left to check_colours.
/// - "other-currency" (warning): prices of a palette or the house are not in the event's currency; nothing is converted.
/// - "no-price" (note): supplies that have to be bought and have no entry in the house.
Findings order_findings(const Event& event, const EventCount& count, const SuppliesOrder& supplies,
                        std::span<const Palette> palettes, const House& house);

}  // namespace quadrille
