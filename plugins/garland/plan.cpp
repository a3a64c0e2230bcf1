#include "plugins/garland/plan.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>
#include <utility>

#include "plugins/garland/fillers.hpp"
#include "plugins/garland/measure.hpp"
#include "plugins/garland/sizes.hpp"

namespace quadrille::garland {
namespace {

constexpr double thickness_well = 0.07;  ///< miss of the thickness, share of what is asked
constexpr double bare_well = 0.008;      ///< part of the line that may show
constexpr double mean_well = 0.0485;     ///< mean overlap
constexpr double shares_well = 0.012;    ///< miss of the share of a size

std::vector<long> counts_of(const std::vector<Ball>& balls, std::size_t sizes) {
  std::vector<long> counts(sizes);
  for (const Ball& ball : balls) ++counts[ball.size];
  return counts;
}

/// How far the shares of the sizes miss the mix, beyond what is well; a few balls more or less are no fault of a short
/// garland.
double shares_missed(const std::vector<long>& counts, const Request& request) {
  const auto all = static_cast<double>(std::accumulate(counts.begin(), counts.end(), 0L));
  double worst = 0;
  for (std::size_t i = 0; i < counts.size(); ++i)
    worst = std::max(worst, std::abs(static_cast<double>(counts[i]) / all - request.mix[i].share));
  return std::max(0.0, worst - std::max(shares_well, 1.5 / all));
}

/// The mean overlap beyond what is well, weighed so that it counts before all else.
double pressed_too_much(const std::vector<Ball>& balls, const Request& request) {
  return 10 * std::max(0.0, overlaps_of(balls, request).mean - mean_well);
}

/// The worst of the thickness along the line and the part of the line that shows, beyond what is well.
double looks_missed(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  const double length = line.length_m(), end = std::min(request.largest(), length / 2);
  std::vector<double> places;
  for (double at = end; at <= length - end + 1e-9; at += 0.05) places.push_back(at);
  const std::vector<double> thickness = thickness_along(balls, request, line, places);
  double worst = 0;
  for (std::size_t i = 0; i < places.size(); ++i)
    worst = std::max(worst, std::abs(thickness[i] / request.thickness_at(places[i] / length) - 1));
  const double bare = static_cast<double>(bare_stations(balls, line).size()) / std::max(1.0, std::ceil(length / 0.01));
  return std::max(0.0, worst - thickness_well) + std::max(0.0, bare - bare_well);
}

/// What to ask for so that what is asked comes out: each size the more the more it fell short, no more fillers than found
/// a crease, and looser where they press.
Request corrected(const Request& plan, const Request& request, const std::vector<Ball>& balls, bool pressed) {
  Request next = plan;
  const auto all = static_cast<double>(balls.size());
  const std::vector<long> got = counts_of(balls, request.mix.size());
  double total = 0;
  for (std::size_t i = 0; i < got.size(); ++i) {
    const double missing = request.mix[i].share - static_cast<double>(got[i]) / all;
    total += next.mix[i].share = std::max(0.2 * request.mix[i].share, plan.mix[i].share + missing);
  }
  // Of each size the same part as before serves as fillers.
  const std::vector<double> fillers_before = filler_shares(plan);
  double filler = 0;
  for (std::size_t i = 0; i < got.size(); ++i) {
    next.mix[i].share /= total;
    filler += fillers_before[i] * next.mix[i].share / plan.mix[i].share;
  }
  next.filler = std::min(filler, static_cast<double>(std::ranges::count(balls, 0u, &Ball::cluster)) / all);
  if (pressed) next.tightness *= 1.05;
  return next;
}

/// The number of balloons in all at which the shares come out, from what was got of what was wanted: the outline and the
/// line took more of some sizes than there were to be, others found no place.
double next_total(double total, const std::vector<long>& got, const std::vector<long>& wanted, const Request& request) {
  double need = 0, room = 1e300;
  for (std::size_t i = 0; i < got.size(); ++i) {
    const double whole = static_cast<double>(got[i]) / request.mix[i].share;
    if (got[i] > wanted[i]) need = std::max(need, whole);
    if (got[i] < wanted[i]) room = std::min(room, whole);
  }
  if (need > 0 && room < 1e300) return (need + room) / 2;
  return need > 0 ? (total + need) / 2 : (total + std::min(room, total)) / 2;
}

/// What is to be planned after this was got of what was wanted: where creases ran out a little less, so that all find as
/// many whatever their chance.
std::vector<long> planned(const std::vector<long>& got, const std::vector<long>& wanted) {
  std::vector<long> counts = got;
  for (std::size_t i = 0; i < got.size(); ++i)
    if (got[i] < wanted[i]) counts[i] -= got[i] / 40;
  return counts;
}

std::vector<long> least_of(const std::vector<long>& a, const std::vector<long>& b) {
  std::vector<long> least;
  for (std::size_t i = 0; i < a.size(); ++i) least.push_back(std::min(a[i], b[i]));
  return least;
}

struct Trial {
  Plan plan;
  std::vector<Ball> core;
  double missed = 1e300;  ///< what can be corrected: shares and overlaps
};

/// Packs with the shares corrected until they come out.
Trial by_shares(const Request& request, const Curve& line, std::uint32_t seed, int attempts) {
  constexpr int widenings = 2;
  Request asked = request;
  asked.seed = seed;
  Trial best{{asked, Stretch(request, line), {}, {}, 1e300, {}}, {}};
  for (int attempt = 0; attempt < attempts && best.missed > 0; ++attempt) {
    Stretch stretch(asked, line);
    const Core core = pack_core(asked, line, stretch, widenings);
    const std::vector<long> wanted = counts_with_fillers(core, asked);
    std::vector<Ball> balls = add_fillers(core.balls, wanted, wanted, asked, line);
    const std::vector<long> counts = planned(counts_of(balls, request.mix.size()), wanted);
    const double pressed = pressed_too_much(balls, request), missed = shares_missed(counts, request) + pressed;
    Request next = corrected(asked, request, balls, pressed > 0);
    if (missed < best.missed) {
      const double faults = pressed + looks_missed(balls, request, line);
      best = {
          {std::move(asked), stretch, least_of(wanted, counts), counts, faults, std::move(balls)}, core.balls, missed};
    }
    asked = std::move(next);
  }
  return best;
}

/// The same core with as many fillers of each size as make the shares come out.
void by_counts(Trial& best, const Request& request, const Curve& line) {
  constexpr int attempts = 8;
  auto total = static_cast<double>(std::accumulate(best.plan.counts.begin(), best.plan.counts.end(), 0L));
  for (int attempt = 0; attempt < attempts && best.missed > 0; ++attempt) {
    std::vector<long> wanted;
    for (const MixEntry& entry : request.mix) wanted.push_back(std::lround(total * entry.share));
    const std::vector<Ball> balls = add_fillers(best.core, wanted, wanted, best.plan.request, line);
    const std::vector<long> got = counts_of(balls, request.mix.size()), counts = planned(got, wanted);
    const double pressed = pressed_too_much(balls, request), missed = shares_missed(counts, request) + pressed;
    if (missed < best.missed) {
      best.plan.first = least_of(wanted, counts);
      best.plan.counts = counts;
      best.plan.faults = pressed + looks_missed(balls, request, line);
      best.missed = missed;
    }
    total = next_total(total, got, wanted, request);
  }
}

}  // namespace

double miss_of(const std::vector<Ball>& balls, const std::vector<long>& planned) {
  const std::vector<long> got = counts_of(balls, planned.size());
  long missed = 0;
  for (std::size_t i = 0; i < got.size(); ++i) missed += std::abs(got[i] - planned[i]);
  const double part = static_cast<double>(missed) / static_cast<double>(balls.size());
  constexpr double well = 0.003, weight = 5;  // counts matter more than looks
  return part > well ? weight * part : 0;
}

double faults_of(const std::vector<Ball>& balls, const Request& request, const Curve& line) {
  return pressed_too_much(balls, request) + looks_missed(balls, request, line);
}

Plan plan_of(const Request& request, const Curve& line) {
  // The counts of a long and even one, free on all sides, hardly depend on chance.
  constexpr double long_by_thickness = 40;
  const bool even = !request.wall && request.thickness == request.thickness_end;
  if (even && line.length_m() > long_by_thickness * request.thickness) {
    Trial own = by_shares(request, line, request.seed, 1);
    if (own.missed == 0 && own.plan.faults == 0) return std::move(own.plan);
  }
  Trial trial = by_shares(request, line, 0, 6);
  by_counts(trial, request, line);
  trial.plan.balls.clear();
  return std::move(trial.plan);
}

}  // namespace quadrille::garland
