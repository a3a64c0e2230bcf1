// Cords: what their conductors resist, how much voltage they lose, how much current they bear.
#pragma once

#include <span>

namespace quadrille {

/// Diameter [m] of a solid conductor of an American wire gauge, 0.005 in · 92^((36 − n)/39), n from -3 (0000) to 40.
/// Source: ASTM B258.
double awg_diameter_m(int gauge);

/// Resistance [ohm/m] of a copper conductor of `area_m2` (above 0) at a temperature: 1/58 µΩm at 20 °C, rising by 0.393 %
/// of that with each kelvin. Source: IEC 60028, annealed copper, from memory.
double copper_ohm_per_m(double area_m2, double celsius);

/// Volts lost in a two-wire cord: 2 · I · R · L, for the current [A], the resistance of one conductor [ohm/m] and the
/// length one way [m].
double voltage_drop(double amps, double ohm_per_m, double one_way_m);

/// A size of flexible cord with two current-carrying conductors.
struct PowerCord {
  const char* name;   ///< "12 AWG", "2.5 mm²"
  double area_mm2;    ///< of one conductor
  double ohm_per_m;   ///< of one, warm at 75 °C
  double ampacity_a;  ///< that it bears
  const char* source;
};

/// By American wire gauge, thinnest first: 18 to 10.
std::span<const PowerCord> awg_cords();
/// By metric section, thinnest first: 0.75 to 6 mm².
std::span<const PowerCord> metric_cords();

/// The thinnest of `cords` that bears `amps` and loses at most `share` of `volts` over `one_way_m`; null where none does.
const PowerCord* thinnest_cord(std::span<const PowerCord> cords, double amps, double volts, double one_way_m,
                               double share);

}  // namespace quadrille
