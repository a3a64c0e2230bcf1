#include "studio/standing/dead_load.hpp"

#include "sdk/balloon_size.hpp"
#include "sdk/material.hpp"

namespace quadrille {

AirState air_at(const Site& site) {
  AirState air = standard_air(site.altitude_m.value_or(0));
  const double celsius = site.event_celsius.value_or(20);
  air.kelvin = celsius + 273.15;
  air.density_kg_m3 = air_density_kg_m3(air.pressure_pa, celsius);
  return air;
}

double balloon_weight_n(double diameter_m, double nominal_in, const AirState& air, double over_pa,
                        double helium_share) {
  const double volume = pi / 6 * diameter_m * diameter_m * diameter_m;
  const double inside_pa = air.pressure_pa + over_pa, celsius = air.kelvin - 273.15;
  const double filling = helium_share * helium_density_kg_m3(inside_pa, celsius) +
                         (1 - helium_share) * air_density_kg_m3(inside_pa, celsius);
  return gravity_m_s2 * (latex_mass_kg(nominal_in) + (filling - air.density_kg_m3) * volume);
}

double member_weight_n(const FrameMember& member, double length_m) {
  return gravity_m_s2 * member.density_kg_m3 * RoundSection{member.outer_m, member.inner_m}.area_m2() * length_m;
}

}  // namespace quadrille
