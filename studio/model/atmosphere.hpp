// Air and helium by altitude and temperature.
#pragma once

namespace quadrille {

struct AirState {
  double kelvin = 0, pressure_pa = 0, density_kg_m3 = 0;
};

/// The standard atmosphere of ISO 2533:1975 (second-hand; its printed digits agree) at a geometric altitude from -500 to 11,000 m (clamped to it).
AirState standard_air(double altitude_m);

/// Density [kg/m³] of a dry ideal gas; pressure [Pa] above 0, temperature in degrees Celsius above -273.15.
double air_density_kg_m3(double pressure_pa, double celsius);
double helium_density_kg_m3(double pressure_pa, double celsius);

}  // namespace quadrille
