// What a balloon's nominal size means in practice: the diameter it is usually inflated to, and its weight.
#pragma once

#include <algorithm>
#include <array>
#include <utility>

#include "sdk/units.hpp"

namespace quadrille {

/// Diameter [m] to which balloons of a nominal size [in, above 0] are usually inflated for clusters: 5, 9, 11, 14 and
/// 16 in to 4, 7.5, 9, 12 and 14 in, evenly between, and 7/8 of the nominal size beyond. Common practice, no source.
inline double usual_inflated_m(double nominal_in) {
  constexpr std::array<std::pair<double, double>, 5> usual{{{5, 4}, {9, 7.5}, {11, 9}, {14, 12}, {16, 14}}};
  if (nominal_in <= usual.front().first) return nominal_in * 0.8 * metres_per_inch;
  for (std::size_t i = 1; i < usual.size(); ++i) {
    const auto [size, inflated] = usual[i];
    const auto [smaller, smaller_inflated] = usual[i - 1];
    if (nominal_in <= size)
      return (smaller_inflated + (nominal_in - smaller) / (size - smaller) * (inflated - smaller_inflated)) *
             metres_per_inch;
  }
  return nominal_in * 0.875 * metres_per_inch;
}

/// Weight of the latex alone [kg]: 3 g for 11 in, by the square of the nominal size. Common practice, no source.
inline double latex_mass_kg(double nominal_in) { return 0.003 * (nominal_in / 11) * (nominal_in / 11); }

}  // namespace quadrille
