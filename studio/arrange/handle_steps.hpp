// Handles beyond dragging: small steps by keys, where a handle goes with its value, and points put into a path.
#pragma once

#include <optional>
#include <string_view>

#include "studio/arrange/handles.hpp"

namespace quadrille {

/// What the handle drags along, `steps` of the keyboard's steps on: those of its value for a measure, 1 cm or 1 in for a
/// point. `right` and `up` count steps to the right and upward; what does not lie along the handle's axis does not count.
HandleDrag stepped(const DragHandle& handle, const Parameter& parameter, int right, int up, Units units);

/// Where the handle is when its parameter stands at `value`, in the area's frame [m]: the place at which it was, and the
/// way along its axis that would give the value. What grows to both sides is taken to grow to this one as much as it does.
Vec3 place_with(const DragHandle& handle, const Parameter& parameter, const Value& value);

/// True where the elevation shows the handle's axis, so that it can be dragged there.
bool shows_in_elevation(const DragHandle& handle);

/// The point of a path after which its longest stretch lies; nothing where it has fewer than two.
std::optional<std::size_t> before_longest_stretch(const Value& path);

}  // namespace quadrille
