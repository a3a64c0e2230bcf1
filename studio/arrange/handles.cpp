#include "studio/arrange/handles.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "sdk/number.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/lengths.hpp"
#include "studio/model/parameter_check.hpp"

namespace quadrille {
namespace {

constexpr int any_way = -1;

/// The value that a default of 0, "as it suits", came to: a fact of the parameter's name. Its own value otherwise.
Value standing_value(const Parameter& parameter, Value value, const BuiltPiece* made) {
  if (made == nullptr || value.number != 0) return value;
  std::string name = parameter.key + "_m";
  std::ranges::replace(name, '-', '_');
  const auto fact = std::ranges::find(made->piece.facts, name, &Fact::key);
  if (fact != made->piece.facts.end() && fact->number > 0) value.number = fact->number;
  return value;
}

void add_points(const PlacedPiece& piece, const Parameter& parameter, std::vector<DragHandle>& handles) {
  const Value& path = value_of(piece.values, parameter);
  for (std::size_t i = 0; 3 * i + 2 < path.list.size(); ++i) {
    DragHandle handle{piece.id, parameter.key, {}, {}, any_way, i, 1, path};
    handle.label = parameter.label + ", point " + std::to_string(i + 1);
    handle.at = Vec3(piece.x_m + path.list[3 * i], piece.y_m + path.list[3 * i + 1], path.list[3 * i + 2]);
    handles.push_back(std::move(handle));
  }
}

/// Share along its side at which the one of `index` of `count` handles stands.
double share_of(std::size_t index, std::size_t count) {
  return static_cast<double>(index + 1) / static_cast<double>(count + 1);
}

Vec3 place_of(const PieceBox& box, std::uint32_t end, double share) {
  const double y = box.middle_y();
  if (end == QUADRILLE_HANDLE_TOP) return {box.left + share * box.width(), y, box.top};
  const double height = box.floor + share * (box.top - box.floor);
  return {end == QUADRILLE_HANDLE_LEFT ? box.left : box.right, y, height};
}

double rounded(double number, double step) {
  // Steps of a tenth and its powers are divided by, so that 2.4 is the double that reads as 2.4.
  return step < 1 && step != metres_per_inch / 2 ? std::nearbyint(number / step) / std::nearbyint(1 / step)
                                                 : std::nearbyint(number / step) * step;
}

std::string value_words(const Parameter& parameter, double number, Units units) {
  return parameter.kind == Kind::length ? print_length(number, lengths_in(units)) : in_words(parameter.kind, number);
}

HandleDrag dragged_point(const DragHandle& handle, const Parameter& parameter, const Vec3& to, Units units) {
  HandleDrag drag{handle.from, {}, false};
  const std::size_t first = 3 * handle.point;
  const Vec3 way = to - handle.at;
  for (const int axis : {0, 2}) {
    double& coordinate = drag.value.list[first + static_cast<std::size_t>(axis)];
    const double wanted = rounded(coordinate + way[axis], 0.001);
    coordinate = std::clamp(wanted, parameter.hard_min, parameter.hard_max);
    drag.at_limit = drag.at_limit || coordinate != wanted;
  }
  drag.text = handle.label + ": " + print_length(drag.value.list[first], lengths_in(units)) + " along, " +
              print_length(drag.value.list[first + 2], lengths_in(units)) + " up";
  return drag;
}

}  // namespace

std::vector<DragHandle> handles_of(const PlacedPiece& piece, const ParameterTable& table, const BuiltEvent& built) {
  std::vector<DragHandle> handles;
  if (piece.hidden || piece.locked) return handles;
  std::map<std::uint32_t, std::vector<const Parameter*>> by_end;
  for (const Parameter& parameter : table) {
    if (parameter.handle_end == QUADRILLE_NO_HANDLE || !applies_now(table, piece.values, parameter)) continue;
    if (value_of(piece.values, parameter).kind != parameter.kind) continue;  // out of a damaged file
    if (parameter.kind == Kind::path)
      add_points(piece, parameter, handles);
    else if (is_number(parameter.kind) && parameter.handle_end != QUADRILLE_HANDLE_POINTS)
      by_end[parameter.handle_end].push_back(&parameter);
  }
  const PieceBox box = box_of(piece, built);
  const BuiltPiece* made = standing_build(piece, built);
  for (const auto& [end, parameters] : by_end)
    for (std::size_t i = 0; i < parameters.size(); ++i) {
      const Parameter& parameter = *parameters[i];
      DragHandle handle{piece.id, parameter.key, parameter.label, {}, static_cast<int>(parameter.handle_axis), 0, 1,
                        {}};
      handle.at = place_of(box, end, share_of(i, parameters.size()));
      handle.sign = end == QUADRILLE_HANDLE_LEFT && handle.axis == 0 ? -1 : 1;
      handle.from = standing_value(parameter, value_of(piece.values, parameter), made);
      handles.push_back(std::move(handle));
    }
  return handles;
}

double drag_step(const Parameter& parameter, Units units) {
  if (is_whole(parameter.kind)) return 1;
  constexpr double half_inch = metres_per_inch / 2;
  if (parameter.kind == Kind::length && units == Units::feet && parameter.decimals <= 2) return half_inch;
  return std::pow(10.0, -static_cast<double>(parameter.decimals));
}

HandleDrag dragged_to(const DragHandle& handle, const Parameter& parameter, const Vec3& to, Units units) {
  if (handle.axis == any_way) return dragged_point(handle, parameter, to, units);
  const double outward = handle.sign * (to - handle.at)[handle.axis];
  const double wanted = rounded(handle.from.number + parameter.handle_gain * outward, drag_step(parameter, units));
  const double number = std::clamp(wanted, parameter.hard_min, parameter.hard_max);
  HandleDrag drag{Value::of_number(parameter.kind, number), {}, number != wanted};
  drag.text = parameter.label + " " + value_words(parameter, number, units);
  if (drag.at_limit) drag.text += number == parameter.hard_min ? ", the least" : ", the most";
  return drag;
}

Value with_point_after(Value path, std::size_t point) {
  const std::size_t count = path.list.size() / 3;
  if (point >= count) return path;
  const auto coordinate = [&](std::size_t index, std::size_t axis) { return path.list[3 * index + axis]; };
  const bool last = point + 1 == count;
  std::vector<double> added;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const double here = coordinate(point, axis);
    const double other = count < 2 ? here + (axis == 0 ? 0.5 : 0) : coordinate(last ? point - 1 : point + 1, axis);
    added.push_back(count < 2 ? other : last ? here + (here - other) : (here + other) / 2);
  }
  path.list.insert(path.list.begin() + static_cast<std::ptrdiff_t>(3 * (point + 1)), added.begin(), added.end());
  return path;
}

Value without_point(Value path, std::size_t point) {
  const std::size_t count = path.list.size() / 3;
  if (count <= 2 || point >= count) return path;
  const auto first = path.list.begin() + static_cast<std::ptrdiff_t>(3 * point);
  path.list.erase(first, first + 3);
  return path;
}

}  // namespace quadrille
