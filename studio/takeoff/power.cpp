#include "studio/takeoff/power.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

#include "sdk/number.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

const Area* find_area(const Event& event, const std::string& id) {
  for (const auto& area : event.areas)
    if (area->id == id) return &*area;
  return nullptr;
}

std::string amperes(double amps) { return print_fixed(amps, 1) + " A"; }
std::string volts(double volts) { return print_fixed(volts, 0) + " V"; }
std::string percent(double share) { return print_fixed(100 * share, 1) + " %"; }
std::string watts_up_to(double watts) { return print_fixed(std::ceil(watts / 50) * 50, 0) + " W"; }

class PowerCheck {
 public:
  PowerCheck(const Event& event, const House& house)
      : event_(event),
        house_(house),
        crew_(event.terms.crew.value_or(house.crew)),
        allowed_drop_(figure_of(house, "voltage-drop")) {}

  void check(const AreaPower& power) {
    const Area* const area = find_area(event_, power.area);
    if (area == nullptr) return;
    power_ = &power;
    if (!power.cord_m)
      without_outlet();
    else if (!has_cord(power))
      too_far(*area);
    else
      cord();
    if (area->site.surroundings == Surroundings::outdoors)
      say(Weight::note, "ground-fault", "outlet-m", "The inflator runs outdoors: a damp cord can kill.",
          "Plug it into a ground-fault device (GFCI, RCD), and test that before use.");
    circuit();
  }

  Findings take() { return std::move(findings_); }

 private:
  void say(Weight weight, const char* code, const char* key, std::string text, std::string remedy) {
    findings_.push_back({weight, code, power_->area, {}, key, std::move(text), std::move(remedy)});
  }

  void without_outlet() {
    say(Weight::warning, "no-outlet-known", "outlet-m",
        "No outlet is known: the inflator draws " + watts_up_to(power_->watts) + " for " +
            print_running(power_->running_s) + " and uses " + print_watt_hours(power_->watt_hours) + ".",
        "Ask for the distance to an outlet, or bring " + print_own_power(*power_) + ".");
  }

  void too_far(const Area& area) {
    const PowerCord& best = awg_cords().back();
    const double drop = voltage_drop(power_->amps, best.ohm_per_m, *power_->cord_m) / power_->volts;
    say(Weight::warning, "outlet-too-far", "outlet-m",
        "The outlet is " + print_length(area.site.outlet_m.value_or(0), lengths_in(event_.units)) +
            " away: no cord bears " + amperes(power_->amps) + " so far within " + percent(allowed_drop_) +
            " of voltage drop; " + best.name + " loses " + percent(drop) + ".",
        "Inflate nearer to the outlet, or bring " + print_own_power(*power_) + ".");
  }

  void cord() {
    const auto of = [](const PowerCord* cord, double drop) {
      return cord == nullptr ? std::string() : std::string(cord->name) + " (loses " + percent(drop) + ")";
    };
    std::string cords = of(power_->awg, power_->awg_drop);
    const std::string metric = of(power_->metric, power_->metric_drop);
    if (!metric.empty()) cords += (cords.empty() ? "" : " or ") + metric;
    say(Weight::note, "cord", "outlet-m",
        "The inflator draws " + amperes(power_->amps) + " at " + volts(power_->volts) + " over a cord of " +
            print_cord(*power_, event_.units) + ".",
        "Bring a three-wire outdoor cord of at least " + cords + ".");
  }

  void circuit() {
    const double gives = circuit_amps(power_->volts, house_);
    // A house may say that its inflator draws next to nothing: more than people are on the job are not counted.
    const auto inflators = static_cast<std::int64_t>(std::min(gives / power_->amps, static_cast<double>(crew_)));
    if (inflators == 0)
      say(Weight::warning, "circuit-overloaded", "outlet-m",
          "One inflator draws " + amperes(power_->amps) + ", and a usual circuit gives " + amperes(gives) +
              " for long: its breaker may trip.",
          "Ask for a circuit that bears it and nothing else, or take a smaller inflator.");
    else if (inflators < crew_)
      say(Weight::note, "inflators-share-circuit", "outlet-m",
          "A usual circuit gives " + amperes(gives) + " for long: enough for " + std::to_string(inflators) +
              (inflators == 1 ? " inflator" : " inflators") + " at " + amperes(power_->amps) + " each, and " +
              std::to_string(crew_) + " people work here.",
          "Run each further inflator from a circuit of its own, with nothing else on it.");
  }

