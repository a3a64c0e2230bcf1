// Packs: which packs to buy so that there are enough balloons at the least cost.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "studio/model/palette.hpp"

namespace quadrille {

/// Packs of one size to buy.
struct BoughtPacks {
  std::int64_t pack_size = 0;    ///< balloons in one
  std::int64_t packs = 0;        ///< at least 1
  std::int64_t price_minor = 0;  ///< of one pack, in the palette's currency
  bool operator==(const BoughtPacks&) const = default;
};

/// The cheapest way to buy at least `needed` balloons out of `offers`, which are packs of the same colour and nominal
/// size; of equal cost the one with the fewest packs. Largest packs first; empty where nothing is needed or nothing
/// usable is offered (a pack holds 1 to 1e9 balloons and costs 0 to 1e12 minor units; others are passed over).
/// Exact where one size is offered or the last pack_size² balloons can be tried (`needed` or, for more, the square of
/// the largest pack up to 4 million); beyond, the one size that is cheapest alone is taken.
std::vector<BoughtPacks> cheapest_packs(std::int64_t needed, std::span<const Pack> offers);

}  // namespace quadrille
