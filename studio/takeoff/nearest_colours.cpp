#include "studio/takeoff/nearest_colours.hpp"

#include <algorithm>

#include "studio/colour/difference.hpp"

namespace quadrille {

std::vector<NearColour> nearest_colours(const Event& event, std::span<const Palette> palettes, std::uint8_t red,
                                        std::uint8_t green, std::uint8_t blue, std::size_t most) {
  const auto is_own = [&](const Palette& palette) {
    return std::ranges::find(event.palettes, palette.key) != event.palettes.end();
  };
  const bool has_own = std::ranges::any_of(palettes, is_own);
  const Lab wanted = lab_of(Srgb{red, green, blue});
  std::vector<NearColour> near;
  for (const Palette& palette : palettes) {
    if (has_own && !is_own(palette)) continue;
    for (const Colour& colour : palette.colours)
      near.push_back({{palette.key, colour.key},
                      colour.name,
                      palette.name,
                      ciede2000(wanted, lab_of(Srgb{colour.red, colour.green, colour.blue}))});
  }
  std::ranges::stable_sort(near, {}, &NearColour::difference);
  near.resize(std::min(near.size(), most));
  return near;
}

}  // namespace quadrille
