// The clear opening of an arch: what one can walk or wheel through, measured on the built piece.
#pragma once

#include <optional>

#include "sdk/built.hpp"

namespace quadrille {

/// An opening as seen from the front, in the piece's frame [m].
struct Opening {
  double left_m = 0, right_m = 0;  ///< between the balloons and the frame, over the lowest `opening_floor_m`
  std::optional<double> height_m;  ///< over the middle, 0.3 m wide; nothing where nothing hangs over it
  double plates_left_m = 0, plates_right_m = 0;  ///< the same, with base plates that reach in; equal where none does
  double width_m() const { return right_m - left_m; }
  double middle_m() const { return (left_m + right_m) / 2; }
  double between_plates_m() const { return plates_right_m - plates_left_m; }
  bool operator==(const Opening&) const = default;
};

/// What stands within this height above the floor bounds the opening's width: about one cluster of large balloons
/// (common practice, no source). An arch that bulges or leans in higher up is narrower there than this width says.
inline constexpr double opening_floor_m = 0.3;
/// What hangs within this distance of the opening's middle bounds its height: a head and its hat to each side (common
/// practice, no source).
inline constexpr double opening_middle_m = 0.15;

/// The widest opening between the outermost two of a piece's feet (supports near the floor, hooks not among them).
/// Balloons count as discs in the elevation, whatever their depth. Nothing where there are not two feet, or where no
/// gap of 5 cm is left between them.
std::optional<Opening> opening_of(const Piece& piece);

}  // namespace quadrille
