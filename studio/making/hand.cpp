#include "studio/making/hand.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

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

/// How far from the place `at` round the ring of `next`, in half steps to the right or left, its like stands nearest;
/// nothing where none is near or two are as near. `turn`: where its own place 0 stands.
std::optional<int> way_to_like(std::uint32_t slot, int at, const ChartCluster& next, int turn) {
  const int size = static_cast<int>(next.balloons.size());
  for (int way = 0; way <= 2; ++way) {
    const auto is_like = [&](int place) {
      const int off = place - turn;
      if (off % 2 != 0) return false;
      return next.balloons[static_cast<std::size_t>(((off / 2) % size + size) % size)].slot == slot;
    };
    const bool right = is_like(at + way), left = is_like(at - way);
    // Half way round the one side is the other.
    if (right && left) return way == 0 ? std::optional(0) : std::nullopt;
    if (right || left) return right ? way : -way;
  }
  return std::nullopt;
}

/// By how many half steps every colour that runs on aslant from `from` to `to` does so; 0 where they are not of one mind.
int run_between(const ChartCluster& from, const ChartCluster& to) {
  int run = 0;
  for (std::size_t place = 0; place < from.balloons.size(); ++place) {
    const auto way = way_to_like(from.balloons[place].slot, 2 * static_cast<int>(place), to, to.half_steps.value_or(0));
    if (!way || *way == 0) continue;
    if (run != 0 && run != *way) return 0;
    run = *way;
  }
  return run;
}

bool is_of_one_colour(const ChartCluster& cluster) {
  return std::ranges::all_of(
      cluster.balloons, [&](const ChartBalloon& balloon) { return balloon.slot == cluster.balloons.front().slot; });
}

/// Whether the ring has the same colours when it is turned on by this many places.
bool is_alike_turned(const ChartCluster& cluster, int places) {
  const int size = static_cast<int>(cluster.balloons.size());
  for (int place = 0; place < size; ++place) {
    const int other = ((place + places) % size + size) % size;
    if (cluster.balloons[static_cast<std::size_t>(place)].slot !=
        cluster.balloons[static_cast<std::size_t>(other)].slot)
      return false;
  }
  return true;
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
    const int steps = run_between(chart.clusters[i - 1], next);
    const double turn = steps * pi / static_cast<double>(next.balloons.size());
    const Vec3 along = b.centre - a.centre;
    const Vec3 aside = radius * (direction_about(b.axis, turn) - direction_about(b.axis, 0));
    FrontRun run{a.number, b.number, along.x() + aside.x(), along.z() + aside.z(), steps, Climb::neither};
    // Told from where a run goes against its spine, so that a leaning leg does not count as a climb of its colours.
    const Vec3 side = direction_about(a.axis, pi / 2) * (turn > 0 ? 1 : -1);
    if (steps != 0) run.climb = climb_along(a.axis.x() + side.x(), a.axis.z() + side.z());
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

SideMatters side_matters(const ClusterChart& chart) {
  // A cluster whose place 0 stands s half steps to the right stands as many to the left when all are turned to the other
  // side: its balloons are in the same creases, 2s half steps or s places on.
  bool is_turned = false, is_alike = true;
  int steps = 0;
  for (const ChartCluster& cluster : chart.clusters) {
    const int turn = cluster.half_steps.value_or(0);
    steps += turn;
    is_turned = is_turned || turn % static_cast<int>(cluster.balloons.size()) != 0;
    is_alike = is_alike && is_alike_turned(cluster, steps);
  }
  if (!chart.rings || !is_turned || std::ranges::all_of(chart.clusters, is_of_one_colour)) return SideMatters::never;
  return is_alike ? SideMatters::together : SideMatters::each;
}

}  // namespace quadrille
