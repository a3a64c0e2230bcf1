// Which colours of the palettes look most like one that was seen.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

struct NearColour {
  ColourReference reference;
  std::string name, palette_name;
  double difference = 0;  ///< CIEDE2000, see studio/colour/difference.hpp
};

/// The `most` colours that look most like the sRGB colour, the most alike first; of equals the one that stands first in
/// the palettes. Of the event's own palettes where it names any that are there, else of all.
std::vector<NearColour> nearest_colours(const Event& event, std::span<const Palette> palettes, std::uint8_t red,
                                        std::uint8_t green, std::uint8_t blue, std::size_t most);

}  // namespace quadrille
