// What rods, poles and pipes of the trade are made of, with the figures that bending and wind are reckoned with.
#pragma once

#include <cmath>
#include <span>
#include <string_view>

#include "sdk/vec.hpp"

namespace quadrille {

/// Mechanical figures of a material. All are typical values: a supplier's own sheet goes before them.
struct Material {
  const char* key;
  const char* label;
  double young_pa;
  double density_kg_m3;
  double strength_pa;  ///< in bending: what breaks or yields it
  double bend_strain;  ///< the strain at which it is still kept bent: outer radius ÷ bend radius
  const char* source;
};

inline constexpr Material materials[] = {
    {"glass-fibre", "Glass fibre", 41.4e9, 2000, 690e6, 1.0 / 80,
     "pultruded rod, 65 to 75 % glass: pultruders' property tables; least bend diameter 80 rod diameters"},
    {"pvc", "PVC", 2.76e9, 1400, 51.4e6, 0.0093,
     "cell class 12454 of ASTM D1784: tensile 7450 psi, modulus 400,000 psi; bend strain: half the strength, our "
     "choice"},
    {"aluminium", "Aluminium", 68.9e9, 2700, 275e6, 0.0020,
     "6061-T6: extruders' data sheets; bend strain: half the yield strain, our choice"},
    {"steel", "Steel", 205e9, 7850, 235e6, 0.00057,
     "structural steel S235, from memory; bend strain: half the yield strain, our choice"},
};

/// The material with this key, or null.
constexpr const Material* find_material(std::string_view key) {
  for (const Material& material : materials)
    if (key == material.key) return &material;
  return nullptr;
}

/// A round rod (inner 0) or tube; diameters in metres, 0 <= inner < outer.
struct RoundSection {
  double outer_m = 0, inner_m = 0;

  double area_m2() const { return pi / 4 * (outer_m * outer_m - inner_m * inner_m); }
  /// Second moment of area, π(D⁴ − d⁴)/64.
  double second_moment_m4() const { return pi / 64 * (std::pow(outer_m, 4) - std::pow(inner_m, 4)); }
};

}  // namespace quadrille
