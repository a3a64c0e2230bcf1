// How far it is to the vehicle or the outlet, as people say it.
#pragma once

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

/// A distance [m] that nobody measures to the inch: "59 ft", "18 m"; 1 at least where it is not none.
std::string print_distance(double metres, Units units);

}  // namespace quadrille
