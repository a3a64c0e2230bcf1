#include "plugins/garland/surplus.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "plugins/garland/relax.hpp"

namespace quadrille::garland {
namespace {

/// Which balls each touches.
std::vector<std::vector<std::uint32_t>> touching(const std::vector<Ball>& balls) {
  std::vector<std::vector<std::uint32_t>> touching(balls.size());
  for (const Pair& pair : neighbours(balls, 0)) {
    touching[pair.a].push_back(pair.b);
    touching[pair.b].push_back(pair.a);
  }
  return touching;
}

/// Which balls carry the outline, of those that are still there.
class Carriers {
 public:
  explicit Carriers(const std::vector<Ball>& balls) : balls_(balls), order_(balls.size()), rank_(balls.size()) {
    std::iota(order_.begin(), order_.end(), 0u);
    std::ranges::stable_sort(order_, {}, [&](std::uint32_t i) { return balls[i].along; });
    for (std::uint32_t rank = 0; rank < order_.size(); ++rank) rank_[order_[rank]] = rank;
  }

  /// True where no other ball nearby reaches as far out on the side of this one, nor to the outline itself.
  bool is_alone(std::uint32_t ball, double half, const std::vector<bool>& gone) const {
    constexpr double well_inside = 0.7, at_outline = 0.97, nearby = 0.35;
    const double reach = reach_of(balls_[ball], balls_[ball].off);
    if (reach < well_inside * half) return false;
    const auto replaces = [&](std::uint32_t other) {
      return !gone[other] && reach_of(balls_[other], balls_[ball].off) >= std::min(reach, at_outline * half);
    };
    const auto is_near = [&](std::uint32_t other) {
      return std::abs(balls_[other].along - balls_[ball].along) < nearby * half;
    };
    for (std::size_t k = rank_[ball]; k-- > 0 && is_near(order_[k]);)
      if (replaces(order_[k])) return false;
    for (std::size_t k = rank_[ball] + 1; k < order_.size() && is_near(order_[k]); ++k)
      if (replaces(order_[k])) return false;
    return true;
  }

 private:
  static double reach_of(const Ball& ball, double side) { return (side < 0 ? -ball.off : ball.off) + ball.radius; }

  const std::vector<Ball>& balls_;
  std::vector<std::uint32_t> order_, rank_;
};

}  // namespace

void take_out(std::vector<Ball>& balls, std::vector<long> surplus, const Request& request, const Curve& line) {
  if (std::ranges::none_of(surplus, [](long more) { return more > 0; })) return;
  const auto touched = touching(balls);
  std::vector<std::size_t> touches(balls.size());
  for (std::size_t i = 0; i < balls.size(); ++i) touches[i] = touched[i].size();
  const Carriers carriers(balls);
  std::vector<bool> gone(balls.size());
  for (auto i = static_cast<std::uint32_t>(balls.size()); i-- > 0 && balls[i].cluster == 0;) {
    const Ball& ball = balls[i];
    if (surplus[ball.size] <= 0 || std::abs(ball.off) < ball.radius) continue;
    const bool holds = std::ranges::any_of(touched[i], [&](std::uint32_t other) {
      return !gone[other] && balls[other].cluster == 0 && touches[other] <= 2;
    });
    if (holds || carriers.is_alone(i, request.thickness_at(ball.along / line.length_m()) / 2, gone)) continue;
    gone[i] = true;
    --surplus[ball.size];
    for (const std::uint32_t other : touched[i]) --touches[other];
  }
  std::size_t kept = 0;
  for (std::size_t i = 0; i < balls.size(); ++i)
    if (!gone[i]) balls[kept++] = balls[i];
  balls.resize(kept);
}

}  // namespace quadrille::garland
