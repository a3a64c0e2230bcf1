#include "studio/standing/anchor_spots.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/vec.hpp"
#include "studio/model/securing.hpp"
#include "studio/standing/checks.hpp"
#include "studio/standing/walkway_under.hpp"

namespace quadrille {
namespace {

constexpr double step = 2 * pi / LineChoice::directions;

int wrapped(int direction) {
  return (direction % LineChoice::directions + LineChoice::directions) % LineChoice::directions;
}

/// The unit vector on the floor; the quarters are exact.
Vec3 way_of(int direction) { return to_picounit(Vec3(std::cos(direction * step), std::sin(direction * step), 0)); }

}  // namespace

int LineChoice::nearest_direction(double angle) { return wrapped(static_cast<int>(std::lround(angle / step))); }

AnchorSpots::AnchorSpots(const Area& area, const PlacedPiece& placed, const Piece& built, const Assumptions& figures)
    : area_(area),
      placed_(placed),
      built_(built),
      usual_share_(figures["stake-away"]),
      level_share_(figures["line-level-share"]),
      headroom_m_(figures["headroom"]) {}

std::optional<SecuringLine> AnchorSpots::line(const LineChoice& choice) const {
  if (!leaves(choice.tie, choice.direction)) return std::nullopt;
  const Vec3 from = built_.tie_points[choice.tie].point;
  SecuringLine line;
  line.tie = tie_key(built_, choice.tie);
  if (choice.structure) {
    const Structure& structure = area_.structures[*choice.structure];
    line.anchor = AnchorKind::structure;
    line.structure = structure.id;
    line.height_m = std::min(structure.height_m, from.z());
  } else {
    const double away_m = LineChoice::distances[static_cast<std::size_t>(choice.distance)] * usual_share_ * from.z();
    const Vec3 at = from + way_of(choice.direction) * away_m;
    line.anchor = is_hard(area_.site.ground) ? AnchorKind::dead_weight : AnchorKind::stake;
    line.x_m = std::nearbyint(at.x() * 100) / 100;
    line.y_m = std::nearbyint(at.y() * 100) / 100;
  }
  const auto run = run_of(line, placed_, built_, area_);
  if (!run || is_steep(*run, level_share_)) return std::nullopt;
  if (walkway_under(area_, placed_, run->from, run->to, headroom_m_) != nullptr) return std::nullopt;
  if (structure_in_way(area_, placed_, run->from, run->to, line.structure) != nullptr) return std::nullopt;
  return line;
}

std::optional<LineChoice> AnchorSpots::nearest(std::size_t tie, double angle) const {
  constexpr double structure_within = pi / 9;
  const Vec3 asked(std::cos(angle), std::sin(angle), 0);
  std::vector<LineChoice> tied;
  add_structures(tie, tied);
  for (const LineChoice& choice : tied)
    if (way_of(choice.direction).dot(asked) >= std::cos(structure_within)) return choice;
  const int straight = LineChoice::nearest_direction(angle);
  for (int off = 0; off <= LineChoice::directions / 2; ++off)
    for (const int side : {1, -1})
      for (int distance = 0; distance < static_cast<int>(LineChoice::distances.size()); ++distance) {
        const LineChoice choice{tie, wrapped(straight + side * off), distance};
        if (line(choice)) return choice;
      }
  return std::nullopt;
}

std::vector<LineChoice> AnchorSpots::beside(const LineChoice& choice) const {
  std::vector<LineChoice> steps;
  const auto add = [&](const LineChoice& next) {
    if (next != choice && line(next) && std::ranges::find(steps, next) == steps.end()) steps.push_back(next);
  };
  const int distance = choice.structure ? 0 : choice.distance;
  for (const int turn : {1, -1, 2, -2}) add({choice.tie, wrapped(choice.direction + turn), distance});
  for (int other = 0; other < static_cast<int>(LineChoice::distances.size()); ++other)
    add({choice.tie, choice.direction, other});
  for (std::size_t tie = 0; tie < built_.tie_points.size(); ++tie) {
    LineChoice next = choice;
    next.tie = tie;
    if (!choice.structure) add(next);
  }
  std::vector<LineChoice> tied;
  for (std::size_t tie = 0; tie < built_.tie_points.size(); ++tie) add_structures(tie, tied);
  std::ranges::for_each(tied, add);
  return steps;
}

std::vector<LineChoice> AnchorSpots::all() const {
  std::vector<LineChoice> allowed;
  for (std::size_t tie = 0; tie < built_.tie_points.size(); ++tie) {
    for (int direction = 0; direction < LineChoice::directions; ++direction)
      for (int distance = 0; distance < static_cast<int>(LineChoice::distances.size()); ++distance)
        if (const LineChoice choice{tie, direction, distance}; line(choice)) allowed.push_back(choice);
    add_structures(tie, allowed);
  }
  return allowed;
}

std::optional<LineChoice> AnchorSpots::mirrored(const LineChoice& choice, bool left_right, bool front_back) const {
  if (choice.structure) return std::nullopt;
  const TiePoint& tie = built_.tie_points[choice.tie];
  std::size_t number = 0;
  for (std::size_t i = 0; i < choice.tie; ++i) number += built_.tie_points[i].purpose == tie.purpose ? 1 : 0;
  TiePurpose purpose = tie.purpose;
  if (purpose == TiePurpose::side) {
    if (left_right) number ^= 1;  // left and right alternate
  } else if (front_back) {
    purpose = purpose == TiePurpose::front ? TiePurpose::back : TiePurpose::front;
  }
  const auto other = tie_of(purpose, number);
  if (!other) return std::nullopt;
  LineChoice mirror = choice;
  mirror.tie = *other;
  if (left_right) mirror.direction = wrapped(LineChoice::directions / 2 - mirror.direction);
  if (front_back) mirror.direction = wrapped(-mirror.direction);
  return mirror;
}

bool AnchorSpots::leaves(std::size_t tie, int direction) const {
  constexpr double aside = 1e-9;
  const Vec3 way = way_of(direction);
  switch (built_.tie_points[tie].purpose) {
    case TiePurpose::front:
      return way.y() < -aside;
    case TiePurpose::back:
      return way.y() > aside;
    case TiePurpose::side:
      return is_left(tie) ? way.x() < -aside : way.x() > aside;
  }
  return false;
}

/// A side tie is the left one where it lies left of the middle of the piece's ties; of those that lie in it, every other.
bool AnchorSpots::is_left(std::size_t side_tie) const {
  double left = built_.tie_points[side_tie].point.x(), right = left;
  bool odd = false;
  for (std::size_t i = 0; i < built_.tie_points.size(); ++i) {
    left = std::min(left, built_.tie_points[i].point.x());
    right = std::max(right, built_.tie_points[i].point.x());
    if (i < side_tie && built_.tie_points[i].purpose == TiePurpose::side) odd = !odd;
  }
  const double off = built_.tie_points[side_tie].point.x() - (left + right) / 2;
  return std::abs(off) > 0.01 ? off < 0 : !odd;
}

void AnchorSpots::add_structures(std::size_t tie, std::vector<LineChoice>& to) const {
  constexpr double nearest_m = 0.3, farthest_heights = 3;
  const Vec3 from = built_.tie_points[tie].point;
  for (std::size_t i = 0; i < area_.structures.size(); ++i) {
    const Structure& structure = area_.structures[i];
    if (structure.allowed_by.empty()) continue;
    const double x = structure.x_m - placed_.x_m - from.x(), y = structure.y_m - placed_.y_m - from.y();
    const double away_m = std::hypot(x, y);
    if (!(away_m > nearest_m) || away_m > farthest_heights * from.z()) continue;
    if (const LineChoice choice{tie, LineChoice::nearest_direction(std::atan2(y, x)), 0, i}; line(choice))
      to.push_back(choice);
  }
}

std::optional<std::size_t> AnchorSpots::tie_of(TiePurpose purpose, std::size_t number) const {
  for (std::size_t i = 0; i < built_.tie_points.size(); ++i)
    if (built_.tie_points[i].purpose == purpose && number-- == 0) return i;
  return std::nullopt;
}

}  // namespace quadrille
