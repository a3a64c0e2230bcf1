#include "studio/standing/walkway_under.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {

const Walkway* walkway_under(const Area& area, const PlacedPiece& placed, const Vec3& from, const Vec3& to,
                             double headroom_m) {
  const Vec3 place(placed.x_m, placed.y_m, 0);
  const Vec3 a = from + place, b = to + place;
  // The part of the line that hangs lower than the headroom: shares of it from `a`.
  const double fall = a.z() - b.z();
  double begin = 0, end = 1;
  if (a.z() > headroom_m) begin = fall > 0 ? (a.z() - headroom_m) / fall : 2;
  if (b.z() > headroom_m) end = fall < 0 ? (a.z() - headroom_m) / fall : -1;
  for (const Walkway& walkway : area.walkways) {
    double enter = begin, leave = end;
    const auto clip = [&](double start, double along, double least, double most) {
      if (std::abs(along) < 1e-12) {
        if (start < least || start > most) leave = enter - 1;
        return;
      }
      const double one = (least - start) / along, other = (most - start) / along;
      enter = std::max(enter, std::min(one, other));
      leave = std::min(leave, std::max(one, other));
    };
    clip(a.x(), b.x() - a.x(), walkway.x_m, walkway.x_m + walkway.width_m);
    clip(a.y(), b.y() - a.y(), walkway.y_m, walkway.y_m + walkway.depth_m);
    if (enter <= leave) return &walkway;
  }
  return nullptr;
}

}  // namespace quadrille
