#include "studio/build_sheet/build_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "studio/build_sheet/hung.hpp"
#include "studio/drawing/room.hpp"
#include "studio/drawing/scale.hpp"
#include "studio/paint/style.hpp"
#include "studio/paint/text.hpp"

namespace quadrille {
namespace {

void include(Extent& extent, bool& any, double x, double z, double reach_x, double reach_z) {
  const Extent one{x - reach_x, x + reach_x, z - reach_z, z + reach_z};
  extent = any ? around(extent, one) : one;
  any = true;
}

/// An extent that can be drawn to scale: at least 10 cm each way.
Extent drawable(Extent extent) {
  constexpr double least_m = 0.1;
  const double wide = std::max(0.0, least_m - extent.width()) / 2, high = std::max(0.0, least_m - extent.height()) / 2;
  return {extent.left - wide, extent.right + wide, extent.floor - high, extent.top + high};
}

/// Down to the floor where that does not make the picture more than half as high again, or higher than `share` of its
/// width.
Extent to_floor(Extent extent, double share = 0) {
  const double with_floor = extent.top - std::min(extent.floor, 0.0);
  if (with_floor <= std::max(1.5 * extent.height() + 0.3, share * extent.width()))
    extent.floor = std::min(extent.floor, 0.0);
  return extent;
}

}  // namespace

Extent frame_extent(const BuildSubject& subject) {
  Extent extent;
  bool any = false;
  for (const Vec3& node : subject.piece().frame.nodes) include(extent, any, node.x(), node.z(), 0, 0);
  for (const SpinePoint& point : subject.piece().spine) include(extent, any, point.point.x(), point.point.z(), 0, 0);
  for (const NamedSupport& support : subject.supports)
    include(extent, any, support.place.x(), support.place.z(), subject.piece().supports[support.support].width_m / 2,
            0);
  for (const AnchoredLine& line : subject.lines) include(extent, any, line.run.to.x(), line.run.to.z(), 0, 0);
  constexpr double flat = 0.25;  // of its width: so low a picture costs hardly any room
  return any ? drawable(to_floor(extent, flat)) : cluster_extent(subject);
}

Extent cluster_extent(const BuildSubject& subject) {
  Extent extent;
  bool any = false;
  for (const Balloon& balloon : subject.piece().balloons)
    include(extent, any, balloon.centre.x(), balloon.centre.z(), balloon.diameter_m / 2, balloon.diameter_m / 2);
  for (const NamedSupport& support : subject.supports)
    if (support.is_foot)
      include(extent, any, support.place.x(), support.place.z(), subject.piece().supports[support.support].width_m / 2,
              0);
  // What hangs is numbered without the floor, which its frame's picture shows.
  const bool stands = std::ranges::count(subject.supports, true, &NamedSupport::is_foot) > 0;
  return drawable(stands ? to_floor(extent) : extent);
}

double frame_bottom(const BuildSubject& subject) {
  const bool stands_on_two = std::ranges::count(subject.supports, true, &NamedSupport::is_foot) >= 2;
  return hangs(subject) ? hung_bottom : stands_on_two ? 20 : 7;
}

BuildPicture picture_in(const Rect& room, const Extent& extent, Units units, double bottom) {
  BuildPicture picture{room, extent, 10, {}, extent.floor <= 1e-9 && extent.top > 0, bottom};
  const double width = std::max(10.0, room.width - picture_left - picture_right);
  const double height = std::max(10.0, room.height - picture_top - bottom);
  picture.scale = fitting_scale(extent.width(), extent.height(), width, height, units);
  const double k = 1000 / picture.scale;
  picture.placement.mm_per_metre = k;
  picture.placement.origin.x = room.x + picture_left + (width - extent.width() * k) / 2 - extent.left * k;
  picture.placement.origin.y = room.bottom() - bottom + extent.floor * k - (height - extent.height() * k) * 0.3;
  return picture;
}

double picture_height(const BuildPicture& picture) {
  return picture_top + picture.bottom + picture.extent.height() * 1000 / picture.scale + 0.5;
}

void add_picture_caption(Marks& marks, const BuildPicture& picture, const std::string& name, Units units) {
  marks.push_back(text_mark(Part::heading, {picture.room.x, picture.room.y, picture.room.width, 5},
                            name + ", " + print_scale(picture.scale, units), type(pt_heading, ink_text, Face::bold)));
}

PicturePlace place_on(const BuildPicture& picture, const Vec3& point, const Vec3& tangent) {
  const Point2 at = picture.placement.on_page(point.x(), point.z());
  double x = -tangent.z(), y = -tangent.x();  // across the tangent, on a page whose y goes down
  const double length = std::hypot(x, y);
  if (length < 1e-9) return {at, {1, 0}};
  x /= length, y /= length;
  const Extent& e = picture.extent;
  // Along a level garland outward is up all the way, however its line sags and rises.
  const double up = e.height() < 0.35 * e.width() ? -e.width() : e.height() * 0.4;
  const Point2 middle = picture.placement.on_page((e.left + e.right) / 2, e.floor + up);
  const double away = x * (at.x - middle.x) + y * (at.y - middle.y);
  const bool turn = std::abs(away) > 1e-6 ? away < 0 : x < 0;
  return {at, turn ? Point2{-x, -y} : Point2{x, y}};
}

bool find_room_for_label(const BuildPicture& picture, const PicturePlace& at, double width, double height, double off,
                         std::vector<Rect>& taken, Rect& label, LabelReach reaches) {
  const Rect& room = picture.room;
  for (const double side : std::array{1.0, -1.0, 1.8, -1.8, 3.0, 4.5}) {
    if (reaches == LabelReach::beside && side != 1) break;
    if (reaches == LabelReach::aside && side < 0) continue;
    const Point2 out{at.outward.x * side, at.outward.y * side};
    // The label's nearest edge stands `off` from the place, whichever way it lies.
    const double reach =
        off * std::abs(side) + std::abs(out.x / side) * width / 2 + std::abs(out.y / side) * height / 2;
    const double sign = side > 0 ? 1 : -1;
    const Point2 centre{at.at.x + at.outward.x * sign * reach, at.at.y + at.outward.y * sign * reach};
    const Rect box{centre.x - width / 2, centre.y - height / 2, width, height};
    if (box.x < room.x || box.right() > room.right() || box.y < room.y + 6 || box.bottom() > room.bottom()) continue;
    constexpr double air = 0.7;  // two labels side by side do not read as one
    if (meets_any({box.x - air, box.y, box.width + 2 * air, box.height}, taken)) continue;
    taken.push_back(box);
    label = box;
    return true;
  }
  return false;
}

}  // namespace quadrille
