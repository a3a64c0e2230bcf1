#include "plugins/garland/core.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/measure.hpp"
#include "plugins/garland/relax.hpp"
#include "plugins/garland/sizes.hpp"
#include "sdk/cluster.hpp"
#include "sdk/random.hpp"

namespace quadrille::garland {
namespace {

/// A cluster and the length it takes on the line.
struct Laid {
  std::vector<Ball> balls;  ///< largest first
  double room_m = 0;
};

double room_of(const std::vector<Ball>& cluster, const Request& request, double thickness) {
  double diameters = 0, fillings = 0;
  for (const Ball& ball : cluster) {
    diameters += 2 * ball.radius;
    fillings += filling_of(request, 2 * ball.radius, thickness);
  }
  return cluster_room(request, diameters / static_cast<double>(cluster.size()), fillings);
}

/// How many balloons find a place about one point of the line: before a wall at which it lies only two side by side, as
/// their necks do not let them move along it.
std::size_t most_together(const Request& request, const std::vector<Ball>& cluster) {
  if (!request.wall) return cluster.size();
  double radii = 0;
  for (const Ball& ball : cluster) radii += ball.radius;
  const double room = request.wall_room * static_cast<double>(cluster.size()) / radii;
  return std::min<std::size_t>(cluster.size(), room < 0.5 ? 2 : room < 0.7 ? 3 : 4);
}

/// Where the garland is so thin that a whole cluster would have to spread farther along the line than its necks reach,
/// fewer are tied together, two at least.
Laid next_cluster(const Request& request, SizeSequence& sequence, const std::vector<double>& shares, double thickness) {
  Laid laid;
  const auto leave_one = [&] {
    sequence.take_back(laid.balls.back().size);
    laid.balls.pop_back();
  };
  for (int i = 0; i < request.core; ++i) {
    Ball ball;
    ball.size = sequence.next(shares);
    ball.radius = request.mix[ball.size].inflated_m / 2;
    laid.balls.push_back(ball);
  }
  while (laid.balls.size() > most_together(request, laid.balls)) leave_one();
  for (;;) {
    laid.room_m = room_of(laid.balls, request, thickness);
    double largest = 0;
    for (const Ball& ball : laid.balls) largest = std::max(largest, 2 * ball.radius);
    if (laid.balls.size() <= 2 || laid.room_m <= 1.5 * request.tightness * largest) break;
    leave_one();
  }
  std::ranges::stable_sort(laid.balls, [](const Ball& a, const Ball& b) { return a.radius > b.radius; });
  return laid;
}

/// Directions of a cluster's balls about the line, from `start` on: each takes room by its diameter; on a wall within
/// the front half.
std::vector<double> turns_of(const Request& request, const std::vector<Ball>& cluster, double start) {
  double total = 0;
  for (const Ball& ball : cluster) total += ball.radius;
  const double room = request.halved() ? pi : 2 * pi;
  std::vector<double> turns;
  double used = 0;
  for (const Ball& ball : cluster) {
    double turn = start + room * (used + ball.radius / 2 - cluster.front().radius / 2) / total;
    // What points to the wall comes in again from the other side.
    if (request.halved()) turn -= pi * std::floor(turn / pi + 0.5);
    turns.push_back(turn);
    used += ball.radius;
  }
  return turns;
}

void place_cluster(std::vector<Ball>& cluster, const Request& request, const Curve& line, double at, double start) {
  const Vec3 neck = to_nanometre(line.point(at)), axis = to_picounit(line.tangent(at));
  const std::vector<double> turns = turns_of(request, cluster, start);
  const double half = request.thickness_at(at / line.length_m()) / 2;
  for (std::size_t place = 0; place < cluster.size(); ++place) {
    Ball& ball = cluster[place];
    const double out = std::clamp(half - ball.radius, nearest_share * ball.radius, farthest_share * ball.radius);
    ball.at = at;
    ball.neck = neck;
    ball.axis = axis;
    // Those opposite start a little before and behind each other, so that relaxing has a way to go.
    const double lean = (place % 4 == 0 || place % 4 == 3 ? 1 : -1) * (request.halved() ? 0.4 : 0.2) * ball.radius;
    ball.centre = to_nanometre(Vec3(neck + out * direction_about(axis, turns[place]) + lean * axis));
    ball.place = static_cast<std::uint32_t>(place);
  }
}

/// Gives the clusters their heading. By turns their largest balls carry the outline on either side, wherever that has had
/// none for a while; otherwise they turn to the front, where they hide the line and are seen.
class Headings {
 public:
  Headings(const Request& request, const Curve& line) : request_(request), line_(line), chance_(request.seed) {}

  double next(std::vector<Ball>& cluster, double at) {
    const double thickness = request_.thickness_at(at / line_.length_m());
    const double jitter = chance_.within(-0.25, 0.25);
    // Equal balls all reach the outline and nest in the creases of the cluster before.
    if (request_.mix.size() == 1)
      return 0.4 * jitter + (nested_ = !nested_) * pi / request_.core / (request_.halved() ? 2 : 1);
    // The side that has waited longer; by turns where both have waited as long.
    const int side = last_[0] < last_[1] ? 1 : last_[1] < last_[0] ? -1 : -last_side_;
    if (at - last_[side > 0 ? 0 : 1] < 0.45 * thickness || !carry(cluster.front(), side, at, thickness))
      return 0.8 * jitter;
    last_side_ = side;
    // Smaller ones may reach the outline too: the one opposite carries the other side, and in clusters made smaller where
    // it is thin every other one.
    const bool thin = cluster.size() < static_cast<std::size_t>(request_.core);
    if (!request_.halved() && !thin) carry(cluster[cluster.size() / 2], -side, at, thickness);
    for (std::size_t i = 1; thin && i < cluster.size(); ++i)
      carry(cluster[i], i % 2 == 0 ? side : -side, at, thickness);
    return -side * pi / 2 * (request_.halved() ? 0.85 : 1) +
           0.6 * jitter;  // to the side, on a wall a little to the front
  }

