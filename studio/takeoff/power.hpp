// Power for the inflator: what it draws, which cord reaches it, and what serves where there is no outlet.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/power_cord.hpp"

namespace quadrille {

/// How an inflator in one area is fed.
struct AreaPower {
  std::string area;  ///< id
  double watts = 0, volts = 0;
  double amps = 0;                 ///< watts ÷ volts ÷ the figure "power-factor"
  double running_s = 0;            ///< for the area's balloons
  double watt_hours = 0;           ///< drawn meanwhile
  std::optional<double> cord_m;    ///< to the outlet, by the figure "cord-slack"; nothing where no outlet is known
  const PowerCord* awg = nullptr;  ///< the thinnest cord of each kind that serves; null where none does, or no outlet
  const PowerCord* metric = nullptr;     ///< is known
  double awg_drop = 0, metric_drop = 0;  ///< shares of the voltage that these lose
  double generator_w = 0;                ///< of a generator or an inverter, by the figure "generator-margin"
  double battery_wh = 0;                 ///< of a battery, by the figure "battery-margin"
};

/// True where the way to the outlet is known, and a cord serves over it.
bool has_cord(const AreaPower& power);

/// "16 AWG" or "1.5 mm²": the thinnest cord that serves, as it is sold where the units are used; the other where there is
/// none of these; empty where none serves.
std::string print_gauges(const AreaPower& power, Units units);

/// The cord to bring to the outlet, to a whole metre or foot that reaches it: "35 m", "68'". has_cord() must hold.
std::string print_cord(const AreaPower& power, Units units);

/// What serves where no cord does: "a generator or an inverter of 1650 W, or a battery of 90 Wh with such an inverter".
std::string print_own_power(const AreaPower& power);

/// For each area with balloons, in the order of the event; empty where the inflator in use draws no power, or the house
/// has none.
std::vector<AreaPower> power_of(const Event& event, const AirNeed& air, const House& house);

/// - "no-inflator" (note): the house has no inflator, so neither time nor power are reckoned;
/// - "no-outlet-known" (warning): no distance to an outlet is said, and what battery or generator would serve;
/// - "outlet-too-far" (warning): no cord keeps within the figure "voltage-drop" over that distance;
/// - "cord" (note): the cord that serves;
/// - "ground-fault" (note): outdoors, wherever a cord runs;
/// - "circuit-overloaded" (warning): one inflator alone draws more than a circuit gives for long;
/// - "inflators-share-circuit" (note): more people are on the job than a circuit carries inflators for.
Findings power_findings(const Event& event, const std::vector<AreaPower>& power, const AirNeed& air,
                        const House& house);

/// What one circuit gives for long [A] at this voltage: the figures "circuit-120v" or "circuit-230v" (from 150 V) and
/// "circuit-share".
double circuit_amps(double volts, const House& house);

}  // namespace quadrille
