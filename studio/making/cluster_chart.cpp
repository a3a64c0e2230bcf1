#include "studio/making/cluster_chart.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "sdk/cluster.hpp"
#include "sdk/pattern.hpp"

namespace quadrille {
namespace {

constexpr double angle_slack = 2 * pi / 180, length_slack_m = 0.001;

/// A cluster with its balloons by place.
struct Handful {
  const Cluster* cluster = nullptr;
  std::vector<const Balloon*> balloons;
};

std::vector<Handful> handfuls_of(const Piece& piece) {
  std::map<std::uint32_t, Handful> by_number;
  for (const Cluster& cluster : piece.clusters) by_number[cluster.number].cluster = &cluster;
  for (const Balloon& balloon : piece.balloons)
    if (const auto found = by_number.find(balloon.cluster); found != by_number.end())
      found->second.balloons.push_back(&balloon);
  std::vector<Handful> handfuls;
  for (auto& [number, handful] : by_number) {
    std::ranges::stable_sort(handful.balloons, {}, &Balloon::place);
    handfuls.push_back(std::move(handful));
  }
  return handfuls;
}

/// Angle of a balloon about the cluster's axis, from the front, anticlockwise seen from the axis's tip.
double angle_of(const Cluster& cluster, const Balloon& balloon) {
  const Vec3 out = balloon.centre - cluster.centre;
  return std::atan2(out.dot(direction_about(cluster.axis, pi / 2)), out.dot(direction_about(cluster.axis, 0)));
}

/// `angle` brought to (-180°, 180°].
double wrapped_angle(double angle) {
  const double turns = std::ceil((angle - pi) / (2 * pi));
  return angle - turns * 2 * pi;
}

bool is_ring(const Handful& handful, std::size_t size) {
  if (handful.balloons.size() != size || size < 2) return false;
  const double first = angle_of(*handful.cluster, *handful.balloons.front());
  for (std::size_t place = 0; place < size; ++place) {
    const Balloon& balloon = *handful.balloons[place];
    const double wanted = first + 2 * pi * static_cast<double>(place) / static_cast<double>(size);
    if (std::abs(wrapped_angle(angle_of(*handful.cluster, balloon) - wanted)) > angle_slack) return false;
    if (std::abs(balloon.diameter_m - handful.balloons.front()->diameter_m) > length_slack_m) return false;
    if (balloon.nominal_in != handful.balloons.front()->nominal_in) return false;
  }
  return true;
}

/// Whole half steps from one ring to the next; nothing where it is turned by something between.
std::optional<int> steps_between(const Handful& from, const Handful& to) {
  const double step = pi / static_cast<double>(to.balloons.size());
  const double turn =
      wrapped_angle(angle_of(*to.cluster, *to.balloons[0]) - angle_of(*from.cluster, *from.balloons[0]));
  const double steps = std::round(turn / step);
  if (std::abs(turn - steps * step) > angle_slack) return std::nullopt;
  const int whole = static_cast<int>(steps), half_round = static_cast<int>(to.balloons.size());
  return whole == -half_round ? half_round : whole;
}

bool add_turns(ClusterChart& chart, const std::vector<Handful>& handfuls) {
  if (handfuls.empty()) return false;
  const std::size_t size = handfuls.front().balloons.size();
  for (const Handful& handful : handfuls)
    if (!is_ring(handful, size)) return false;
  for (std::size_t i = 1; i < handfuls.size(); ++i) {
    const auto steps = steps_between(handfuls[i - 1], handfuls[i]);
    if (!steps) return false;
    chart.clusters[i].half_steps = *steps;
  }
  return true;
}

bool turned_alike(const ChartCluster& a, const ChartCluster& b) {
  return !a.half_steps || !b.half_steps || a.half_steps == b.half_steps;
}
bool alike(const ChartCluster& a, const ChartCluster& b) { return a.balloons == b.balloons && turned_alike(a, b); }
bool coloured_alike(const ChartCluster& a, const ChartCluster& b) {
  return std::ranges::equal(a.balloons, b.balloons, {}, &ChartBalloon::slot, &ChartBalloon::slot) && turned_alike(a, b);
}

std::size_t repeat_of(const std::vector<ChartCluster>& clusters,
                      bool (*is_like)(const ChartCluster&, const ChartCluster&)) {
  for (std::size_t repeat = 1; 2 * repeat <= clusters.size(); ++repeat) {
    std::size_t i = 0;
    while (i + repeat < clusters.size() && is_like(clusters[i], clusters[i + repeat])) ++i;
    if (i + repeat == clusters.size()) return repeat;
  }
  return 0;
}

/// Whether every balloon of `a` has one of `b` in its mirror image about x = `middle`.
bool mirrors(const Handful& a, const Handful& b, double middle_m) {
  return a.balloons.size() == b.balloons.size() && std::ranges::all_of(a.balloons, [&](const Balloon* balloon) {
           const Vec3 image(2 * middle_m - balloon->centre.x(), balloon->centre.y(), balloon->centre.z());
           return std::ranges::any_of(b.balloons, [&](const Balloon* other) {
             return other->slot == balloon->slot && (other->centre - image).norm() < 0.02 &&
                    std::abs(other->diameter_m - balloon->diameter_m) < length_slack_m;
           });
         });
}

bool is_mirrored(const std::vector<Handful>& handfuls) {
  constexpr double legs_apart_m = 0.3;
  if (handfuls.size() < 2) return false;
  const double left = handfuls.front().cluster->centre.x(), right = handfuls.back().cluster->centre.x();
  if (std::abs(right - left) < legs_apart_m) return false;
  for (std::size_t i = 0; i < handfuls.size(); ++i)
    if (!mirrors(handfuls[i], handfuls[handfuls.size() - 1 - i], (left + right) / 2)) return false;
  return true;
}

}  // namespace

ClusterChart cluster_chart(const Piece& piece) {
  const std::vector<Handful> handfuls = handfuls_of(piece);
  ClusterChart chart;
  for (const Handful& handful : handfuls) {
    ChartCluster& cluster = chart.clusters.emplace_back();
    cluster.number = handful.cluster->number, cluster.at_m = handful.cluster->at_m;
    for (const Balloon* balloon : handful.balloons)
      cluster.balloons.push_back(
          {balloon->slot, balloon->nominal_in, std::round(balloon->diameter_m * 1000) / 1000, balloon->role});
  }
  chart.rings = add_turns(chart, handfuls);
  if (!chart.rings)
    for (ChartCluster& cluster : chart.clusters) cluster.half_steps.reset();
  if (chart.rings) chart.start_rad = angle_of(*handfuls[0].cluster, *handfuls[0].balloons[0]);
  chart.repeat = repeat_of(chart.clusters, alike);
  chart.colour_repeat = repeat_of(chart.clusters, coloured_alike);
  chart.mirrored = is_mirrored(handfuls);
  return chart;
}

std::string letters_of(const ChartCluster& cluster) {
  std::string letters;
  for (const ChartBalloon& balloon : cluster.balloons) letters += balloon.slot < 26 ? slot_letter(balloon.slot) : '?';
  return letters;
}

std::string print_turn(int half_steps, std::size_t balloons) {
  if (half_steps == 0) return "not turned";
  const int round = 2 * static_cast<int>(balloons), steps = std::abs(half_steps), common = std::gcd(steps, round);
  const std::string turn = std::to_string(steps / common) + "/" + std::to_string(round / common) + " turn";
  if (2 * steps == round) return turn;  // half way round is the same either way
  return turn + (half_steps > 0 ? " right" : " left");
}

std::string print_bearing(double angle_rad) {
  constexpr const char* bearings[] = {"front", "front right", "right", "back right",
                                      "back",  "back left",   "left",  "front left"};
  const double eighth = std::round(angle_rad / (pi / 4));
  return bearings[static_cast<std::size_t>(static_cast<long>(std::fmod(eighth, 8)) + 8) % 8];
}

}  // namespace quadrille
