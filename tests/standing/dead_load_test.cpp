// Weight and lift of balloons.
#include "studio/standing/dead_load.hpp"

#include <doctest/doctest.h>

#include "sdk/balloon_size.hpp"
#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

AirState air_of(double celsius) { return {celsius + 273.15, 101'325, air_density_kg_m3(101'325, celsius)}; }

TEST_CASE("a helium balloon lifts by what a litre lifts, less its skin") {
  const ReferenceTable table("gas.csv");
  constexpr double diameter = 0.28, litres = pi / 6 * diameter * diameter * diameter * 1000;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double lift_n = -balloon_weight_n(diameter, 11, air_of(table.number(row, "temp_C")), 0, 1);
    const double wanted_g = table.number(row, "gross_net_lift_g_per_L") * litres - 1000 * latex_mass_kg(11);
    CHECK(lift_n / gravity_m_s2 * 1000 == doctest::Approx(wanted_g).epsilon(1e-5));
  }
}

TEST_CASE("an air balloon weighs its latex and the air it is overfilled with") {
  // 3.5 kPa over 101.325 kPa put 3.454 % more air in: by the ideal gas law.
  const AirState air = air_of(20);
  const double volume = pi / 6 * 0.28 * 0.28 * 0.28;
  const double wanted = gravity_m_s2 * (latex_mass_kg(11) + volume * air.density_kg_m3 * 3500 / 101'325);
  CHECK(balloon_weight_n(0.28, 11, air, 3500, 0) == doctest::Approx(wanted).epsilon(1e-9));
  CHECK(balloon_weight_n(0.28, 11, air, 0, 0) == doctest::Approx(gravity_m_s2 * latex_mass_kg(11)).epsilon(1e-12));
}

TEST_CASE("the air of a site goes by its altitude and the event's temperature") {
  Site site;
  CHECK(air_at(site).density_kg_m3 == doctest::Approx(1.204129).epsilon(1e-5));  // gas.csv, 20 °C
  site.altitude_m = 1600;
  site.event_celsius = 277.7526 - 273.15;
  CHECK(air_at(site).density_kg_m3 == doctest::Approx(1.047636).epsilon(1e-5));  // atmosphere.csv, 1600 m
}

}  // namespace
}  // namespace quadrille
