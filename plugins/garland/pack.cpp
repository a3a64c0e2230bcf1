#include "plugins/garland/pack.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/core.hpp"
#include "plugins/garland/fillers.hpp"
#include "plugins/garland/sizes.hpp"

namespace quadrille::garland {
namespace {

/// The part of all balls that each size has.
std::vector<double> shares_of(const std::vector<Ball>& balls, std::size_t sizes) {
  std::vector<double> shares(sizes);
  for (const Ball& ball : balls) shares[ball.size] += 1.0 / static_cast<double>(balls.size());
  return shares;
}

double worst_miss(const std::vector<double>& got, const Request& request) {
  double worst = 0;
  for (std::size_t i = 0; i < got.size(); ++i) worst = std::max(worst, std::abs(got[i] - request.mix[i].share));
  return worst;
}

/// What to ask for so that what is asked comes out: each size the more the more it fell short, and no more fillers than
/// found a crease.
Request corrected(const Request& plan, const Request& request, const std::vector<Ball>& balls) {
  Request next = plan;
  const std::vector<double> got = shares_of(balls, request.mix.size());
  double total = 0;
  for (std::size_t i = 0; i < got.size(); ++i) {
    next.mix[i].share = std::max(0.2 * request.mix[i].share, plan.mix[i].share + request.mix[i].share - got[i]);
    total += next.mix[i].share;
  }
  // Of each size the same part as before serves as fillers.
  const std::vector<double> fillers_before = filler_shares(plan);
  double filler = 0;
  for (std::size_t i = 0; i < got.size(); ++i) {
    next.mix[i].share /= total;
    filler += fillers_before[i] * next.mix[i].share / plan.mix[i].share;
  }
  const auto fillers = static_cast<double>(std::ranges::count(balls, 0u, &Ball::cluster));
  next.filler = std::min(filler, fillers / static_cast<double>(balls.size()));
  return next;
}

}  // namespace

std::vector<Ball> pack(const Request& request, const Curve& line) {
  constexpr double well = 0.012;
  constexpr int attempts = 6;
  Request plan = request;
  std::vector<Ball> best;
  double least = 1e300;
  for (int attempt = 0; attempt < attempts; ++attempt) {
    std::vector<Ball> balls = add_fillers(pack_core(plan, line), plan, line);
    const double miss = worst_miss(shares_of(balls, request.mix.size()), request);
    plan = corrected(plan, request, balls);
    if (miss < least) {
      least = miss;
      best = std::move(balls);
    }
    // A few balls more or less are no fault of a short garland.
    if (least <= std::max(well, 1.5 / static_cast<double>(best.size()))) break;
  }
  return best;
}

}  // namespace quadrille::garland
