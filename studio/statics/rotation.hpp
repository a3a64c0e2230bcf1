// Finite rotations as unit quaternions, and the derivatives the beams need of them.
#pragma once

#include <Eigen/Geometry>
#include <cmath>

#include "sdk/vec.hpp"

namespace quadrille {

using Turn = Eigen::Quaterniond;
using Mat3 = Eigen::Matrix3d;

/// The matrix of v × ….
inline Mat3 cross_matrix(const Vec3& v) {
  Mat3 matrix;
  matrix << 0, -v.z(), v.y(), v.z(), 0, -v.x(), -v.y(), v.x(), 0;
  return matrix;
}

/// The rotation by the vector `turn` [rad], of any length.
inline Turn turn_by(const Vec3& turn) {
  const double angle = turn.norm();
  // sin(a/2)/a; below 1e-4 the next term of the series is under 1e-18.
  const double scale = angle < 1e-4 ? 0.5 - angle * angle / 48 : std::sin(angle / 2) / angle;
  return Turn(std::cos(angle / 2), scale * turn.x(), scale * turn.y(), scale * turn.z());
}

/// f = α/sin α of w = cos α with its first two derivatives by w, for α from 0 to less than π. The rotation vector of a
/// unit quaternion (w, u) is 2 f(w) u.
struct HalfAngle {
  double value, slope, bend;
};

/// `sine` = |u| ≥ 0, w² + sine² = 1. Derivatives from (1 − w²) f' = w f − 1; near w = 1 the series in 1 − w, whose
/// coefficients have the ratio (k + 1)/(2k + 3).
inline HalfAngle half_angle(double w, double sine) {
  const double square = sine * sine, from_one = square / (1 + w);
  if (from_one < 0.02) {
    HalfAngle f{0, 0, 0};
    double coefficient = 1, power = 1, lower = 0, lowest = 0;
    for (int k = 0; k < 10; ++k) {
      f.value += coefficient * power;
      f.slope -= coefficient * k * lower;
      f.bend += coefficient * k * (k - 1) * lowest;
      lowest = lower;
      lower = power;
      power *= from_one;
      coefficient *= (k + 1.0) / (2 * k + 3.0);
    }
    return f;
  }
  const double value = std::atan2(sine, w) / sine, slope = (w * value - 1) / square;
  return {value, slope, (value + 3 * w * slope) / square};
}

/// The rotation vector [rad] of `turn`, of at most π.
inline Vec3 turn_vector(const Turn& turn) {
  const double sign = turn.w() < 0 ? -1 : 1;
  return 2 * sign * half_angle(sign * turn.w(), turn.vec().norm()).value * turn.vec();
}

/// The least rotation that takes unit vector `from` to unit vector `to`.
inline Turn turn_between(const Vec3& from, const Vec3& to) { return Turn::FromTwoVectors(from, to).normalized(); }

}  // namespace quadrille
