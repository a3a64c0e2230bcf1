// How an event's lengths and masses are printed.
#pragma once

#include "sdk/units.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Feet and inches for Units::feet, metres otherwise.
constexpr LengthStyle lengths_in(Units units) {
  return units == Units::feet ? LengthStyle::feet_inches : LengthStyle::metres;
}

/// Pounds for Units::feet, kilograms otherwise.
constexpr MassStyle masses_in(Units units) { return units == Units::feet ? MassStyle::pounds : MassStyle::kilograms; }

}  // namespace quadrille
