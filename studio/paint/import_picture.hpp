// Any picture made ready to be kept in an event.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/model/backdrop.hpp"

namespace quadrille {

/// Longest side of a picture as it is imported [pixels]: enough for an A3 sheet at 145 dots per inch.
inline constexpr int imported_side_px = 2400;
/// Quality of a JPEG that is written, 0 to 100.
inline constexpr int imported_quality = 85;

/// True where the bytes begin as those of a picture do, of a kind that may not be readable here; a look at the first few.
bool looks_like_picture(std::string_view bytes);

/// The picture upright, no side longer than imported_side_px, without place, time and the like that its camera noted. A
/// JPEG that is so already keeps its pixels as they are; others become a JPEG, or a PNG where something is transparent
/// or the picture was a PNG that stays small. Errors as of decode_picture, and where there is too little memory.
Result<StoredPicture> import_picture(std::string_view bytes);

}  // namespace quadrille
