// How different two colours look.
#pragma once

#include <string_view>

#include "studio/colour/lab.hpp"

namespace quadrille {

/// CIEDE2000 with all weights 1: about 1 is just seen side by side, 5 is seen across a room. Symmetric; 0 for the same.
/// Source: ISO/CIE 11664-6; G. Sharma, W. Wu, E. N. Dalal, Color Res. Appl. 30(1):21-30, 2005.
double ciede2000(const Lab& one, const Lab& other);
double ciede2000(Srgb one, Srgb other);

/// From here up two colours are told apart across a room [CIEDE2000].
inline constexpr double apart_across_a_room = 5;

/// How far two colours are apart, for people: "the same to the eye" below 1, "hardly to be told apart" below 2.5, "nearly
/// alike" below apart_across_a_room, "related" below 15, "another colour". The bounds of 1 and 5 as above, the others by
/// eye.
std::string_view difference_in_words(double ciede2000);

}  // namespace quadrille
