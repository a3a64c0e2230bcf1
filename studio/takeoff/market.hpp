// How balloons are sold: in which packs, sizes and colours, by the stockroom or the palette.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

/// Packs of one colour and nominal size, and the currency of their prices.
struct Market {
  std::vector<Pack> packs;  ///< empty where it is not sold
  std::string currency;
};

/// The stockroom's own packs where it has any for that colour and size, else the palette's.
Market market_of(const ColourReference& colour, double nominal_in, std::span<const Palette> palettes,
                 const House& house);

/// The nominal sizes [in] that a colour is sold in, rising.
std::vector<double> sizes_sold(const ColourReference& colour, std::span<const Palette> palettes, const House& house);

/// The names of the colours of the same palette that are sold in a nominal size, the most alike first (CIEDE2000); empty
/// where the palette does not have the colour.
std::vector<std::string> alike_sold(const ColourReference& colour, double nominal_in, std::span<const Palette> palettes,
                                    const House& house);

}  // namespace quadrille
