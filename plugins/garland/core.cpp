#include "plugins/garland/core.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/grid.hpp"
#include "plugins/garland/measure.hpp"
#include "sdk/cluster.hpp"
#include "sdk/random.hpp"

namespace quadrille::garland {
namespace {

constexpr double settled = 0.035;  ///< overlap at which relaxed balloons rest, share of the smaller diameter
constexpr double skin_m = 0.03;    ///< how far balloons may move before neighbours are looked up again
constexpr int rounds = 120;

/// How far from the line the outside of the garland is meant to be, by stations along it; corrected from pass to pass
/// until the thickness comes out as asked.
struct Profile {
  std::vector<double> reach_m;
  std::vector<double> stretch;  ///< of the clusters' spacing, where they would press too deep

  static double between(const std::vector<double>& values, double share) {
    const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(values.size() - 1);
    const auto index = std::min(static_cast<std::size_t>(place), values.size() - 2);
    const double part = place - static_cast<double>(index);
    return values[index] * (1 - part) + values[index + 1] * part;
  }
  std::size_t station(double share) const {
    return static_cast<std::size_t>(std::clamp(share, 0.0, 1.0) * static_cast<double>(stretch.size() - 1) + 0.5);
  }
};

Profile asked_profile(const Request& request, const Curve& line) {
  Profile profile;
  const double mean = (request.thickness + request.thickness_end) / 2;
  const int stations = std::max(3, static_cast<int>(std::ceil(2 * line.length_m() / mean)) + 1);
  for (int i = 0; i < stations; ++i) profile.reach_m.push_back(request.thickness_at(i / (stations - 1.0)) / 2);
  profile.stretch.assign(profile.reach_m.size(), 1);
  return profile;
}

/// Where the largest ball of a cluster points, in turn. Those with one of the largest size carry the outline on both
/// sides and are seen in front; the others turn their best side to the front.
double heading(std::size_t turn, bool large, bool wall) {
  constexpr double large_turns[] = {0.5, -0.5, 0.1, 0.5, -0.5, -0.1};
  constexpr double other_turns[] = {0.1, -0.3, 0.3, -0.1};
  const double share = large ? large_turns[turn % 6] : other_turns[turn % 4];
  return pi * (wall ? 0.9 * share : share);
}

/// Directions of a cluster's balls about the line: each takes room by its diameter; on a wall within the front half.
std::vector<double> turns_of(const Request& request, const std::vector<Ball>& cluster, double start) {
  double total = 0;
  for (const Ball& ball : cluster) total += ball.radius;
  const double room = request.wall ? pi : 2 * pi;
  std::vector<double> turns;
  double used = 0;
  for (const Ball& ball : cluster) {
    const double middle = room * (used + ball.radius / 2) / total;
    turns.push_back(start + middle - room * cluster.front().radius / 2 / total);
    used += ball.radius;
  }
  if (!request.wall) return turns;
  // What points to the wall comes in again from the other side.
  for (double& turn : turns) {
    while (turn > pi / 2) turn -= pi;
    while (turn < -pi / 2) turn += pi;
  }
  return turns;
}

void place_cluster(std::vector<Ball>& cluster, const Request& request, const Curve& line, double at, double start,
                   double reach) {
  const Vec3 neck = to_nanometre(line.point(at)), axis = to_picounit(line.tangent(at));
  const std::vector<double> turns = turns_of(request, cluster, start);
  for (std::size_t place = 0; place < cluster.size(); ++place) {
    Ball& ball = cluster[place];
    const double out = std::clamp(reach - ball.radius, nearest_share * ball.radius, farthest_share * ball.radius);
    ball.at = at;
    ball.neck = neck;
    ball.axis = axis;
    ball.reach = reach;
    // Neighbours start a little before and behind each other, so that relaxing has a way to go.
    const double lean = (place % 2 == 0 ? 1 : -1) * (request.wall ? 0.6 : 0.2) * ball.radius;
    ball.centre = to_nanometre(Vec3(neck + out * direction_about(axis, turns[place]) + lean * axis));
    ball.place = static_cast<std::uint32_t>(place);
  }
}

std::vector<Ball> next_cluster(const Request& request, SizeSequence& sizes) {
  std::vector<Ball> cluster(static_cast<std::size_t>(request.core));
  for (Ball& ball : cluster) {
    ball.size = sizes.next();
    ball.radius = request.mix[ball.size].inflated_m / 2;
  }
  std::ranges::stable_sort(cluster, [](const Ball& a, const Ball& b) { return a.radius > b.radius; });
  return cluster;
}

double mean_diameter(const std::vector<Ball>& cluster) {
  double total = 0;
  for (const Ball& ball : cluster) total += 2 * ball.radius;
  return total / static_cast<double>(cluster.size());
}

/// Clusters nest at the hard spacing of their mean size; on a wall half the room is missing.
double spacing(const Request& request, double mean) {
  return request.tightness * hard_spacing(request.core, mean) * (request.wall ? 1.7 : 1.0);
}

std::vector<Ball> lay_core(const Request& request, const Curve& line, const Profile& profile) {
  std::vector<double> shares;
  const std::vector<double> fillers = filler_shares(request);
  for (std::size_t i = 0; i < request.mix.size(); ++i) shares.push_back(request.mix[i].share - fillers[i]);
  SizeSequence sizes(shares);
  Random chance(request.seed);
  std::vector<Ball> core;
  std::vector<std::vector<Ball>> clusters;
  std::vector<double> rooms;
  for (double at = 0;;) {
    std::vector<Ball> cluster = next_cluster(request, sizes);
    const double room =
        Profile::between(profile.stretch, at / line.length_m()) * spacing(request, mean_diameter(cluster));
    if (at + room > line.length_m() + 1e-9 && !clusters.empty()) break;
    at += room;
    clusters.push_back(std::move(cluster));
    rooms.push_back(room);
  }
  // What is left over at the end goes to all of them; the first and the last sit near the ends, which would show.
  constexpr double beyond = 0.2;
  double total = -beyond * (rooms.front() + rooms.back());
  for (const double room : rooms) total += room;
  const double share_out = line.length_m() / total;
  double at = -beyond * share_out * rooms.front();
  std::size_t turns[2] = {0, 0};
  for (std::size_t i = 0; i < clusters.size(); ++i) {
    const bool large = clusters[i].front().size == 0;
    const double start = heading(turns[large]++, large, request.wall) + chance.within(-0.25, 0.25);
    const double place = at + share_out * rooms[i] / 2;
    place_cluster(clusters[i], request, line, place, start, Profile::between(profile.reach_m, place / line.length_m()));
    for (Ball& ball : clusters[i]) ball.cluster = static_cast<std::uint32_t>(i + 1);
    core.insert(core.end(), clusters[i].begin(), clusters[i].end());
    at += share_out * rooms[i];
  }
  return core;
}

struct Pair {
  std::uint32_t a, b;
};

std::vector<Pair> neighbours(const std::vector<Ball>& balls, double largest) {
  Grid grid(largest + skin_m);
  std::vector<Pair> pairs;
  for (std::uint32_t i = 0; i < balls.size(); ++i) {
    grid.near(balls[i].centre, [&](std::uint32_t j) {
      const double reach = balls[i].radius + balls[j].radius + skin_m;
      if ((balls[i].centre - balls[j].centre).squaredNorm() < reach * reach) pairs.push_back({j, i});
    });
    grid.insert(balls[i].centre, i);
  }
  return pairs;
}

void part(Ball& a, Ball& b) {
  const double rest = a.radius + b.radius - 2 * settled * std::min(a.radius, b.radius);
  const Vec3 between = b.centre - a.centre;
  const double distance2 = between.squaredNorm();
  if (distance2 >= rest * rest || distance2 == 0) return;
  const double distance = std::sqrt(distance2);
  // The lighter one gives way: by their cross sections.
  const double a2 = a.radius * a.radius, b2 = b.radius * b.radius;
  const Vec3 move = between * ((rest - distance) / distance);
  a.centre -= move * (b2 / (a2 + b2));
  b.centre += move * (a2 / (a2 + b2));
}

/// Back to where neck, wall and floor let it be.
void hold(Ball& ball, const Request& request) {
  const Vec3 from_neck = ball.centre - ball.neck;
  const double distance = from_neck.norm(), most = farthest_share * ball.radius, least = nearest_share * ball.radius;
  if (distance > most) ball.centre = ball.neck + from_neck * (most / distance);
  if (distance < least && distance > 0) ball.centre = ball.neck + from_neck * (least / distance);
  // Not out of the garland: what sticks out slides along the line instead.
  const Vec3 out = (ball.centre - ball.neck) - (ball.centre - ball.neck).dot(ball.axis) * ball.axis;
  const double limit = std::max(ball.reach - ball.radius, 0.5 * ball.radius), away = out.norm();
  if (away > limit) ball.centre -= out * (0.5 * (away - limit) / away);
  if (request.wall && ball.centre.y() > request.wall_y - ball.radius) ball.centre.y() = request.wall_y - ball.radius;
  if (ball.centre.z() < ball.radius) ball.centre.z() = ball.radius;
}

double deepest(const std::vector<Ball>& balls, const std::vector<Pair>& pairs) {
  double worst = 0;
  for (const Pair& pair : pairs) worst = std::max(worst, press(balls[pair.a], balls[pair.b]));
  return worst;
}

/// Soft spheres pushed apart pair by pair, in one fixed order, by + − × ÷ √ alone.
double relax(std::vector<Ball>& balls, const Request& request) {
  std::vector<Pair> pairs = neighbours(balls, request.largest());
  for (int round = 1; round <= rounds; ++round) {
    for (const Pair& pair : pairs) part(balls[pair.a], balls[pair.b]);
    for (Ball& ball : balls) hold(ball, request);
    if (round % 20 != 0) continue;
    pairs = neighbours(balls, request.largest());
    if (deepest(balls, pairs) < 0.07) break;
  }
  for (Ball& ball : balls) ball.centre = to_nanometre(ball.centre);
  return deepest(balls, pairs);
}

}  // namespace

std::size_t SizeSequence::next() {
  ++count_;
  std::size_t best = 0;
  double most = -1e300;
  for (std::size_t i = 0; i < shares_.size(); ++i) {
    const double owed = shares_[i] / total_ * count_ - given_[i];
    if (shares_[i] > 0 && owed > most + 1e-12) {
      most = owed;
      best = i;
    }
  }
  given_[best] += 1;
  return best;
}

std::vector<double> filler_shares(const Request& request) {
  std::vector<double> shares(request.mix.size());
  double left = request.filler;
  for (std::size_t i = request.mix.size(); i-- > 0 && left > 0;) {
    // A core of the larger sizes must remain.
    shares[i] = std::min(i == 0 ? 0.6 * request.mix[i].share : request.mix[i].share, left);
    left -= shares[i];
  }
  return shares;
}

double press(const Ball& a, const Ball& b) {
  return (a.radius + b.radius - (a.centre - b.centre).norm()) / (2 * std::min(a.radius, b.radius));
}

namespace {

/// Stretches the spacing where balls press too deep; true where none do.
bool give_room(Profile& profile, const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  std::vector<double> worst(profile.stretch.size());
  bool all_well = true;
  for (const Pair& pair : neighbours(balls, request.largest())) {
    const double deep = press(balls[pair.a], balls[pair.b]);
    if (deep <= deepest_core) continue;
    all_well = false;
    double& here = worst[profile.station(balls[pair.a].at / line.length_m())];
    here = std::max(here, deep);
  }
  for (std::size_t i = 0; i < worst.size(); ++i)
    if (worst[i] > 0) profile.stretch[i] *= worst[i] > 0.2 ? 1.08 : 1.03;
  return all_well;
}

/// Leaves out the smaller of every two balls that still press too deep: there are few of them by now.
void drop_pressed(std::vector<Ball>& balls, const Request& request) {
  std::vector<bool> dropped(balls.size());
  for (const Pair& pair : neighbours(balls, request.largest())) {
    if (dropped[pair.a] || dropped[pair.b] || press(balls[pair.a], balls[pair.b]) <= deepest_core) continue;
    dropped[balls[pair.a].radius < balls[pair.b].radius ? pair.a : pair.b] = true;
  }
  std::size_t kept = 0;
  for (std::size_t i = 0; i < balls.size(); ++i)
    if (!dropped[i]) balls[kept++] = balls[i];
  balls.resize(kept);
}

/// Relaxed clusters for a profile; spaced wider where any press too deep, `attempts` times.
std::vector<Ball> pack_profile(const Request& request, const Curve& line, Profile& profile, int attempts) {
  for (int attempt = 1;; ++attempt) {
    std::vector<Ball> core = lay_core(request, line, profile);
    relax(core, request);
    if (give_room(profile, core, request, line) || attempt >= attempts) return core;
  }
}

/// Reaches farther where the garland came out too thin, and less where too thick.
void correct(Profile& profile, const std::vector<double>& measured, const Request& request) {
  for (std::size_t i = 0; i < profile.reach_m.size(); ++i) {
    const double share = static_cast<double>(i) / static_cast<double>(profile.reach_m.size() - 1);
    const auto station =
        std::min(static_cast<std::size_t>(share * static_cast<double>(measured.size())), measured.size() - 1);
    const double asked = request.thickness_at(share);
    if (measured[station] > 0) profile.reach_m[i] *= std::clamp(asked / measured[station], 0.85, 1.15);
    profile.reach_m[i] = std::clamp(profile.reach_m[i], 0.3 * asked, 0.7 * asked);
  }
}

}  // namespace

std::vector<Ball> pack_core(const Request& request, const Curve& line) {
  Profile profile = asked_profile(request, line);
  const int stations = static_cast<int>(profile.reach_m.size());
  std::vector<Ball> core;
  for (int pass = 0; pass < 3; ++pass) {
    core = pack_profile(request, line, profile, pass == 0 ? 4 : 2);
    if (pass < 2) correct(profile, thickness_along(core, request, line, stations), request);
  }
  drop_pressed(core, request);
  return core;
}

}  // namespace quadrille::garland
