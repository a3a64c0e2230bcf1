#include "studio/labour/calibration.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>
#include <string_view>
#include <utility>

#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

constexpr double jobs_for_half_trust = 2;

struct Timed {
  double ratio, weight;
};

double seconds_in(const std::map<std::string, double, std::less<>>& seconds, std::string_view key) {
  const auto found = seconds.find(key);
  return found == seconds.end() || !std::isfinite(found->second) ? 0 : found->second;
}

/// What the rate alone takes, without the air where it is about inflating.
std::optional<Timed> timed_in(const JobRecord& job, const std::string& key) {
  double planned = seconds_in(job.planned_s, key), actual = seconds_in(job.actual_s, key);
  if (planned <= 0 || actual <= 0) return std::nullopt;
  if (constexpr std::string_view inflating = "inflate-"; key.starts_with(inflating)) {
    const double air = seconds_in(job.planned_s, "air-" + key.substr(inflating.size()));
    planned -= air;
    actual = std::max(actual - air, 0.0);
    if (planned <= 0) return std::nullopt;
  }
  return Timed{actual / planned, planned};
}

double sum_of_weights(const std::vector<Timed>& timed) {
  return std::accumulate(timed.begin(), timed.end(), 0.0, [](double sum, const Timed& t) { return sum + t.weight; });
}

double weighted_median(std::vector<Timed> timed) {
  std::ranges::sort(timed, {}, &Timed::ratio);
  const double half = sum_of_weights(timed) / 2;
  double reached = 0;
  for (std::size_t i = 0; i + 1 < timed.size(); ++i) {
    reached += timed[i].weight;
    if (std::abs(reached - half) <= 1e-9 * half) return (timed[i].ratio + timed[i + 1].ratio) / 2;
    if (reached > half) return timed[i].ratio;
  }
  return timed.back().ratio;
}

double trust_of(const std::vector<Timed>& timed) {
  double squares = 0;
  for (const Timed& t : timed) squares += t.weight * t.weight;
  const double sum = sum_of_weights(timed), jobs = sum * sum / squares;
  return jobs / (jobs + jobs_for_half_trust);
}

double to_three_digits(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number, std::chars_format::scientific, 2);
  std::from_chars(text, end.ptr, number);
  return number;
}

bool is_speed(const Rate& rate) {
  const std::string_view unit = rate.unit;
  return unit.ends_with("/s") || unit.ends_with("/h");
}

/// True for rates that a watch can be held against; loads and heights are not among them.
bool is_learned(const Rate& rate) {
  const std::string_view unit = rate.unit;
  return is_speed(rate) || unit == "s" || unit.starts_with("s/");
}

}  // namespace

JobRecord record_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                    const WorkOptions& options) {
  House standard = house;
  std::erase_if(standard.rates, [](const auto& held) {
    const Rate* const row = find_rate(held.first);
    return row != nullptr && is_learned(*row);
  });
  JobRecord record;
  record.date = event.date;
  record.title = event.title;
  record.planned_s = seconds_by_rate(tasks_of(event, built, count, standard, options).tasks);
  return record;
}

std::vector<CalibratedRate> calibrated_rates(const House& house) {
  std::vector<CalibratedRate> rates;
  for (const Rate& row : all_rates()) {
    if (!is_learned(row)) continue;
    std::vector<Timed> timed;
    for (const JobRecord& job : house.jobs)
      if (const auto one = timed_in(job, row.key)) timed.push_back(*one);
    if (timed.empty()) continue;
    CalibratedRate rate;
    rate.key = row.key;
    rate.held = rate_of(house, row.key);
    rate.ratio = weighted_median(timed);
    rate.trust = trust_of(timed);
    rate.jobs = std::ssize(timed);
    const double factor = 1 + rate.trust * (rate.ratio - 1);
    const double wanted = is_speed(row) ? row.standard / factor : row.standard * factor;
    rate.proposed = std::clamp(to_three_digits(wanted), row.least, row.most);
    rates.push_back(std::move(rate));
  }
  std::ranges::sort(rates, {}, &CalibratedRate::key);
  return rates;
}

House with_rates(House house, const std::vector<CalibratedRate>& rates) {
  for (const CalibratedRate& rate : rates) {
    const Rate* const row = find_rate(rate.key);
    if (row != nullptr && rate.proposed == row->standard)
      house.rates.erase(rate.key);
    else
      house.rates.insert_or_assign(rate.key, rate.proposed);
  }
  return house;
}

}  // namespace quadrille
