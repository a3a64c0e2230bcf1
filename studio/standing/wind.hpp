// Wind speeds and what they push: the Beaufort scale, velocity pressure, drag.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "sdk/vec.hpp"

namespace quadrille {

/// One number of the Beaufort scale: from this 10-minute mean speed at 10 m above open ground [m/s] up to the next.
struct BeaufortBand {
  int number;
  const char* name;
  double from_m_s;
};

/// WMO code table 1100 in its m/s column, as copies have it (the table itself was not opened); the columns in km/h, mph and
/// knots are no conversions of it, so bands are told apart in m/s only.
inline constexpr std::array<BeaufortBand, 13> beaufort_scale{{{0, "calm", 0},
                                                              {1, "light air", 0.3},
                                                              {2, "light breeze", 1.6},
                                                              {3, "gentle breeze", 3.4},
                                                              {4, "moderate breeze", 5.5},
                                                              {5, "fresh breeze", 8.0},
                                                              {6, "strong breeze", 10.8},
                                                              {7, "near gale", 13.9},
                                                              {8, "gale", 17.2},
                                                              {9, "strong gale", 20.8},
                                                              {10, "storm", 24.5},
                                                              {11, "violent storm", 28.5},
                                                              {12, "hurricane", 32.7}}};

/// No piece is left up in a gust above this: the top of Beaufort 5, 24 mph or 38 km/h, taken in the smaller of the two.
inline constexpr double beaufort_5_top_m_s = 38 / 3.6;

/// The band of a speed in m/s, at least 0. Speeds between two printed bands (5.45) count to the lower one: the table is
/// printed to 0.1 m/s, so the speed is rounded down to that.
const BeaufortBand& beaufort_of(double m_s);

/// The speed [m/s] that the scale's formula 0.836·B^(3/2) gives for the middle of a number of 0 or more.
double beaufort_middle_m_s(double number);

/// Velocity pressure ½ρv² [Pa] of EN 1991-1-4, expression (4.10), read second-hand, at a gust in m/s; `air_kg_m3` above 0.
constexpr double velocity_pressure_pa(double gust_m_s, double air_kg_m3) {
  return 0.5 * air_kg_m3 * gust_m_s * gust_m_s;
}

/// The way the wind blows, as a unit vector: 0° blows to the right, 90° away from the audience (onto the front).
Vec3 wind_way(double direction_deg);

/// Where a wind of that direction comes from, as a person who faces the piece says it: "from the front", "from behind on
/// the left".
std::string wind_words(double direction_deg);

/// A speed as everybody here reads it: "24 mph (39 km/h, 10.7 m/s)".
std::string speed_words(double m_s);

/// Force [N] on a bare straight round member that leans in the wind: `along` from end to end [m], `diameter_m` across,
/// `coefficient` for a cylinder across the wind. Only the velocity across the member counts (the cross-flow principle
/// of inclined cylinders), so that the force stands square on it.
Vec3 cross_flow_force(const Vec3& along, double diameter_m, const Vec3& way, double pressure_pa, double coefficient);

}  // namespace quadrille
