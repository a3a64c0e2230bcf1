#include "studio/standing/hanging.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

/// Solves sinh(x)/x = ratio for x > 0; `ratio` above 1.
double solve_sinh_ratio(double ratio) {
  double low = 0, high = 1;
  while (std::sinh(high) / high < ratio) high *= 2;
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (std::sinh(middle) / middle < ratio ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace

ChainEnds chain_ends(const Vec3& from_first_to_second, double length_m, const Vec3& load_n) {
  const double load = load_n.norm();
  if (!(load > 0)) return {};
  const double length = std::max(length_m, 1.001 * from_first_to_second.norm());
  const Vec3 down = load_n / load;
  const double drop = from_first_to_second.dot(down);
  const Vec3 level = from_first_to_second - drop * down;
  const double apart = level.norm();
  const double per_m = load / length;
  // With no way between the ends each holds the part that hangs on it: the higher end more.
  if (apart < 1e-9 * length) {
    const double on_first = per_m * (length + drop) / 2;
    return {-on_first * down, -(load - on_first) * down};
  }
  const double half = solve_sinh_ratio(std::sqrt(length * length - drop * drop) / apart);  // half the way by a
  const double thrust = per_m * apart / (2 * half);
  const double on_first = per_m / 2 * (length + drop / std::tanh(half));
  const Vec3 inwards = level / apart;
  return {-on_first * down - thrust * inwards, -(load - on_first) * down + thrust * inwards};
}

namespace {

/// How far along the spine its point nearest to `place` is [m].
double along_spine_m(const Piece& piece, const Vec3& place) {
  const auto nearest = std::ranges::min_element(
      piece.spine, {}, [&](const SpinePoint& point) { return (point.point - place).squaredNorm(); });
  return nearest->at_m;
}

/// The pull along the way between two hooks in a row, on the first: what a slack line between them adds to each of them
/// beside its half of the load. It hangs slacker than `slack` where its spine does.
Vec3 pull_between(const Piece& piece, const Support& first, const Support& second, const Vec3& load_n, double slack) {
  const Vec3& from = piece.frame.nodes[first.node];
  const Vec3& to = piece.frame.nodes[second.node];
  const Vec3 chord = to - from;
  if (!(load_n.norm() > 0) || !(chord.norm() > 0)) return Vec3::Zero();
  const double spine = std::abs(along_spine_m(piece, to) - along_spine_m(piece, from));
  const Vec3 down = load_n.normalized();
  const Vec3 level = chord - chord.dot(down) * down;
  if (level.norm() < 0.05 * chord.norm()) return Vec3::Zero();  // one hangs below the other
  const ChainEnds ends = chain_ends(chord, std::max(spine, (1 + slack) * chord.norm()), load_n);
  const double thrust = -ends.on_first.dot(level) / level.norm();
  return -thrust / level.norm() * chord;
}

}  // namespace

Equilibrium hung(const Piece& piece, const std::vector<Push>& pushes, double slack) {
  Equilibrium state;
  state.outcome = Outcome::converged;
  state.reached = 1;
  state.state.shifts.assign(piece.frame.nodes.size(), Vec3::Zero());
  state.state.turns.assign(piece.frame.nodes.size(), Eigen::Quaterniond::Identity());
  state.supports.resize(piece.supports.size());

  std::vector<Vec3> carried(piece.supports.size(), Vec3::Zero());
  for (const Push& push : pushes) {
    const auto holds = std::ranges::find(piece.supports, push.node, &Support::node);
    if (holds == piece.supports.end()) {
      state.outcome = Outcome::unstable;
      state.reached = 0;
      state.reason = "Nothing holds it at one of its points.";
      return state;
    }
    carried[static_cast<std::size_t>(holds - piece.supports.begin())] += push.force_n;
  }
  const std::size_t hooks = piece.supports.size();
  if (hooks == 2 && !piece.spine.empty()) {
    const Vec3 chord = piece.frame.nodes[piece.supports[1].node] - piece.frame.nodes[piece.supports[0].node];
    const double spine = piece.spine.back().at_m - piece.spine.front().at_m;
    const ChainEnds ends = chain_ends(chord, spine, carried[0] + carried[1]);
    state.supports[0].force_n = ends.on_first;
    state.supports[1].force_n = ends.on_second;
    return state;
  }
  for (std::size_t i = 0; i < hooks; ++i) state.supports[i].force_n = -carried[i];
  if (piece.spine.empty()) return state;
  for (std::size_t i = 0; i + 1 < hooks; ++i) {
    // What an end carries hangs in its one field, what another hook carries half on either side.
    const Vec3 load = (i == 0 ? 1 : 0.5) * carried[i] + (i + 2 == hooks ? 1 : 0.5) * carried[i + 1];
    const Vec3 pull = pull_between(piece, piece.supports[i], piece.supports[i + 1], load, slack);
    state.supports[i].force_n += pull;
    state.supports[i + 1].force_n -= pull;
  }
  return state;
}

}  // namespace quadrille
