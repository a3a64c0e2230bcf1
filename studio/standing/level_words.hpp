// Wind levels as whoever stands beside a piece reads them off an anemometer or a forecast.
#pragma once

#include <string>

namespace quadrille {

/// "22 mph, 35 km/h, Beaufort 5" for a gust [m/s], 0 or more; with one decimal below 20, as print_gust has it. The
/// Beaufort number is that of the same speed.
std::string level_words(double m_s);

}  // namespace quadrille
