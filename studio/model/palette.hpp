// Palettes: the colours one can buy, with finish, packs and prices.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

enum class Finish { matte, pearl, metallic, clear };

/// No pack costs more, so that sums of prices stay whole.
inline constexpr std::int64_t highest_pack_price = 1'000'000'000'000;

/// How a colour is sold in one nominal size.
struct Pack {
  double nominal_in = 0;
  std::int64_t count = 0;        ///< balloons in it, at least 1
  std::int64_t price_minor = 0;  ///< in the palette's currency, 0 to highest_pack_price
  bool operator==(const Pack&) const = default;
};

struct Colour {
  std::string key, name;
  std::uint8_t red = 0, green = 0, blue = 0;  ///< sRGB
  Finish finish = Finish::matte;
  std::vector<Pack> packs;
  bool operator==(const Colour&) const = default;
};

struct Palette {
  std::string key, name;
  std::string currency = "USD";  ///< ISO 4217
  std::vector<Colour> colours;
  bool operator==(const Palette&) const = default;
};

/// The colour, or null where no palette has it. The pointer lives as long as the palettes.
inline const Colour* find_colour(std::span<const Palette> palettes, const ColourReference& reference) {
  for (const Palette& palette : palettes) {
    if (palette.key != reference.palette) continue;
    for (const Colour& colour : palette.colours)
      if (colour.key == reference.colour) return &colour;
  }
  return nullptr;
}

}  // namespace quadrille
