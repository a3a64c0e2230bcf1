// Figures of materials: of one grade each.
#include "sdk/material.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

TEST_CASE("the glass fibre mixed two grades: every material has one, whose figures fit each other") {
  constexpr double psi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);  // by definition of pound and inch
  const Material& glass = *find_material("glass-fibre");
  // 75 % glass: 6 Msi, 120 ksi, specific gravity 2.0 (a pultruder's table; its 65 % row has 5.5 Msi and 100 ksi).
  CHECK(glass.young_pa == doctest::Approx(6e6 * psi).epsilon(0.002));
  CHECK(glass.strength_pa == doctest::Approx(120e3 * psi).epsilon(0.001));
  CHECK(glass.density_kg_m3 == 2000);
  const Material& pvc = *find_material("pvc");
  // Flexural modulus 360,000 psi and tensile strength 7450 psi of one data sheet of cell class 12454.
  CHECK(pvc.young_pa == doctest::Approx(360e3 * psi).epsilon(0.002));
  CHECK(pvc.strength_pa == doctest::Approx(7450 * psi).epsilon(0.001));
  CHECK(pvc.density_kg_m3 == 1400);
  // Bend strains: half of what the strength allows; glass fibre by its least bend diameter of 80 rod diameters.
  CHECK(glass.bend_strain == 1.0 / 80);
  for (const char* key : {"pvc", "aluminium", "steel"}) {
    const Material& material = *find_material(key);
    CAPTURE(key);
    CHECK(material.bend_strain == doctest::Approx(material.strength_pa / material.young_pa / 2).epsilon(0.01));
  }
  for (const Material& material : materials)
    CHECK(material.bend_strain < material.strength_pa / material.young_pa);  // it is not kept bent to where it breaks
  CHECK(find_material("wood") == nullptr);
}

TEST_CASE("inside a sentence a material has no capital, unless it is an abbreviation") {
  CHECK(word_of(*find_material("glass-fibre")) == "glass fibre");
  CHECK(word_of(*find_material("pvc")) == "PVC");
}

TEST_CASE("a section's second moment is that of the handbook, to the last digits though without pow") {
  // π/64 (D⁴ − d⁴); 1 in schedule 40 pipe, 1.315 x 0.133 in: 36354.9 mm⁴.
  const double outer = 1.315 * 0.0254;
  CHECK(RoundSection{outer, outer - 2 * 0.133 * 0.0254}.second_moment_m4() * 1e12 ==
        doctest::Approx(36354.9).epsilon(1e-5));
  CHECK(RoundSection{0.008, 0}.second_moment_m4() == doctest::Approx(pi / 64 * std::pow(0.008, 4)).epsilon(1e-15));
}
