#include "studio/model/cluster_line.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <vector>

namespace quadrille {
namespace {

constexpr double slack = 1.1, knots_m = 0.6, least_turn_m = 0.02;

/// By cluster: how far from its axis its nearest balloon begins [m].
std::map<std::uint32_t, double> inner_radii(const Piece& piece) {
  std::map<std::uint32_t, const Cluster*> by_number;
  for (const Cluster& cluster : piece.clusters) by_number.emplace(cluster.number, &cluster);
  std::map<std::uint32_t, double> radii;
  for (const Balloon& balloon : piece.balloons) {
    const auto cluster = by_number.find(balloon.cluster);
    if (cluster == by_number.end()) continue;
    const Vec3 out = balloon.centre - cluster->second->centre, axis = cluster->second->axis;
    const double begins = (out - axis * axis.dot(out)).norm() - balloon.diameter_m / 2;
    const auto [place, is_new] = radii.try_emplace(balloon.cluster, begins);
    if (!is_new) place->second = std::min(place->second, begins);
  }
  return radii;
}

}  // namespace

double line_to_cut_m(double run_m) { return run_m > 0 ? slack * run_m + knots_m : 0; }

double clusters_together_m(const Piece& piece) {
  if (piece.clusters.size() < 2) return 0;
  std::vector<const Cluster*> clusters;
  for (const Cluster& cluster : piece.clusters) clusters.push_back(&cluster);
  std::ranges::stable_sort(clusters, {}, [](const Cluster* cluster) { return cluster->number; });
  const auto radii = inner_radii(piece);
  double run = 0;
  for (std::size_t i = 0; i < clusters.size(); ++i) {
    if (i > 0) run += (clusters[i]->centre - clusters[i - 1]->centre).norm();
    const auto radius = radii.find(clusters[i]->number);
    run += 2 * pi * std::max(least_turn_m, radius == radii.end() ? 0 : radius->second);
  }
  return line_to_cut_m(run);
}

}  // namespace quadrille
