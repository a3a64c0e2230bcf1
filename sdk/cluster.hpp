// Geometry of clusters: n equal balloons tied together around a rod, each cluster seated in the creases of the one
// below.
#pragma once

#include <cassert>
#include <cmath>
#include <cstdint>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/vec.hpp"

namespace quadrille {

inline constexpr int least_cluster = 2, most_cluster = 6;

/// sin(180°/n), by square roots alone so that it is the same on every machine; n is 2 to 6.
inline double sine_of_half_step(int n) {
  assert(n >= least_cluster && n <= most_cluster);
  switch (n) {
    case 2:
      return 1.0;
    case 3:
      return std::sqrt(3.0) / 2;
    case 4:
      return std::sqrt(0.5);
    case 5:
      return std::sqrt((5 - std::sqrt(5.0)) / 8);
    default:
      return 0.5;
  }
}

/// cos(180°/2n), likewise.
inline double cosine_of_quarter_step(int n) {
  assert(n >= least_cluster && n <= most_cluster);
  switch (n) {
    case 2:
      return std::sqrt(0.5);
    case 3:
      return std::sqrt(3.0) / 2;
    case 4:
      return std::sqrt(2 + std::sqrt(2.0)) / 2;
    case 5:
      return std::sqrt((5 + std::sqrt(5.0)) / 8);
    default:
      return (std::sqrt(6.0) + std::sqrt(2.0)) / 4;
  }
}

/// Distance [m] from the rod's axis to the centres of n hard spheres of diameter d [m] that touch in a ring:
/// d/(2 sin(180°/n)). n is 2 to 6. Source: plane geometry of a regular polygon of side d.
inline double hard_ring_radius(int n, double d) { return d / (2 * sine_of_half_step(n)); }

/// Distance [m] along the rod between rings of n hard spheres of diameter d [m], each turned by 180°/n and resting in
/// the creases of the last: d √(1 − 1/(4 cos²(180°/2n))), the height of a uniform antiprism of edge d; n = 4 gives
/// 2^(-1/4) d. n is 2 to 6.
inline double hard_spacing(int n, double d) {
  const double c = cosine_of_quarter_step(n);
  return d * std::sqrt(1 - 1 / (4 * c * c));
}

/// Unit vector at `angle` [rad] about `axis` (unit), counted anticlockwise seen from the axis's tip, from the direction
/// that faces the audience (-y), or from z up where the axis itself runs along y.
inline Vec3 direction_about(const Vec3& axis, double angle) {
  Vec3 front = -Vec3::UnitY() + axis.y() * axis;
  if (front.squaredNorm() < 1e-12) front = Vec3::UnitZ() - axis.z() * axis;
  front.normalize();
  return to_picounit(Vec3(std::cos(angle) * front + std::sin(angle) * axis.cross(front)));
}

/// How the balloons of a cluster are made and mounted.
struct ClusterMake {
  int size = 4;              ///< balloons in it, 2 to 6
  double inflated_m = 0.25;  ///< diameter
  double nominal_in = 11;
  double snug = 0.88;  ///< ring radius as a share of the hard one: the twisted necks pull the balloons in
  Role role = Role::body;
};

/// The balloons of one cluster, in place order: place j at `cluster.turn_rad` + j·360°/n about the cluster's axis, the
/// neck on the rod. `slots` holds the colour slot of each place.
inline std::vector<Balloon> ring_balloons(const Cluster& cluster, const ClusterMake& make,
                                          const std::vector<std::uint32_t>& slots) {
  assert(slots.size() == static_cast<std::size_t>(make.size));
  const double radius = make.snug * hard_ring_radius(make.size, make.inflated_m);
  std::vector<Balloon> ring;
  for (int place = 0; place < make.size; ++place) {
    const Vec3 out = direction_about(cluster.axis, cluster.turn_rad + place * 2 * pi / make.size);
    ring.push_back({to_nanometre(Vec3(cluster.centre + radius * out)), cluster.centre, make.inflated_m, make.nominal_in,
                    slots[static_cast<std::size_t>(place)], cluster.number, static_cast<std::uint32_t>(place),
                    make.role});
  }
  return ring;
}

}  // namespace quadrille
