// Gusts, forces and places as the people of an event read them.
#pragma once

#include <string>
#include <string_view>

#include "sdk/built.hpp"
#include "studio/model/anchor_place.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// A gust [m/s] in mph or km/h.
double gust_number(double m_s, Units units);

/// "16.8 mph" or "27 km/h": to a tenth, so that a level is never told a half above what it is.
std::string print_gust(double m_s, Units units);

/// "11 lbf" or "50 N". 1 lbf = 4.4482216152605 N by definition.
std::string print_force(double newtons, Units units);

/// A mass that is needed, "15.5 lb" or "7.0 kg": rounded up to this many decimals, so that what is told is enough.
std::string print_mass_needed(double kg, Units units, int decimals);

/// A figure of a check in the unit it bears: lengths, forces, moments (foot-pounds-force) and stresses (pounds per square
/// inch) in those of the event.
std::string print_amount(double number, std::string_view unit, Units units);

/// A place on the ground by its nearest foot: "2.60 m in front, 1.20 m to the left, from the left foot"; "at the left foot"
/// within 5 cm of it.
std::string place_words(const AnchorPlace& place, Units units);

/// What a line ends at, and where: "a stake 2.60 m in front, from the left foot", "a dead weight of 20.0 kg 1.20 m to
/// the left, from the foot", "Gate post, left, at 1.80 m of height".
std::string anchor_in_words(const SecuringLine& line, const Area& area, const Piece& piece, Units units);

/// "a base plate tips": what happens where the check with this code fails.
const char* failure_of(std::string_view code);

}  // namespace quadrille
