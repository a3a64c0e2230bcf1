// Pieces laid by a pattern plan on a pole or a half circle, without any plugin.
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>

#include "sdk/cluster.hpp"
#include "sdk/pattern.hpp"

namespace quadrille::laid {

inline constexpr double d = 0.25;  ///< inflated diameter [m]

inline void add_cluster(Piece& piece, const PatternPlan& plan, const LaidCluster& here, double at_m, const Vec3& centre,
                        const Vec3& axis) {
  const Cluster cluster{static_cast<std::uint32_t>(piece.clusters.size() + 1), at_m, centre, axis,
                        here.half_steps * pi / plan.cluster_size};
  piece.clusters.push_back(cluster);
  const ClusterMake make{plan.cluster_size, d, 11, 0.88, Role::body};
  for (const Balloon& balloon : ring_balloons(cluster, make, here.slots)) piece.balloons.push_back(balloon);
}

/// Clusters up a straight pole.
inline Piece pole(const PatternPlan& plan, int clusters) {
  Piece piece;
  const auto rows = lay_pattern(plan, clusters);
  for (int i = 0; i < clusters; ++i) {
    const double at = 0.2 + i * hard_spacing(plan.cluster_size, d);
    add_cluster(piece, plan, rows[static_cast<std::size_t>(i)], at, Vec3(0, 0, at), Vec3::UnitZ());
  }
  const double top = piece.clusters.back().at_m;
  piece.spine = {{0, Vec3::Zero()}, {top, Vec3(0, 0, top)}};
  piece.frame.nodes = {Vec3::Zero(), Vec3(0, 0, top)};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.025, 0.02, 3e9, 1400, 5e7}};
  piece.supports = {{SupportKind::plate, 0, false, 0.4, 0.4, 6, 10, 30}};
  return piece;
}

/// Clusters over a half circle of radius 1.5 m, from the left foot to the right.
inline Piece half_circle(const PatternPlan& plan, int clusters) {
  Piece piece;
  const auto rows = lay_pattern(plan, clusters);
  const auto at_angle = [](double a) { return Vec3(-1.5 * std::cos(a), 0, 1.5 * std::sin(a)); };
  for (int i = 0; i < clusters; ++i) {
    const double a = pi * (i + 0.5) / clusters;
    add_cluster(piece, plan, rows[static_cast<std::size_t>(i)], 1.5 * a, at_angle(a),
                Vec3(std::sin(a), 0, std::cos(a)));
  }
  constexpr int nodes = 40;
  for (int i = 0; i <= nodes; ++i) {
    piece.frame.nodes.push_back(at_angle(pi * i / nodes));
    piece.spine.push_back({1.5 * pi * i / nodes, piece.frame.nodes.back()});
    if (i > 0)
      piece.frame.members.push_back({static_cast<std::uint32_t>(i - 1), static_cast<std::uint32_t>(i), Joint::rigid,
                                     Rest::as_drawn, 0.02, 0.014, 3e9, 1400, 5e7});
  }
  piece.supports = {{SupportKind::plate, 0, false, 0.4, 0.4, 6, 10, 30},
                    {SupportKind::plate, nodes, false, 0.4, 0.4, 6, 10, 30}};
  return piece;
}

inline PatternPlan plan_of(PatternKind kind, int size, int slots, int hand = 1, int band = 4) {
  PatternPlan plan;
  plan.kind = kind, plan.cluster_size = size, plan.slots = slots, plan.hand = hand, plan.band = band;
  return plan;
}

/// The slot of the balloon of this cluster that lies at `angle` about its axis, from the front, anticlockwise seen from the
/// spine's far end; -1 where there is none.
inline int slot_towards(const Piece& piece, std::size_t cluster, double angle) {
  const Cluster& here = piece.clusters[cluster];
  const Vec3 out = direction_about(here.axis, angle);
  for (const Balloon& balloon : piece.balloons)
    if (balloon.cluster == here.number && (balloon.centre - here.centre).normalized().dot(out) > 0.999)
      return static_cast<int>(balloon.slot);
  return -1;
}

}  // namespace quadrille::laid
