#include "studio/standing/wind.hpp"

#include <cmath>

#include "sdk/units.hpp"
#include "studio/standing/site_words.hpp"

namespace quadrille {

const BeaufortBand& beaufort_of(double m_s) {
  const double rounded_down = std::floor(m_s * 10 + 1e-9) / 10;
  const BeaufortBand* found = &beaufort_scale.front();
  for (const BeaufortBand& band : beaufort_scale)
    if (rounded_down + 1e-9 >= band.from_m_s) found = &band;
  return *found;
}

double beaufort_middle_m_s(double number) { return 0.836 * number * std::sqrt(number); }

Vec3 wind_way(double direction_deg) {
  const double angle = direction_deg * pi / 180;
  return to_picounit(Vec3(std::cos(angle), std::sin(angle), 0));
}

std::string wind_words(double direction_deg) {
  constexpr std::array<const char*, 8> words{
      "from the left",  "from the front on the left", "from the front", "from the front on the right",
      "from the right", "from behind on the right",   "from behind",    "from behind on the left"};
  const double turned = std::fmod(std::fmod(direction_deg, 360) + 360, 360);
  return words[static_cast<std::size_t>(std::lround(turned / 45)) % words.size()];
}

std::string speed_words(double m_s) {
  return print_gust(m_s, Units::feet) + " (" + print_gust(m_s, Units::metric) + ", " +
         print_speed(m_s, SpeedStyle::metres_per_second) + ")";
}

Vec3 cross_flow_force(const Vec3& along, double diameter_m, const Vec3& way, double pressure_pa, double coefficient) {
  const double length = along.norm();
  if (length <= 0) return Vec3::Zero();
  const Vec3 axis = along / length;
  const Vec3 across = way - way.dot(axis) * axis;
  return pressure_pa * coefficient * diameter_m * length * across.norm() * across;
}

}  // namespace quadrille
