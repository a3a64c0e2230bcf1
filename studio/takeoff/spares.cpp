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

/// P(X > s) of such a distribution.
template <class Ratio>
double share_above(std::int64_t s, std::int64_t mode, const Ratio& ratio) {
  double above = mode > s ? 1 : 0, upto = mode > s ? 0 : 1;
  const auto add = [&](std::int64_t k, double weight) { (k > s ? above : upto) += weight; };
  double weight = 1;
  for (std::int64_t k = mode; k > 0 && weight > negligible; --k) add(k - 1, weight /= ratio(k - 1));
  weight = 1;
  for (std::int64_t k = mode; weight > negligible; ++k) add(k + 1, weight *= ratio(k));
  return above / (above + upto);
}

/// Failures before the last sound one of n: the negative binomial distribution, as the quotient of neighbours.
class Failures {
 public:
  Failures(std::int64_t balloons, double rate) : n_(static_cast<double>(balloons)), p_(rate) {}
  std::int64_t mode() const { return static_cast<std::int64_t>((n_ - 1) * p_ / (1 - p_)); }
  double operator()(std::int64_t failures) const {
    const auto k = static_cast<double>(failures);
    return (n_ + k) / (k + 1) * p_;
  }

 private:
  double n_, p_;
};

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
  if (balloons == 0 || rule.failure_rate == 0) return 0;
  const Failures failures(balloons, rule.failure_rate);
  return quantile(failures.mode(), rule.short_chance, failures);
}

double chance_of_running_short(std::int64_t balloons, std::int64_t spares, double failure_rate) {
  require_valid(balloons, {.failure_rate = failure_rate});
  if (balloons == 0) return 0;
  if (spares < 0) return 1;
  if (failure_rate == 0) return 0;
  const Failures failures(balloons, failure_rate);
  return share_above(spares, failures.mode(), failures);
}

}  // namespace quadrille
