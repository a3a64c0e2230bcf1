#include "studio/standing/hanging.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

constexpr double sags = 1.02;  // a spine this much longer than the way between its ends hangs as a chain

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

Equilibrium hung(const Piece& piece, const std::vector<Push>& pushes) {
  Equilibrium state;
  state.outcome = Outcome::converged;
  state.reached = 1;
  state.state.shifts.assign(piece.frame.nodes.size(), Vec3::Zero());
  state.state.turns.assign(piece.frame.nodes.size(), Eigen::Quaterniond::Identity());
  state.supports.resize(piece.supports.size());

  const double spine = piece.spine.empty() ? 0 : piece.spine.back().at_m - piece.spine.front().at_m;
  if (piece.supports.size() == 2) {
    const Vec3 chord = piece.frame.nodes[piece.supports[1].node] - piece.frame.nodes[piece.supports[0].node];
    if (spine > sags * chord.norm()) {
      Vec3 load = Vec3::Zero();
      for (const Push& push : pushes) load += push.force_n;
      const ChainEnds ends = chain_ends(chord, spine, load);
      state.supports[0].force_n = ends.on_first;
      state.supports[1].force_n = ends.on_second;
      return state;
    }
  }
  for (const Push& push : pushes) {
    const auto holds = std::ranges::find(piece.supports, push.node, &Support::node);
    if (holds == piece.supports.end()) {
      state.outcome = Outcome::unstable;
      state.reached = 0;
      state.reason = "Nothing holds it at one of its points.";
      return state;
    }
    state.supports[static_cast<std::size_t>(holds - piece.supports.begin())].force_n -= push.force_n;
  }
  return state;
}

}  // namespace quadrille
