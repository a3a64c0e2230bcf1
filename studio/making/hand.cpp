#include "studio/making/hand.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "sdk/cluster.hpp"

namespace quadrille {
namespace {

double ring_radius(const Piece& piece, const Cluster& cluster) {
  for (const Balloon& balloon : piece.balloons)
    if (balloon.cluster == cluster.number) return (balloon.centre - cluster.centre).norm();
  return 0;
}

/// To which side the line from (0, 0) to (x, z) climbs.
Climb climb_along(double x, double z) {
  if (std::abs(x) < 1e-9) return Climb::neither;
  return (x > 0) == (z >= 0) ? Climb::right : Climb::left;
}

}  // namespace

std::vector<FrontRun> front_runs(const Piece& piece, const ClusterChart& chart) {
  std::vector<FrontRun> runs;
  if (!chart.rings) return runs;
  std::map<std::uint32_t, const Cluster*> by_number;
  for (const Cluster& cluster : piece.clusters) by_number.emplace(cluster.number, &cluster);
  const double radius = ring_radius(piece, *by_number.begin()->second);
  for (std::size_t i = 1; i < chart.clusters.size(); ++i) {
    const ChartCluster& next = chart.clusters[i];
    const Cluster &a = *by_number.at(chart.clusters[i - 1].number), &b = *by_number.at(next.number);
    const double turn = next.half_steps.value_or(0) * pi / static_cast<double>(next.balloons.size());
    const Vec3 along = b.centre - a.centre;
    const Vec3 aside = radius * (direction_about(b.axis, turn) - direction_about(b.axis, 0));
    FrontRun run{a.number, b.number, along.x() + aside.x(), along.z() + aside.z(), Climb::neither};
    // Told from where a run goes against its spine, so that a leaning leg does not count as a climb of its colours.
    const bool turned = std::abs(std::sin(turn)) > 1e-9;
    const Vec3 side = direction_about(a.axis, pi / 2) * (turn > 0 ? 1 : -1);
    if (turned) run.climb = climb_along(a.axis.x() + side.x(), a.axis.z() + side.z());
    runs.push_back(run);
  }
  return runs;
}

Climb climb_of_legs(const Piece& piece, const ClusterChart& chart) {
  std::map<std::uint32_t, const Cluster*> by_number;
  for (const Cluster& cluster : piece.clusters) by_number.emplace(cluster.number, &cluster);
  std::optional<Climb> climb;
  for (const FrontRun& run : front_runs(piece, chart)) {
    const Vec3& axis = by_number.at(run.from)->axis;
    if (std::abs(axis.z()) < 0.71) continue;
    if (climb && *climb != run.climb) return Climb::neither;
    climb = run.climb;
  }
  return climb.value_or(Climb::neither);
}

bool shows_turns(const ClusterChart& chart) {
  return chart.rings && std::ranges::any_of(chart.clusters, [](const ChartCluster& cluster) {
           return std::ranges::any_of(cluster.balloons, [&](const ChartBalloon& balloon) {
             return balloon.slot != cluster.balloons.front().slot;
           });
         });
}

}  // namespace quadrille
