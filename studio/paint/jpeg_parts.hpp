// What a JPEG file is made of, as far as it is kept and embedded without being read.
#pragma once

#include <string>
#include <string_view>

namespace quadrille {

/// Colour channels of a JPEG (1 grey, 3 colour, 4 for print); 0 where it says nothing of that before its pixels.
int jpeg_channels(std::string_view jpeg);

/// The same picture without what only describes it: where, when and with what it was taken, comments, colour profiles,
/// previews, and whatever stands behind its end. What decoding needs stays, also of one that is cut off among its pixels.
/// Unchanged where it is not laid out as a JPEG is, or cut off before them.
/// Source of the layout: ITU-T T.81, annex B.
std::string without_description(std::string_view jpeg);

}  // namespace quadrille
