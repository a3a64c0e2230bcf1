// Wind levels as a sheet tells them: in whole units.
#pragma once

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

/// A gust [m/s] that something bears, rounded down to whole units: "22 mph" or "36 km/h".
std::string print_level(double m_s, Units units);

/// The same in mph, km/h and Beaufort, the event's own unit first: "22 mph, 36 km/h, Beaufort 5".
std::string level_words(double m_s, Units units);

/// In the event's own unit and Beaufort alone: "22 mph (Beaufort 5)".
std::string short_level_words(double m_s, Units units);

/// A gust that is forecast, to the nearest whole unit: "9 mph (Beaufort 3)".
std::string forecast_words(double m_s, Units units);

}  // namespace quadrille
