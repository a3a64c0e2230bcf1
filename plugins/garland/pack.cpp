#include "plugins/garland/pack.hpp"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <utility>

#include "plugins/garland/core.hpp"
#include "plugins/garland/fillers.hpp"
#include "plugins/garland/plan.hpp"

namespace quadrille::garland {

std::vector<Ball> pack(const Request& request, const Curve& line) {
  Plan plan = plan_of(request, line);
  if (!plan.balls.empty()) return std::move(plan.balls);
  // Chance weighs more in a short garland, and packing that once more costs little.
  const std::uint32_t attempts = std::accumulate(plan.counts.begin(), plan.counts.end(), 0L) < 400 ? 12 : 6;
  std::vector<Ball> best;
  double least = 1e300;
  for (std::uint32_t attempt = 0; attempt < attempts && least > 0; ++attempt) {
    plan.request.seed = request.seed + attempt * 0x9E3779B9u;
    Core core = pack_core(plan.request, line, plan.stretch, 0);
    std::vector<Ball> balls = add_fillers(std::move(core.balls), plan.first, plan.counts, plan.request, line);
    // Some asks cannot be met: a garland is no worse for it than any other.
    const double faults = miss_of(balls, plan.counts) + std::max(0.0, faults_of(balls, request, line) - plan.faults);
    if (faults >= least) continue;
    least = faults;
    best = std::move(balls);
  }
  return best;
}

}  // namespace quadrille::garland
