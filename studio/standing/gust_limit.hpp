// At which gust a piece fails first.
#pragma once

#include "studio/standing/standing_case.hpp"

namespace quadrille {

/// The gust at which the first check fails.
struct GustLimit {
  double gust_m_s = 0;
  bool beyond = false;      ///< nothing fails up to the highest gust that is looked at
  StandingCheck governing;  ///< of the first check that fails; empty code where `beyond`
  bool at_rest = false;     ///< it fails without any wind
};

/// The highest gust that the piece bears from every direction, one hundredth below the least in which a check fails; 0
/// where one fails below 0.05 m/s. From each direction the gust grows in steps of about a third, and the first step that
/// fails is halved; so a gust that fails between two steps that do not may be missed, which is why the gust that is
/// forecast is always looked at itself.
GustLimit limit_of(StandingCase& its);

/// The same where it is above `above_m_s`. Where it is not, which is known with much less work: a gust of 0, and as what
/// governs a check that fails in a gust of `above_m_s`. `first_deg`: the direction that is looked at first, the one
/// expected to fail, of wind_directions(); of directions that fail in the same gust it governs.
GustLimit limit_above(StandingCase& its, double above_m_s, double first_deg);

}  // namespace quadrille
