// Shadows of all that stands on the floor, and the widest gap between them.
#include "studio/takeoff/opening.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace quadrille {
namespace {

constexpr double least_gap_m = 0.05;

struct Shadow {
  double from = 0, to = 0;
};

bool is_sound(const Balloon& b) { return b.centre.allFinite() && std::isfinite(b.diameter_m) && b.diameter_m > 0; }

/// Half the width of a disc of radius `r` at the distance `off` from its centre; negative where it does not reach.
double half_chord(double r, double off) { return std::abs(off) < r ? std::sqrt(r * r - off * off) : -1; }

/// The two ends of a member; nothing where they are not sound.
std::optional<std::pair<Vec3, Vec3>> ends_of(const Frame& frame, const FrameMember& member) {
  if (member.from >= frame.nodes.size() || member.to >= frame.nodes.size()) return std::nullopt;
  const Vec3 &from = frame.nodes[member.from], &to = frame.nodes[member.to];
  if (!from.allFinite() || !to.allFinite() || !std::isfinite(member.outer_m)) return std::nullopt;
  return std::pair(from, to);
}

/// The part of a line whose coordinate `axis` lies between `least` and `most`.
std::optional<std::pair<Vec3, Vec3>> clipped(Vec3 from, Vec3 to, int axis, double least, double most) {
  if (from[axis] > to[axis]) std::swap(from, to);
  if (to[axis] < least || from[axis] > most) return std::nullopt;
  const double length = to[axis] - from[axis];
  const auto at = [&](double value) -> Vec3 {
    return length > 0 ? Vec3(from + (to - from) * std::clamp((value - from[axis]) / length, 0.0, 1.0)) : from;
  };
  const Vec3 first = at(least), last = length > 0 ? at(most) : to;
  return std::pair(first, last);
}

/// What balloons and frame cover of the lowest `opening_floor_m`, along x.
std::vector<Shadow> shadows_of(const Piece& piece) {
  std::vector<Shadow> shadows;
  for (const Balloon& b : piece.balloons) {
    if (!is_sound(b)) continue;
    // The disc is widest where the slab comes nearest to its centre.
    const double nearest = std::clamp(b.centre.z(), 0.0, opening_floor_m) - b.centre.z();
    const double half = half_chord(b.diameter_m / 2, nearest);
    if (half >= 0) shadows.push_back({b.centre.x() - half, b.centre.x() + half});
  }
  for (const FrameMember& member : piece.frame.members)
    if (const auto ends = ends_of(piece.frame, member))
      if (const auto low = clipped(ends->first, ends->second, 2, 0, opening_floor_m)) {
        const auto [least, most] = std::minmax(low->first.x(), low->second.x());
        shadows.push_back({least - member.outer_m / 2, most + member.outer_m / 2});
      }
  return shadows;
}

struct Feet {
  double left = 0, right = 0;
  std::vector<Shadow> plates;
};

std::optional<Feet> feet_of(const Piece& piece) {
  std::vector<double> places;
  Feet feet;
  for (const Support& support : piece.supports) {
    if (support.kind == SupportKind::hook || support.node >= piece.frame.nodes.size()) continue;
    const Vec3& node = piece.frame.nodes[support.node];
    if (!node.allFinite() || node.z() > opening_floor_m) continue;
    places.push_back(node.x());
    if (support.kind == SupportKind::plate && std::isfinite(support.width_m))
      feet.plates.push_back({node.x() - support.width_m / 2, node.x() + support.width_m / 2});
  }
  if (places.size() < 2) return std::nullopt;
  const auto [left, right] = std::ranges::minmax(places);
  feet.left = left, feet.right = right;
  return feet;
}

/// The widest stretch from `from` to `to` that no shadow covers.
Shadow widest_gap(std::vector<Shadow> shadows, double from, double to) {
  std::ranges::sort(shadows, {}, &Shadow::from);
  Shadow widest{from, from};
  double free_from = from;
  const auto close_at = [&](double x) {
    if (x - free_from > widest.to - widest.from) widest = {free_from, x};
  };
  for (const Shadow& shadow : shadows) {
    close_at(std::min(shadow.from, to));
    free_from = std::max(free_from, shadow.to);
  }
  close_at(to);
  return widest;
}

/// The lowest underside of what hangs over `from` to `to`.
std::optional<double> height_over(const Piece& piece, double from, double to) {
  std::optional<double> lowest;
  const auto add = [&](double z) { lowest = std::min(lowest.value_or(z), z); };
  for (const Balloon& b : piece.balloons) {
    if (!is_sound(b)) continue;
    const double half = half_chord(b.diameter_m / 2, std::clamp(b.centre.x(), from, to) - b.centre.x());
    if (half >= 0) add(b.centre.z() - half);
  }
  for (const FrameMember& member : piece.frame.members)
    if (const auto ends = ends_of(piece.frame, member))
      if (const auto over = clipped(ends->first, ends->second, 0, from, to))
        add(std::min(over->first.z(), over->second.z()) - member.outer_m / 2);
  return lowest;
}

}  // namespace

std::optional<Opening> opening_of(const Piece& piece) {
  const auto feet = feet_of(piece);
  if (!feet) return std::nullopt;
  const Shadow gap = widest_gap(shadows_of(piece), feet->left, feet->right);
  if (gap.to - gap.from < least_gap_m) return std::nullopt;
  const double middle = (gap.from + gap.to) / 2;
  Opening opening{gap.from, gap.to, {}, gap.from, gap.to};
  opening.height_m =
      height_over(piece, std::max(gap.from, middle - opening_middle_m), std::min(gap.to, middle + opening_middle_m));
  const Shadow bare = widest_gap(feet->plates, gap.from, gap.to);
  opening.plates_left_m = bare.from, opening.plates_right_m = bare.to;
  return opening;
}

}  // namespace quadrille
