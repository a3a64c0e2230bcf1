// Spares: how many balloons more than the design shows, so that a build seldom runs short.
#pragma once

#include <cstdint>

namespace quadrille {

/// How a spare is reckoned: enough that a line runs short with a chance of at most `short_chance` when each balloon
/// fails independently with `failure_rate` while it is inflated and mounted.
/// Valid: 0 ≤ failure_rate ≤ 0.9 and 1e-12 ≤ short_chance < 1; the functions below throw std::invalid_argument outside.
struct SpareRule {
  double failure_rate = 0.02;  ///< common practice, no source
  double short_chance = 0.05;
  bool operator==(const SpareRule&) const = default;
};

/// Smallest s with P(X ≤ s) ≥ 1 − short_chance for X ~ Bin(balloons, failure_rate): spares that are taken to be sound.
/// 0 for no balloons; throws std::invalid_argument for a negative number. Good to 1e-12 in the probability up to a
/// million balloons. Source: the definition of the binomial quantile.
std::int64_t spares_if_sound(std::int64_t balloons, const SpareRule& rule);

/// The same when spares fail as often as the others: smallest s so that of balloons + s at least `balloons` are sound
/// with a chance of 1 − short_chance. The failures before the last sound one then follow the negative binomial
/// distribution. This is the number to order; it is never below spares_if_sound.
std::int64_t spares_to_order(std::int64_t balloons, const SpareRule& rule);

/// Chance that of balloons + spares, all of which may fail, fewer than `balloons` are sound: what spares_to_order keeps
/// within short_chance. 0 for no balloons, 1 for negative spares with balloons; throws as above. Good to 1e-12.
double chance_of_running_short(std::int64_t balloons, std::int64_t spares, double failure_rate);

}  // namespace quadrille
