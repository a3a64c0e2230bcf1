#include "plugins/garland/seats.hpp"

#include <cmath>

namespace quadrille::garland {

std::optional<std::array<Vec3, 2>> seats_on_three(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& c,
                                                  double rc) {
  const double ab = (b - a).norm();
  if (ab < 1e-9) return std::nullopt;
  const Vec3 x = (b - a) / ab;
  const double along = x.dot(c - a);
  const Vec3 off = (c - a) - along * x;
  const double across = off.norm();
  if (across < 1e-9) return std::nullopt;
  const Vec3 y = off / across;
  const double u = (ra * ra - rb * rb + ab * ab) / (2 * ab);
  const double v = (ra * ra - rc * rc + along * along + across * across - 2 * along * u) / (2 * across);
  const double w2 = ra * ra - u * u - v * v;
  if (w2 < 0) return std::nullopt;
  const Vec3 foot = a + u * x + v * y, away = std::sqrt(w2) * x.cross(y);
  return std::array<Vec3, 2>{foot + away, foot - away};
}

std::optional<std::array<Vec3, 2>> seats_on_two(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& normal,
                                                double level) {
  const double ab = (b - a).norm();
  if (ab < 1e-9) return std::nullopt;
  const Vec3 x = (b - a) / ab;
  // They lie on a circle about x; the plane cuts its plane in a line along `way`, `near` from its middle.
  const double u = (ra * ra - rb * rb + ab * ab) / (2 * ab), radius2 = ra * ra - u * u;
  const Vec3 middle = a + u * x, steep = normal - normal.dot(x) * x;
  const double steepness2 = steep.squaredNorm();
  if (radius2 < 0 || steepness2 < 1e-6) return std::nullopt;
  const Vec3 foot = middle + ((level - normal.dot(middle)) / steepness2) * steep;
  const double left = radius2 - (foot - middle).squaredNorm();
  if (left < 0) return std::nullopt;
  const Vec3 way = x.cross(steep) * std::sqrt(left / steepness2);
  return std::array<Vec3, 2>{foot + way, foot - way};
}

std::optional<Vec3> outermost_on_two(const Vec3& a, double ra, const Vec3& b, double rb, const Vec3& out) {
  const double ab = (b - a).norm();
  if (ab < 1e-9) return std::nullopt;
  const Vec3 x = (b - a) / ab, away = out - out.dot(x) * x;
  const double u = (ra * ra - rb * rb + ab * ab) / (2 * ab), radius2 = ra * ra - u * u, away2 = away.squaredNorm();
  if (radius2 < 0 || away2 < 1e-12) return std::nullopt;
  return Vec3(a + u * x + std::sqrt(radius2 / away2) * away);
}

}  // namespace quadrille::garland
