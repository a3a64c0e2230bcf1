// A balloon of a garland while it is being packed, and what is asked of the whole.
#pragma once

#include <cstdint>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/curve.hpp"
#include "sdk/piece.hpp"

namespace quadrille::garland {

struct Ball {
  Vec3 centre = Vec3::Zero();  ///< m
  Vec3 neck = Vec3::Zero();    ///< on the line, or where it is glued
  Vec3 axis = Vec3::UnitX();   ///< of the line at its neck
  double radius = 0;           ///< m
  double at = 0;               ///< arc length [m] of its neck on the line; of a filler, where it sits
  double along = 0;            ///< arc length [m] of the place of the line nearest to its centre
  double off = 0;              ///< how far its centre lies to the side of the line there, in the elevation [m]
  int carries = 0;             ///< the side whose outline it is to carry: +1 up, −1 down, 0 neither
  std::size_t size = 0;        ///< index into the mix
  std::uint32_t cluster = 0;   ///< from 1; 0 for a filler
  std::uint32_t place = 0;
  std::uint32_t slot = 0;
  Role role = Role::body;
};

enum class Flow { scattered, drifting, blocks };
enum class Backing { strip, line, hooks, frame };

struct Request {
  std::vector<Vec3> points;
  bool straight = false, hanging = false;
  double slack = 1.15;
  Backing backing = Backing::strip;
  bool wall = false;
  double wall_y = 0;
  double wall_room = 0;                     ///< least distance [m] from the path to the wall
  double thickness = 0, thickness_end = 0;  ///< m, both set
  std::vector<MixEntry> mix;                ///< largest first, shares add up to 1
  int core = 4;
  double tightness = 1, filler = 0.3;
  Flow flow = Flow::scattered;
  int slots = 4;
  double accents = 0;
  std::uint32_t accent_slot = 0;
  std::uint32_t seed = 1;

  /// Thickness [m] asked at a share of the line from 0 to 1.
  double thickness_at(double share) const { return thickness + (thickness_end - thickness) * share; }
  /// True where a wall leaves no room for a whole round garland.
  bool halved() const { return wall && wall_room < (thickness > thickness_end ? thickness : thickness_end) / 2; }
  double largest() const { return mix.front().inflated_m; }
};

/// Throws BadParameter for values that cannot be used.
Request read_request(const Values& values);

/// The line through the points. Throws Infeasible where it is too short to carry anything.
Curve course_of(const Request& request);

}  // namespace quadrille::garland
