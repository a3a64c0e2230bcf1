// Where a ball rests on others: solid geometry.
#pragma once

#include <array>
#include <optional>

#include "sdk/vec.hpp"

namespace quadrille::garland {

/// The two points at the distances `ra`, `rb`, `rc` [m] from the points `a`, `b`, `c`, one on either side of their plane;
/// nothing where the distances do not reach or the three lie on a line. A ball of radius ρ whose centre is at R + ρ from
/// the centres of three balls of radius R touches all three. Source: trilateration, any book of geometry.
std::optional<std::array<Vec3, 2>> seats_on_three(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& c,
                                                  double rc);

/// The two points at the distances `ra`, `rb` [m] from `a`, `b` in the plane normal·x = level (`normal` of length 1);
/// nothing where there are none or the plane lies across a and b.
std::optional<std::array<Vec3, 2>> seats_on_two(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& normal,
                                                double level);

/// The point at the distances `ra`, `rb` [m] from `a`, `b` that lies farthest in the direction `out`; nothing where there
/// is none or `out` lies along a and b.
std::optional<Vec3> outermost_on_two(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& out);

}  // namespace quadrille::garland
