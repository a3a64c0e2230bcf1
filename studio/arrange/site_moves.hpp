// Dragging what stands in an area on a plan from above: structures, walkways and their edges, the outlet, the anchors of
// lines, pieces.
#pragma once

#include <string_view>

#include "studio/arrange/snapping.hpp"
#include "studio/model/site_object.hpp"

namespace quadrille {

/// Places on the plan are whole numbers of this [m]: 5 cm or 2 in; `fine`: 1 cm or half an inch.
double plan_step_m(Units units, bool fine);

/// How far a place lies from where one inflates, to the next whole step [m]; the ways to it in metres.
double dragged_distance(Units units, double right_m, double back_m);

/// The object taken by `grip` and moved by `way` from where it is in `event`, the event as it was when the drag began; to
/// the next whole step. A walkway's edge stays at least a step from the opposite one. What follows from something else
/// (a line that is tied to a structure), what is locked and what is not there stays; so does all where the way is nothing.
/// Of the outlet the distance is known and not the place: it is held to the right of work_place().
Event dragged_object(const Event& event, std::string_view area_id, const SiteObject& object, SiteGrip grip,
                     const Way& way, bool fine);

}  // namespace quadrille
