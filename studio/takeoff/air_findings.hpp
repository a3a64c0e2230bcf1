// What heat, sun and altitude do to the balloons of an event.
#pragma once

#include <span>

#include "studio/model/event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/house.hpp"
#include "studio/model/palette.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// Area by area, and piece by piece:
/// - "inflate-to" (note): balloons change by half a per cent or more on the way to the event, and how large to blow them;
/// - "heat-not-known" (note): outdoors, and a temperature is not said, so that sizes are not corrected;
/// - "inflated-lower-down" (note): the event is 300 m up or more, and where balloons are blown is not said;
/// - "grows-overfull" (warning): blown to their size where they are inflated, balloons would be fuller at the event than
///   the figure "full-share" of their nominal size allows;
/// - "sun-overfull" (warning): outdoors they get there in the sun even if they have their size at the event. The sun heats
///   light and dark colours by the figures "sun-heat-light" and "sun-heat-dark"; dark is what lies below "dark-lightness".
/// The remedies say how large to blow them, and which larger size that is sold in the colour would do under-inflated.
Findings air_findings(const Event& event, const EventCount& count, std::span<const Palette> palettes,
                      const House& house);

/// True for a colour that the sun heats as a dark one.
bool is_dark(const Colour& colour, const House& house);

}  // namespace quadrille