 private:
  bool carry(Ball& ball, int side, double at, double thickness) {
    if ((1 + farthest_share) * ball.radius <= 0.99 * thickness / 2) return false;
    ball.carries = side;
    last_[side > 0 ? 0 : 1] = at;
    return true;
  }

  const Request& request_;
  const Curve& line_;
  Random chance_;
  bool nested_ = true;
  int last_side_ = -1;
  double last_[2] = {-1e9, -1e9};
};

std::vector<Ball> lay_core(const Request& request, const Curve& line, const CoreSizes& sizes, const Stretch& stretch) {
  SizeSequence sequence(request.mix.size());
  std::vector<Laid> clusters;
  const double length = line.length_m();
  for (double at = 0;;) {
    // What fits at the thinner end of the cluster.
    const double ahead = request.thickness_end < request.thickness ? 0.5 * request.thickness_at(at / length) : 0;
    const double share = (at + ahead) / length;
    Laid laid = next_cluster(request, sequence, sizes.at(share), request.thickness_at(std::min(1.0, share)));
    laid.room_m *= stretch.at(at);
    if (at + laid.room_m > length + 1e-9 && !clusters.empty()) break;
    at += laid.room_m;
    clusters.push_back(std::move(laid));
  }
  // What is left over at the end goes to all of them; the first and the last sit near the ends, which would show.
  constexpr double beyond = 0.2;
  double total = -beyond * (clusters.front().room_m + clusters.back().room_m);
  for (const Laid& laid : clusters) total += laid.room_m;
  const double share_out = length / total;
  double at = -beyond * share_out * clusters.front().room_m;
  std::vector<Ball> core;
  Headings headings(request, line);
  std::uint32_t number = 0;
  for (Laid& laid : clusters) {
    const double place = std::clamp(at + share_out * laid.room_m / 2, 0.0, length);
    const double start = headings.next(laid.balls, place);
    place_cluster(laid.balls, request, line, place, start);
    ++number;
    for (Ball& ball : laid.balls) ball.cluster = number;
    core.insert(core.end(), laid.balls.begin(), laid.balls.end());
    at += share_out * laid.room_m;
  }
  return core;
}

/// The pairs that press too deep.
std::vector<Pair> pressed_pairs(const std::vector<Ball>& balls) {
  std::vector<Pair> pairs = neighbours(balls, 0);
  std::erase_if(pairs, [&](const Pair& pair) { return press(balls[pair.a], balls[pair.b]) <= deepest_core; });
  return pairs;
}

/// Leaves out the smaller of every two balls that still press too deep: there are few of them by now.
void leave_out(Core& core, const std::vector<Pair>& pressed) {
  std::vector<Ball>& balls = core.balls;
  std::vector<bool> dropped(balls.size());
  for (const Pair& pair : pressed) {
    if (dropped[pair.a] || dropped[pair.b]) continue;
    const std::uint32_t smaller = balls[pair.a].radius < balls[pair.b].radius ? pair.a : pair.b;
    dropped[smaller] = true;
    ++core.left_out[balls[smaller].size];
  }
  std::size_t kept = 0;
  for (std::size_t i = 0; i < balls.size(); ++i)
    if (!dropped[i]) balls[kept++] = balls[i];
  balls.resize(kept);
}

}  // namespace

Stretch::Stretch(const Request& request, const Curve& line)
    : length_(line.length_m()),
      factors_(static_cast<std::size_t>(std::ceil(2 * length_ / (request.thickness + request.thickness_end))) + 2, 1.0),
      pressed_(factors_.size()) {}

void Stretch::widen() {
  for (std::size_t i = 0; i < factors_.size(); ++i)
    if (pressed_[i]) factors_[i] *= 1.05;
  pressed_.assign(pressed_.size(), false);
}

std::size_t Stretch::station(double along) const {
  return static_cast<std::size_t>(std::clamp(along / length_, 0.0, 1.0) * static_cast<double>(factors_.size() - 1));
}

double press(const Ball& a, const Ball& b) {
  return (a.radius + b.radius - (a.centre - b.centre).norm()) / (2 * std::min(a.radius, b.radius));
}

Core pack_core(const Request& request, const Curve& line, Stretch& stretch, int widenings) {
  const CoreSizes sizes(request);
  Core core{{}, std::vector<long>(request.mix.size())};
  std::vector<Pair> pressed;
  for (int widened = 0;; ++widened) {
    core.balls = lay_core(request, line, sizes, stretch);
    relax(core.balls, request, line);
    pressed = pressed_pairs(core.balls);
    // So few are better left out.
    if (widened == widenings || pressed.size() <= 3 + core.balls.size() / 25) break;
    for (const Pair& pair : pressed) stretch.mark_pressed(core.balls[pair.a].at);
    stretch.widen();
  }
  leave_out(core, pressed);
  for (Ball& ball : core.balls) locate(ball, line);
  return core;
}

}  // namespace quadrille::garland
