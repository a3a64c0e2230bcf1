#include "studio/standing/level_words.hpp"

#include <cmath>

#include "sdk/number.hpp"
#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

std::string with_unit(double whole, Units units) {
  return print_fixed(whole, 0) + (units == Units::feet ? " mph" : " km/h");
}

std::string beaufort_words(double m_s) { return "Beaufort " + std::to_string(beaufort_of(m_s).number); }

}  // namespace

std::string print_level(double m_s, Units units) {
  return with_unit(std::floor(gust_number(m_s, units) + 1e-6), units);
}

std::string level_words(double m_s, Units units) {
  const Units other = units == Units::feet ? Units::metric : Units::feet;
  return print_level(m_s, units) + ", " + print_level(m_s, other) + ", " + beaufort_words(m_s);
}

std::string short_level_words(double m_s, Units units) {
  return print_level(m_s, units) + " (" + beaufort_words(m_s) + ")";
}

std::string forecast_words(double m_s, Units units) {
  return with_unit(std::round(gust_number(m_s, units)), units) + " (" + beaufort_words(m_s) + ")";
}

}  // namespace quadrille
