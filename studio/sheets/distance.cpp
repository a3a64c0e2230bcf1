#include "studio/sheets/distance.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille {

std::string print_distance(double metres, Units units) {
  const double exact = units == Units::feet ? metres / metres_per_foot : metres;
  const double whole = exact > 0 ? std::max(1.0, std::round(exact)) : 0;
  return print_fixed(whole, 0) + (units == Units::feet ? " ft" : " m");
}

}  // namespace quadrille
