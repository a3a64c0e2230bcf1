#include "studio/standing/gust_limit.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>
#include <vector>

namespace quadrille {
namespace {

constexpr int first_step = 370;  // 2 m/s
constexpr int stride = 30;       // a third

bool fails(const WindAnswer& answer) { return answer.utilisation() > 1; }

/// From one direction: the highest number that it bears, −1 for none, and what fails above; `cap` where it bears that.
struct Borne {
  int bears = -1;
  std::optional<WindAnswer> failed;
};

Borne borne_from(StandingCase& its, double direction_deg, int cap) {
  Borne borne;
  int fails_at = cap + 1;
  for (int step = first_step; borne.bears < cap; step += stride) {
    const int number = std::min(step, cap);
    WindAnswer next = its.in_wind(gust_of_number(number), direction_deg);
    if (fails(next)) {
      fails_at = number;
      borne.failed = std::move(next);
      break;
    }
    borne.bears = number;
  }
  while (borne.failed && fails_at - borne.bears > 1) {
    const int between = borne.bears + (fails_at - borne.bears) / 2;
    WindAnswer next = its.in_wind(gust_of_number(between), direction_deg);
    if (fails(next)) {
      fails_at = between;
      borne.failed = std::move(next);
    } else {
      borne.bears = between;
    }
  }
  return borne;
}

GustLimit limit_from(StandingCase& its, const std::vector<double>& directions) {
  const WindAnswer& rest = its.at_rest();
  if (fails(rest)) return {0, false, *worst_of(rest.checks), true};
  GustLimit limit{highest_gust_m_s, true, {}, false};
  int cap = top_gust_number;
  for (const double direction : directions) {
    const Borne borne = borne_from(its, direction, cap);
    if (!borne.failed) continue;
    cap = borne.bears;
    limit = {cap < 0 ? 0 : gust_of_number(cap), false, *worst_of(borne.failed->checks), false};
    if (cap < 0) break;
  }
  return limit;
}

}  // namespace

GustLimit limit_of(StandingCase& its) { return limit_from(its, wind_directions()); }

GustLimit limit_above(StandingCase& its, double above_m_s, double first_deg) {
  std::vector<double> directions{first_deg};
  std::ranges::remove_copy(wind_directions(), std::back_inserter(directions), first_deg);
  for (const double direction : directions) {
    const WindAnswer answer = its.in_wind(std::min(above_m_s, highest_gust_m_s), direction);
    if (fails(answer)) return {0, false, *worst_of(answer.checks), false};
    if (!(above_m_s > 0)) break;
  }
  return limit_from(its, directions);  // what governs is found first, and bounds the work on the others
}

}  // namespace quadrille
