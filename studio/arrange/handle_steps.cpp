#include "studio/arrange/handle_steps.hpp"

#include <cmath>

#include "sdk/units.hpp"

namespace quadrille {
namespace {

constexpr int depth_axis = 1, any_way = -1;

Vec3 point_of(const Value& path, std::size_t index) {
  return {path.list[3 * index], path.list[3 * index + 1], path.list[3 * index + 2]};
}

}  // namespace

HandleDrag stepped(const DragHandle& handle, const Parameter& parameter, int right, int up, Units units) {
  Vec3 to = handle.at;
  if (handle.axis == any_way) {
    const double step = units == Units::feet ? metres_per_inch : 0.01;
    to += Vec3(right * step, 0, up * step);
  } else if (handle.axis != depth_axis && parameter.handle_gain != 0) {
    const int steps = handle.axis == 0 ? right : up;
    to[handle.axis] += steps * drag_step(parameter, units) / std::abs(parameter.handle_gain);
  }
  return dragged_to(handle, parameter, to, units);
}

Vec3 place_with(const DragHandle& handle, const Parameter& parameter, const Value& value) {
  Vec3 at = handle.at;
  if (handle.axis == any_way) {
    const std::size_t end = 3 * handle.point + 3;
    if (value.list.size() >= end && handle.from.list.size() >= end)
      at += point_of(value, handle.point) - point_of(handle.from, handle.point);
  } else if (parameter.handle_gain != 0) {
    at[handle.axis] += handle.sign * (value.number - handle.from.number) / parameter.handle_gain;
  }
  return at;
}

bool shows_in_elevation(const DragHandle& handle) { return handle.axis != depth_axis; }

std::optional<std::size_t> before_longest_stretch(const Value& path) {
  std::optional<std::size_t> before;
  double longest = -1;
  for (std::size_t i = 0; 3 * i + 5 < path.list.size(); ++i) {
    const double length = (point_of(path, i + 1) - point_of(path, i)).norm();
    if (length > longest) longest = length, before = i;
  }
  return before;
}

}  // namespace quadrille
