// Masses to carry and ways to drive, as the people of an event read them: in the event's units, and no finer than they
// are known.
#pragma once

#include <string>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// The international mile of 5280 ft.
inline constexpr double metres_per_mile = 5280 * metres_per_foot;

/// A mass [kg, 0 or more] that is carried or filled: "262 kg" or "578 lb", with a decimal below 10.
inline std::string print_load(double kg, Units units) {
  const double mass = units == Units::feet ? kg / kilograms_per_pound : kg;
  return print_fixed(mass, mass < 9.95 ? 1 : 0) + (units == Units::feet ? " lb" : " kg");
}

/// A way by road [m, 0 or more], to a tenth: "18.0 km" or "11.2 miles".
inline std::string print_road(double metres, Units units) {
  return units == Units::feet ? print_fixed(metres / metres_per_mile, 1) + " miles"
                              : print_fixed(metres / 1000, 1) + " km";
}

/// Water that is filled in [l, 0 or more]: "8.3 l", or "2.2 gal" of 231 cubic inches; without a decimal from 10 on.
inline std::string print_litres(double litres, Units units) {
  constexpr double litres_per_gallon = 231 * metres_per_inch * metres_per_inch * metres_per_inch * 1000;
  const double amount = units == Units::feet ? litres / litres_per_gallon : litres;
  return print_fixed(amount, amount < 9.95 ? 1 : 0) + (units == Units::feet ? " gal" : " l");
}

}  // namespace quadrille
