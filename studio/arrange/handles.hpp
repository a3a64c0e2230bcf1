// The handles by which a piece's measures are dragged on the elevation.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "sdk/vec.hpp"
#include "studio/arrange/piece_box.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

struct DragHandle {
  std::string piece, key;  ///< id, and the key of the parameter
  std::string label;       ///< "Span", "Path, point 2"
  Vec3 at = Vec3::Zero();  ///< where it is, in the area's frame: x, depth, height [m]
  int axis = 0;            ///< along which it is dragged: 0 x, 1 depth, 2 height; -1: x and height (a point)
  std::size_t point = 0;   ///< of a path, from 0
  double sign = 1;         ///< -1 where dragging against the axis makes the value grow
  Value from;              ///< the value that it has where it is: of a default "as it suits", the one that suits
};

/// The handles that the piece's parameters declare and that matter as its values stand. At one side of the box several
/// stand side by side. None for a locked or hidden piece.
std::vector<DragHandle> handles_of(const PlacedPiece& piece, const ParameterTable& table, const BuiltEvent& built);

/// The step to which a dragged value is rounded, in the unit of its kind: whole ones, half inches of lengths in feet, else
/// the parameter's decimals.
double drag_step(const Parameter& parameter, Units units);

struct HandleDrag {
  Value value;            ///< within the parameter's hard range
  std::string text;       ///< the live dimension: "Span 2.40 m"
  bool at_limit = false;  ///< it would go farther, but the parameter ends there
};

/// The value when `handle` is dragged to `to`, of which only what its axis says counts; in steps of drag_step.
HandleDrag dragged_to(const DragHandle& handle, const Parameter& parameter, const Vec3& to, Units units);

/// A path with a new point halfway to the one after `point`, or, at the last one, as far beyond it as the one before is.
Value with_point_after(Value path, std::size_t point);
/// A path without this point; a path keeps two.
Value without_point(Value path, std::size_t point);

}  // namespace quadrille
