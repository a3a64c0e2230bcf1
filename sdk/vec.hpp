// Points and directions in the studio's frame: x to the right as the audience sees it, y away from the audience, z up.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <cmath>

namespace quadrille {

using Vec3 = Eigen::Vector3d;

inline constexpr double pi = 3.14159265358979323846;

/// `metres` to the nearest nanometre. Results of sin, cos or pow differ between processors in their last bits; rounding
/// them keeps what is built from them the same on every machine. Valid up to about 4,500 km.
inline double to_nanometre(double metres) { return std::nearbyint(metres * 1e9) * 1e-9; }

inline Vec3 to_nanometre(const Vec3& metres) {
  return {to_nanometre(metres.x()), to_nanometre(metres.y()), to_nanometre(metres.z())};
}

/// A dimensionless `number` (a direction cosine, an angle in radians) to the nearest 1e-12, for the same reason.
inline double to_picounit(double number) { return std::nearbyint(number * 1e12) * 1e-12; }

inline Vec3 to_picounit(const Vec3& direction) {
  return {to_picounit(direction.x()), to_picounit(direction.y()), to_picounit(direction.z())};
}

}  // namespace quadrille
