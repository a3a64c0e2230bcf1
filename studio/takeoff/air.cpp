#include "studio/takeoff/air.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "sdk/vec.hpp"
#include "studio/model/atmosphere.hpp"
#include "studio/model/figures.hpp"

namespace quadrille {
namespace {

double inflating_altitude_m(const Site& site) {
  return site.inflating_altitude_m.value_or(site.altitude_m.value_or(0));
}

double kelvin(double celsius) { return celsius + 273.15; }

AirSum run(AirSum sum, const Inflator* inflator) {
  if (inflator == nullptr || !(inflator->litres_per_s > 0)) return sum;
  const auto nozzles = static_cast<double>(nozzles_of(*inflator));
  sum.blowing_s = sum.litres / (inflator->litres_per_s * nozzles);
  sum.watt_hours = inflator->watts * sum.blowing_s / 3600;
  return sum;
}

/// Balloons by nominal size and inflated diameter.
using Sizes = std::map<std::pair<double, double>, std::int64_t>;

}  // namespace

double balloon_litres(double diameter_m) { return pi / 6 * diameter_m * diameter_m * diameter_m * 1000; }

double litres_to_blow(double diameter_m, double air_pa, double over_pa) {
  return balloon_litres(diameter_m) * (air_pa + over_pa) / air_pa;
}

std::int64_t nozzles_of(const Inflator& inflator) { return std::clamp<std::int64_t>(inflator.nozzles, 1, 100); }

double growth(const AirAround& from, const AirAround& to) {
  const double pressures = standard_air(from.altitude_m).pressure_pa / standard_air(to.altitude_m).pressure_pa;
  return std::cbrt(kelvin(to.celsius) / kelvin(from.celsius) * pressures);
}

std::optional<Climate> climate_of(const Site& site) {
  if (!site.inflating_celsius || !site.event_celsius) return std::nullopt;
  return Climate{{*site.inflating_celsius, inflating_altitude_m(site)},
                 {*site.event_celsius, site.altitude_m.value_or(0)},
                 site.surroundings == Surroundings::outdoors};
}

AirNeed air_of(const Event& event, const EventCount& count, const House& house) {
  const Inflator* const inflator = inflator_in_use(house);
  const double over = figure_of(house, "balloon-pressure");
  AirNeed need;
  for (const auto& area : event.areas) {
    Sizes sizes;
    for (const PieceCount& piece : count.pieces)
      if (piece.area == area->id)
        for (const BalloonLine& line : piece.lines) sizes[{line.nominal_in, line.inflated_m}] += line.used;
    if (sizes.empty()) continue;
    const auto climate = climate_of(area->site);
    const double shrunk = climate ? growth(climate->event, climate->blown) : 1;
    const double air_pa = standard_air(inflating_altitude_m(area->site)).pressure_pa;
    AirSum sum;
    sum.area = area->id;
    for (const auto& [size, balloons] : sizes) {
      AirLine line{area->id, size.first, size.second, balloons, 0, size.second * shrunk};
      line.litres = static_cast<double>(balloons) * litres_to_blow(line.inflate_to_m, air_pa, over);
      sum.balloons += balloons;
      sum.litres += line.litres;
      need.lines.push_back(line);
    }
    need.all.balloons += sum.balloons;
    need.all.litres += sum.litres;
    need.areas.push_back(run(sum, inflator));
  }
  need.all = run(need.all, inflator);
  return need;
}

}  // namespace quadrille
