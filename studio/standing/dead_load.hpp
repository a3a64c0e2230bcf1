// What a piece weighs, and where: balloons with their filling, rods and poles.
#pragma once

#include <vector>

#include "sdk/built.hpp"
#include "studio/model/atmosphere.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/assumptions.hpp"

namespace quadrille {

inline constexpr double gravity_m_s2 = 9.80665;

/// The air round the balloons: by the area's altitude (sea level where not known) and its temperature at the event (20 °C
/// where not known).
AirState air_at(const Site& site);

/// Weight [N] of one inflated balloon less the air it displaces: latex, and a filling of `helium_share` helium and else
/// air, `over_pa` above the pressure of the air around. Negative where it lifts. `diameter_m` and `nominal_in` above 0.
double balloon_weight_n(double diameter_m, double nominal_in, const AirState& air, double over_pa, double helium_share);

/// Weight [N] of a member of the frame that is `length_m` long.
double member_weight_n(const FrameMember& member, double length_m);

}  // namespace quadrille