  const Event& event_;
  const House& house_;
  const std::int64_t crew_;
  const double allowed_drop_;
  const AreaPower* power_ = nullptr;
  Findings findings_;
};

}  // namespace

bool has_cord(const AreaPower& power) { return power.cord_m && (power.awg != nullptr || power.metric != nullptr); }

std::string print_own_power(const AreaPower& power) {
  return "a generator or an inverter of " + watts_up_to(power.generator_w) + ", or a battery of " +
         print_watt_hours(power.battery_wh) + " with such an inverter";
}

std::string print_cord(const AreaPower& power, Units units) {
  constexpr double tiny = 1e-9;
  const double metres = power.cord_m.value_or(0);
  return units == Units::metric
             ? print_fixed(std::ceil(metres - tiny), 0) + " m"
             : print_length(std::ceil(metres / metres_per_foot - tiny) * metres_per_foot, LengthStyle::feet_inches);
}

std::string print_gauges(const AreaPower& power, Units units) {
  const PowerCord* const own = units == Units::feet ? power.awg : power.metric;
  const PowerCord* const other = units == Units::feet ? power.metric : power.awg;
  return own != nullptr ? own->name : other != nullptr ? other->name : "";
}

double circuit_amps(double volts, const House& house) {
  return figure_of(house, volts < 150 ? "circuit-120v" : "circuit-230v") * figure_of(house, "circuit-share");
}

std::vector<AreaPower> power_of(const Event& event, const AirNeed& air, const House& house) {
  std::vector<AreaPower> list;
  const Inflator* const inflator = inflator_in_use(house);
  if (inflator == nullptr || !(inflator->watts > 0) || !(inflator->volts > 0)) return list;
  const double share = figure_of(house, "voltage-drop");
  for (const AirSum& sum : air.areas) {
    AreaPower& power = list.emplace_back();
    power.area = sum.area;
    power.watts = inflator->watts;
    power.volts = inflator->volts;
    power.amps = inflator->watts / inflator->volts / figure_of(house, "power-factor");
    power.running_s = sum.blowing_s;
    power.watt_hours = sum.watt_hours;
    power.generator_w = power.watts * figure_of(house, "generator-margin");
    power.battery_wh = power.watt_hours * figure_of(house, "battery-margin");
    const Area* const area = find_area(event, sum.area);
    if (area == nullptr || !area->site.outlet_m) continue;
    power.cord_m = *area->site.outlet_m * figure_of(house, "cord-slack");
    const auto choose = [&](std::span<const PowerCord> cords, const PowerCord*& cord, double& drop) {
      cord = thinnest_cord(cords, power.amps, power.volts, *power.cord_m, share);
      if (cord != nullptr) drop = voltage_drop(power.amps, cord->ohm_per_m, *power.cord_m) / power.volts;
    };
    choose(awg_cords(), power.awg, power.awg_drop);
    choose(metric_cords(), power.metric, power.metric_drop);
  }
  return list;
}

Findings power_findings(const Event& event, const std::vector<AreaPower>& power, const AirNeed& air,
                        const House& house) {
  Findings findings;
  if (inflator_in_use(house) == nullptr && air.all.balloons > 0)
    findings.push_back(
        {Weight::note,
         "no-inflator",
         {},
         {},
         "inflator",
         "The house has no inflator: neither the time to blow the balloons up nor the power is reckoned.",
         "Put the inflator you use into the house."});
  PowerCheck check(event, house);
  for (const AreaPower& area : power) check.check(area);
  Findings of_areas = check.take();
  findings.insert(findings.end(), std::make_move_iterator(of_areas.begin()), std::make_move_iterator(of_areas.end()));
  return findings;
}

}  // namespace quadrille
