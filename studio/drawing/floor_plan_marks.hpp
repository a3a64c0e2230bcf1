// A floor plan as marks, the same for screen and paper.
#pragma once

#include <optional>
#include <string>

#include "studio/drawing/floor_plan.hpp"
#include "studio/drawing/scene_marks.hpp"

namespace quadrille {

struct PlanLook {
  Units units = Units::feet;
  Rect room;                           ///< of the page that may be drawn on [mm]
  std::optional<SiteObject> selected;  ///< drawn stronger, with grips
  std::string selected_text;           ///< what is told of it beside it; empty: nothing
};

/// Walkways hatched, structures, pieces with their feet, the front line, lines with their anchors, the outlet's ring, names
/// where there is room, a scale bar. `placement` has the depth upwards.
Marks floor_plan_marks(const FloorPlan& plan, const Placement& placement, const PlanLook& look);

}  // namespace quadrille
