// Where the selected pieces stand, as fields of their form.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/form/form.hpp"

namespace quadrille {

/// Keys of the two fields. No parameter bears them: keys of parameters are words without a stroke.
inline constexpr std::string_view place_along_key = "place/along", place_depth_key = "place/depth";

/// Farthest from the area's left edge and from its front line that a piece is put [m]; the file takes more.
inline constexpr double farthest_place_m = 1000;

/// The group "Place" with the fields along and depth of the pieces: as PlacedPiece::x_m and y_m, in metres or feet and
/// inches. They have no default.
FieldGroup place_group(const Event& event, const PieceIds& pieces);

inline bool is_place_key(std::string_view key) { return key == place_along_key || key == place_depth_key; }

/// What was typed into the field of `key`: all of the pieces then stand there. Fails with a sentence on what is no length,
/// lies outside the range, or where one of them is locked in its place.
Result<Event> with_typed_place(const Event& event, const PieceIds& pieces, std::string_view key, std::string_view text);

}  // namespace quadrille
