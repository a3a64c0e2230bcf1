// An area seen from above, in metres: pieces on their feet, structures, walkways, lines and their anchors, how far the
// outlet is. Extents here have x to the right and the depth upwards: `floor` is the edge nearest to the audience.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/view.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/site_object.hpp"

namespace quadrille {

struct PlanPiece {
  std::string id, name;
  Extent body;                ///< around balloons and frame; of one that is not built, its last size, else a metre
  std::vector<Extent> feet;   ///< its base plates
  std::vector<Point2> spine;  ///< of what was built
  bool locked = false;
};

struct PlanStructure {
  std::string id, name;
  StructureKind kind = StructureKind::other;
  Extent body;              ///< as the event has it, else by eye
  bool size_known = false;  ///< in both directions
};

struct PlanWalkway {
  std::string id, name;
  Extent body;
};

/// A line over the floor; one that cannot run goes from its piece's place.
struct PlanLine {
  SiteObject object;
  Point2 from, to;
  AnchorKind anchor = AnchorKind::stake;
  bool runs = false;
};

/// Nobody noted where the outlet is, only how far: a ring about where one inflates.
struct PlanOutlet {
  Point2 from;
  double distance_m = 0;
  Point2 grip() const { return {from.x + distance_m, from.y}; }  ///< where the ring is held
};

struct FloorPlan {
  std::vector<PlanWalkway> walkways;
  std::vector<PlanStructure> structures;
  std::vector<PlanPiece> pieces;  ///< hidden ones are left out, with their lines
  std::vector<PlanLine> lines;
  std::optional<PlanOutlet> outlet;
  std::optional<Extent> wall;  ///< its floor and top are the depth at which it is drawn: behind all else
  Extent extent;               ///< around all pieces and lines, and what else lies within 4 m of them
};

/// What has numbers that are not finite, or more than 100 km, is left out.
FloorPlan floor_plan_of(const Area& area, const BuiltEvent& built);

/// What lies under a point of the screen, and by which grip it would be held.
struct PlanHit {
  SiteObject object;
  SiteGrip grip = SiteGrip::whole;
};

/// Anchors before structures, pieces and walkways; a walkway by its edge within `reach_px` of that. `view` has the depth
/// upwards.
std::optional<PlanHit> plan_hit(const FloorPlan& plan, const View& view, double x_px, double y_px, double reach_px = 6);

/// The view that shows the plan's extent in width × height pixels, `border_px` left free on each side.
View fit_plan(const FloorPlan& plan, double width_px, double height_px, double border_px);

}  // namespace quadrille
