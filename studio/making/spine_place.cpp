#include "studio/making/spine_place.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

/// Aside of a tangent in the elevation, upwards where it runs to the right.
Vec3 aside_of(const Vec3& tangent) {
  const Vec3 aside(-tangent.z(), 0, tangent.x());
  return aside.squaredNorm() < 1e-12 ? Vec3(Vec3::UnitZ()) : Vec3(aside.normalized());
}

/// `lateral` is the side to which the place lies in the elevation.
std::string side_of(const SpinePlace& place, const std::string& lateral) {
  const std::string depth = place.away_m < 0 ? "front" : "behind";
  const double off = std::abs(place.off_m), away = std::abs(place.away_m);
  constexpr double minor = 0.5;  // of the greater: below it a direction is not worth saying
  if (away < minor * off) return lateral;
  if (off < minor * away) return depth;
  return depth + " " + lateral;
}

}  // namespace

SpinePlace place_along(const Piece& piece, const Vec3& point, double near_m, double within_m) {
  SpinePlace best;
  double nearest2 = 1e300;
  for (std::size_t i = 1; i < piece.spine.size(); ++i) {
    const SpinePoint &from = piece.spine[i - 1], &to = piece.spine[i];
    if (within_m > 0 && (to.at_m < near_m - within_m || from.at_m > near_m + within_m)) continue;
    const Vec3 run = to.point - from.point;
    const double length2 = run.squaredNorm();
    if (length2 < 1e-18) continue;
    const double free_share = (point - from.point).dot(run) / length2, share = std::clamp(free_share, 0.0, 1.0);
    const Vec3 place = from.point + share * run;
    const double distance2 = (point - place).squaredNorm();
    if (distance2 >= nearest2) continue;
    nearest2 = distance2;
    best.at_m = from.at_m + share * (to.at_m - from.at_m);
    best.place = place, best.tangent = run / std::sqrt(length2);
    const bool last = i + 1 == piece.spine.size();
    best.beyond = last && free_share > 1 + 1e-9;
  }
  const Vec3 off = point - best.place;
  best.off_m = off.dot(aside_of(best.tangent)), best.away_m = off.y();
  return best;
}

std::string print_side(const SpinePlace& place) {
  if (place.beyond && place.tangent.z() > 0.71) return "on top";
  const Vec3 aside = aside_of(place.tangent) * (place.off_m < 0 ? -1.0 : 1.0);
  const std::string lateral = std::abs(aside.z()) >= std::abs(aside.x()) ? (aside.z() > 0 ? "above" : "below")
                                                                         : (aside.x() > 0 ? "right" : "left");
  return side_of(place, lateral);
}

std::string print_straight_side(const SpinePlace& place) { return side_of(place, place.off_m < 0 ? "below" : "above"); }

double spine_length_m(const Piece& piece) { return piece.spine.empty() ? 0 : piece.spine.back().at_m; }

Vec3 spine_point(const Piece& piece, double at_m) {
  if (piece.spine.empty()) return Vec3::Zero();
  const auto next = std::ranges::lower_bound(piece.spine, at_m, {}, &SpinePoint::at_m);
  if (next == piece.spine.begin()) return next->point;
  if (next == piece.spine.end()) return piece.spine.back().point;
  const SpinePoint &a = *(next - 1), &b = *next;
  const double share = b.at_m > a.at_m ? (at_m - a.at_m) / (b.at_m - a.at_m) : 0;
  return a.point + share * (b.point - a.point);
}

}  // namespace quadrille
