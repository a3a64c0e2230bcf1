// What the client is to provide, and what the client must know.
#pragma once

#include <vector>

#include "studio/model/event.hpp"
#include "studio/paper/area_layout.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// What is asked of the client: when to be let in, then for each of `areas` a place for the vehicle, an outlet, leave to
/// tie on to what stands there, to hang from it and to drive stakes; and where the water of the whole event's ballast may
/// go, which is brought along. What the event does not say yet is asked for. `width` is of the column [mm].
Block need_block(const Setting& setting, const std::vector<const Area*>& areas, double width);

/// Cautions for whoever is at the event. Sources: latex and children, 16 CFR 1500.19; allergy, NIOSH Alert 97-135; exits,
/// IFC 806.2; wind, the take-down level of the weakest piece where it was reckoned, and Beaufort 5 as where pieces come
/// down whatever was reckoned; flames, ballast and lines: common practice, no source.
Block caution_block(const Setting& setting, const std::vector<const Area*>& areas, double width);

}  // namespace quadrille
