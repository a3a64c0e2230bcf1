// Quantiles by summing the distribution outwards from its mode, in multiples of the mode's own probability: no
// factorial and no power, so nothing under- or overflows however many balloons there are.
#include "studio/takeoff/spares.hpp"

#include <stdexcept>
#include <vector>

namespace quadrille {
namespace {

constexpr double negligible = 1e-24;  // of the mode; well below what the smallest allowed short_chance can see

void require_valid(std::int64_t balloons, const SpareRule& rule) {
  if (balloons < 0) throw std::invalid_argument("the number of balloons is negative");
  if (!(rule.failure_rate >= 0 && rule.failure_rate <= 0.9))
    throw std::invalid_argument("the failure rate is not between 0 and 0.9");
  if (!(rule.short_chance >= 1e-12 && rule.short_chance < 1))
    throw std::invalid_argument("the chance of running short is not between 1e-12 and 1");
}

/// Smallest s whose upper tail P(X > s) is at most `tail`, for a distribution on 0, 1, 2… with one peak at `mode` and
/// P(k + 1) / P(k) = `ratio(k)`.
template <class Ratio>
std::int64_t quantile(std::int64_t mode, double tail, const Ratio& ratio) {
  double total = 1;
  double weight = 1;
  for (std::int64_t k = mode; k > 0 && weight > negligible; --k) {
    weight /= ratio(k - 1);
    total += weight;
  }
  std::vector<double> above{1};  // weights of mode, mode + 1…
  while (above.back() > negligible) {
    const auto k = mode + static_cast<std::int64_t>(above.size()) - 1;
    above.push_back(above.back() * ratio(k));
    total += above.back();
  }
  // From the far end inwards, so that the small terms add up before the large ones.
  double beyond = 0;
  for (std::size_t i = above.size(); i-- > 0;) {
    if (beyond + above[i] > tail * total) return mode + static_cast<std::int64_t>(i);
    beyond += above[i];
  }
  weight = 1;
  for (std::int64_t k = mode; k > 0; --k) {
    weight /= ratio(k - 1);
    beyond += weight;
    if (beyond > tail * total) return k - 1;
  }
  return 0;
}

}  // namespace

std::int64_t spares_if_sound(std::int64_t balloons, const SpareRule& rule) {
  require_valid(balloons, rule);
  const double p = rule.failure_rate;
  if (balloons == 0 || p == 0) return 0;
  const auto n = static_cast<double>(balloons);
  const auto mode = static_cast<std::int64_t>((n + 1) * p);
  const auto ratio = [&](std::int64_t failures) {
    const auto k = static_cast<double>(failures);
    return (n - k) / (k + 1) * (p / (1 - p));
  };
  return quantile(mode, rule.short_chance, ratio);
}

std::int64_t spares_to_order(std::int64_t balloons, const SpareRule& rule) {
  require_valid(balloons, rule);
  const double p = rule.failure_rate;
  if (balloons == 0 || p == 0) return 0;
  const auto n = static_cast<double>(balloons);
  const auto mode = static_cast<std::int64_t>((n - 1) * p / (1 - p));
  const auto ratio = [&](std::int64_t failures) {
    const auto k = static_cast<double>(failures);
    return (n + k) / (k + 1) * p;
  };
  return quantile(mode, rule.short_chance, ratio);
}

}  // namespace quadrille
