// The stakes that securing lines are reckoned with.
#pragma once

#include <string>

#include "sdk/units.hpp"
#include "studio/model/lengths.hpp"

namespace quadrille {

/// What a stake holds is told for such stakes: at least this long, this thick, driven to the head [m]. EN 14960 asks it of
/// inflatables' anchors: 380 mm by 16 mm; from memory.
inline constexpr double stake_length_m = 0.38, stake_thickness_m = 0.016;

/// "0.38 m by 16 mm", or "1' 3" by 5/8"".
inline std::string print_stake(Units units) {
  return print_length(stake_length_m, lengths_in(units)) + (units == Units::feet ? " by 5/8\"" : " by 16 mm");
}

/// For whoever's units are not known: "0.38 m (1' 3") by 16 mm (5/8 in)".
inline std::string print_stake() { return print_both(stake_length_m) + " by 16 mm (5/8 in)"; }

}  // namespace quadrille
