// sRGB and CIELAB, and back.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace quadrille {

/// A colour of sRGB in eight bits a channel (IEC 61966-2-1).
struct Srgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Srgb&) const = default;
};

/// Red, green and blue of sRGB as parts of light, 0 to 1.
struct LinearRgb {
  double red = 0, green = 0, blue = 0;
};

/// CIELAB under D65: lightness 0 to 100, a from green to red, b from blue to yellow.
struct Lab {
  double lightness = 0, a = 0, b = 0;
};

/// One channel, 0 to 255, as a part of light. Source: IEC 61966-2-1:1999 (from memory; universal).
double linear_of(double channel);
LinearRgb linear_of(Srgb colour);

/// The four-digit matrix of IEC 61966-2-1, and its own white (0.9505, 1, 1.089), so that greys have a = b = 0.
Lab lab_of(LinearRgb light);
Lab lab_of(Srgb colour);

/// The nearest sRGB colour; what lies outside sRGB is cut off channel by channel.
Srgb srgb_of(const Lab& colour);
/// False where srgb_of would have to cut off more than a thousandth of a channel's range.
bool is_in_srgb(const Lab& colour);

/// "#rrggbb", "rrggbb" or "#rgb", in either case; nothing for other text.
std::optional<Srgb> parse_srgb(std::string_view text);

}  // namespace quadrille
