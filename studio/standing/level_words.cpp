#include "studio/standing/level_words.hpp"

#include "studio/standing/site_words.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {

std::string level_words(double m_s) {
  return print_gust(m_s, Units::feet) + ", " + print_gust(m_s, Units::metric) + ", Beaufort " +
         std::to_string(beaufort_of(m_s).number);
}

}  // namespace quadrille
