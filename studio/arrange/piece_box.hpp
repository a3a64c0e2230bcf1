// How much room a placed piece takes in its area.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Outer measures [m] in the area's frame: x along the front line, depth away from the audience, height above the floor.
struct PieceBox {
  double left = 0, right = 0, front = 0, back = 0, floor = 0, top = 0;
  double width() const { return right - left; }
  double depth() const { return back - front; }
  double middle_x() const { return (left + right) / 2; }
  double middle_y() const { return (front + back) / 2; }
  bool operator==(const PieceBox&) const = default;
};

/// What was built of it, or null where its type is missing or it was refused: then its balloons and its frame are not
/// where they would stand.
const BuiltPiece* standing_build(const PlacedPiece& piece, const BuiltEvent& built);

/// The box of what was built; else of what was built last, about its place; else one metre each way.
PieceBox box_of(const PlacedPiece& piece, const BuiltEvent& built);

/// The smallest box around several; nothing without any.
std::optional<PieceBox> box_around(std::span<const PieceBox> boxes);

/// A place along the floor to a tenth of a nanometre, so that sums leave no tails of digits in the file.
double tidy(double metres);

}  // namespace quadrille
