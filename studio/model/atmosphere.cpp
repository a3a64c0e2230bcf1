#include "studio/model/atmosphere.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/material.hpp"

namespace quadrille {
namespace {

// ISO 2533:1975, with the standard gravity.
constexpr double earth_radius_m = 6'356'766, air_constant = 287.05287, lapse_k_m = 0.0065;
constexpr double sea_level_k = 288.15, sea_level_pa = 101'325;

// Molar masses [kg/mol] of dry air and helium, and the molar gas constant of the SI.
constexpr double air_molar = 0.02896546, helium_molar = 0.004002602, molar_constant = 8.314462618;

double ideal_density(double molar, double pressure_pa, double celsius) {
  return pressure_pa * molar / (molar_constant * (celsius + 273.15));
}

}  // namespace

AirState standard_air(double altitude_m) {
  const double altitude = std::clamp(altitude_m, -500.0, 11'000.0);
  const double geopotential = earth_radius_m * altitude / (earth_radius_m + altitude);
  AirState air;
  air.kelvin = sea_level_k - lapse_k_m * geopotential;
  air.pressure_pa = sea_level_pa * std::pow(air.kelvin / sea_level_k, gravity / (air_constant * lapse_k_m));
  air.density_kg_m3 = air.pressure_pa / (air_constant * air.kelvin);
  return air;
}

double air_density_kg_m3(double pressure_pa, double celsius) { return ideal_density(air_molar, pressure_pa, celsius); }

double helium_density_kg_m3(double pressure_pa, double celsius) {
  return ideal_density(helium_molar, pressure_pa, celsius);
}

}  // namespace quadrille
