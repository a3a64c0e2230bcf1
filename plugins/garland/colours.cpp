#include "plugins/garland/colours.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "plugins/garland/grid.hpp"
#include "sdk/random.hpp"

namespace quadrille::garland {
namespace {

/// What part of the balloons at a place of the line each slot should have.
std::vector<double> shares_at(const Request& request, double share, double jitter) {
  const auto slots = static_cast<std::size_t>(request.slots);
  std::vector<double> shares(slots, request.flow == Flow::scattered ? 1.0 / request.slots : 0.0);
  if (request.flow == Flow::scattered || slots == 1) return std::vector<double>(slots, 1.0 / request.slots);
  if (request.flow == Flow::blocks) {
    // Ragged edges: a block begins a little sooner here and later there.
    const double place = std::clamp(share + 0.02 * jitter, 0.0, 0.999999) * request.slots;
    shares[static_cast<std::size_t>(place)] = 1;
    return shares;
  }
  const double place = std::clamp(share, 0.0, 1.0) * (request.slots - 1);
  const auto from = std::min(static_cast<std::size_t>(place), slots - 2);
  shares[from] = 1 - (place - static_cast<double>(from));
  shares[from + 1] = place - static_cast<double>(from);
  return shares;
}

}  // namespace

void colour(std::vector<Ball>& balls, const Request& request, const Curve& line) {
  Random chance(request.seed + 0x51ED27u);
  std::vector<std::uint32_t> order(balls.size());
  std::iota(order.begin(), order.end(), 0u);
  std::ranges::stable_sort(order, [&](std::uint32_t a, std::uint32_t b) { return balls[a].at < balls[b].at; });
  Grid coloured(1.1 * request.largest(), balls.size());
  std::vector<double> owed(static_cast<std::size_t>(request.slots));
  for (const std::uint32_t index : order) {
    Ball& ball = balls[index];
    const std::vector<double> shares = shares_at(request, ball.at / line.length_m(), chance.within(-1, 1));
    std::vector<int> near(owed.size());
    coloured.near(ball.centre, [&](std::uint32_t other) {
      const double reach = 1.1 * (ball.radius + balls[other].radius);
      if ((balls[other].centre - ball.centre).squaredNorm() < reach * reach) ++near[balls[other].slot];
      return false;
    });
    std::size_t best = 0;
    double most = -1e300;
    for (std::size_t slot = 0; slot < owed.size(); ++slot) {
      owed[slot] += shares[slot];
      if (shares[slot] <= 0) continue;
      // Owed first, then what has no neighbour of its own, then chance.
      const double wish = owed[slot] - 0.45 * near[slot] + 0.9 * chance.unit();
      if (wish > most) {
        most = wish;
        best = slot;
      }
    }
    owed[best] -= 1;
    ball.slot = static_cast<std::uint32_t>(best);
    coloured.insert(ball.centre, index);
  }
  // Accents: evenly along the line, among what is seen in front.
  double due = 0;
  for (const std::uint32_t index : order) {
    Ball& ball = balls[index];
    due += request.accents;
    const bool in_front = ball.centre.y() < line.point(ball.at).y() + 1e-9;
    if (due < 1 || !in_front) continue;
    due -= 1;
    ball.slot = request.accent_slot;
    ball.role = Role::accent;
  }
}

}  // namespace quadrille::garland
