#include "studio/standing/walkway_under.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

/// A rectangle on the floor [m].
struct FloorRectangle {
  double left, front, width, depth;
  bool holds(const Vec3& place) const {
    return place.x() >= left && place.x() <= left + width && place.y() >= front && place.y() <= front + depth;
  }
};

/// Whether the line from a to b is anywhere over the rectangle and no higher than `height_m` there.
bool crosses_below(const Vec3& a, const Vec3& b, const FloorRectangle& over, double height_m) {
  // The part of the line that is no higher, and then that over the rectangle: shares of it from `a`.
  const double fall = a.z() - b.z();
  double enter = 0, leave = 1;
  if (a.z() > height_m) enter = fall > 0 ? (a.z() - height_m) / fall : 2;
  if (b.z() > height_m) leave = fall < 0 ? (a.z() - height_m) / fall : -1;
  const auto clip = [&](double start, double along, double least, double most) {
    if (std::abs(along) < 1e-12) {
      if (start < least || start > most) leave = enter - 1;
      return;
    }
    const double one = (least - start) / along, other = (most - start) / along;
    enter = std::max(enter, std::min(one, other));
    leave = std::min(leave, std::max(one, other));
  };
  clip(a.x(), b.x() - a.x(), over.left, over.left + over.width);
  clip(a.y(), b.y() - a.y(), over.front, over.front + over.depth);
  return enter <= leave;
}

}  // namespace

const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m) {
  const Vec3 place(placed.x_m, placed.y_m, 0);
  const auto crossed = std::ranges::find_if(area.walkways, [&](const Walkway& way) {
    return crosses_below(from + place, to + place, {way.x_m, way.y_m, way.width_m, way.depth_m}, headroom_m);
  });
  return crossed == area.walkways.end() ? nullptr : &*crossed;
}

const Structure* structure_in_way(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                                  const std::string& but) {
  const Vec3 place(placed.x_m, placed.y_m, 0);
  const auto in_way = std::ranges::find_if(area.structures, [&](const Structure& structure) {
    if (structure.id == but || structure.kind == StructureKind::beam) return false;
    if (!structure.width_m && !structure.depth_m) return false;
    const double width = structure.width_m.value_or(0), depth = structure.depth_m.value_or(0);
    const FloorRectangle stands_on{structure.x_m - width / 2, structure.y_m - depth / 2, width, depth};
    return !stands_on.holds(from + place) && crosses_below(from + place, to + place, stands_on, structure.height_m);
  });
  return in_way == area.structures.end() ? nullptr : &*in_way;
}

}  // namespace quadrille
