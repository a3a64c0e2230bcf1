// Air and helium against the standard atmosphere and the ideal gas.
#include "studio/model/atmosphere.hpp"

#include <doctest/doctest.h>

#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

TEST_CASE("the air at an altitude is that of the standard atmosphere") {
  const ReferenceTable table("atmosphere.csv");
  int compared = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    if (table.text(row, "altitude_type") != "geometric") continue;
    const AirState air = standard_air(table.number(row, "altitude_m"));
    CHECK(air.kelvin == doctest::Approx(table.number(row, "T_K")).epsilon(1e-6));
    CHECK(air.pressure_pa == doctest::Approx(table.number(row, "p_Pa")).epsilon(1e-6));
    CHECK(air.density_kg_m3 == doctest::Approx(table.number(row, "rho_kg_m3")).epsilon(1e-6));
    ++compared;
  }
  CHECK(compared >= 5);
}

TEST_CASE("the densities of air and helium are those of ideal gases") {
  const ReferenceTable table("gas.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double celsius = table.number(row, "temp_C");
    CHECK(air_density_kg_m3(101'325, celsius) ==
          doctest::Approx(table.number(row, "rho_air_dry_ideal_kg_m3")).epsilon(1e-6));
    CHECK(helium_density_kg_m3(101'325, celsius) ==
          doctest::Approx(table.number(row, "rho_He_ideal_kg_m3")).epsilon(4e-6));
  }
}

}  // namespace
}  // namespace quadrille
