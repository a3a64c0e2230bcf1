// What rods, poles and pipes of the trade are made of, with the figures that bending and wind are reckoned with.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "sdk/vec.hpp"

namespace quadrille {

/// Standard acceleration of free fall [m/s²]. Source: 3rd General Conference on Weights and Measures, 1901; ISO 80000-3.
inline constexpr double gravity = 9.80665;

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
    {"glass-fibre", "Glass fibre", 41.4e9, 2000, 827e6, 1.0 / 80,
     "pultruded rod of 75 % glass: one row of a pultruder's property table (modulus 6 Msi, flexural strength 120 ksi, "
     "specific gravity 2.0, tested by ASTM D4476 and D792; least bend diameter 80 rod diameters)"},
    {"pvc", "PVC", 2.48e9, 1400, 51.4e6, 0.0104,
     "cell class 12454 of ASTM D1784, one data sheet: flexural modulus 360,000 psi, tensile strength 7450 psi, "
     "specific "
     "gravity 1.40; the class's own least strength is 7000 psi (from memory); bend strain: half the strength over the "
     "modulus, our choice"},
    {"aluminium", "Aluminium", 68.9e9, 2700, 275e6, 0.0020,
     "6061-T6: extruders' data sheets, density from memory; bend strain: half the yield strain, our choice"},
    {"steel", "Steel", 210e9, 7850, 235e6, 0.00056,
     "structural steel S235 with the modulus of EN 1993-1-1, all from memory; bend strain: half the yield strain, our "
     "choice"},
};

/// The material with this key, or null.
constexpr const Material* find_material(std::string_view key) {
  for (const Material& material : materials)
    if (key == material.key) return &material;
  return nullptr;
}

/// Its label inside a sentence: "glass fibre", but "PVC".
inline std::string word_of(const Material& material) {
  std::string word = material.label;
  const auto is_capital = [&](std::size_t i) { return i < word.size() && word[i] >= 'A' && word[i] <= 'Z'; };
  if (is_capital(0) && !is_capital(1)) word[0] = static_cast<char>(word[0] - 'A' + 'a');
  return word;
}

/// A round rod (inner 0) or tube; diameters in metres, 0 <= inner < outer.
struct RoundSection {
  double outer_m = 0, inner_m = 0;

  double area_m2() const { return pi / 4 * (outer_m * outer_m - inner_m * inner_m); }
  /// Second moment of area, π(D⁴ − d⁴)/64, as a product: pow differs between machines.
  double second_moment_m4() const {
    const double outer2 = outer_m * outer_m, inner2 = inner_m * inner_m;
    return pi / 64 * (outer2 - inner2) * (outer2 + inner2);
  }
};

}  // namespace quadrille
