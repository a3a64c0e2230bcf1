#include "studio/arrange/site_moves.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sdk/units.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/site_edits.hpp"

namespace quadrille {
namespace {

double stepped(double metres, double step) { return tidy(std::round(metres / step) * step); }

/// A coordinate along which nothing moves keeps its odd figures.
double carried(double metres, double way, double step) { return way == 0 ? metres : stepped(metres + way, step); }

/// Pulls the end at `least` of a stretch that is `length` long; the other end stays.
void pull_least(double& least, double& length, double way, double step) {
  if (way == 0) return;
  const double most = least + length;
  least = std::min(stepped(least + way, step), tidy(most - step));
  length = tidy(most - least);
}

/// Pulls the far end of a stretch that begins at `least`.
void pull_most(double least, double& length, double way, double step) {
  if (way == 0) return;
  length = tidy(std::max(stepped(least + length + way, step), least + step) - least);
}

Walkway pulled(Walkway walkway, SiteGrip grip, const Way& way, double step) {
  switch (grip) {
    case SiteGrip::whole:
      walkway.x_m = carried(walkway.x_m, way.right_m, step);
      walkway.y_m = carried(walkway.y_m, way.back_m, step);
      break;
    case SiteGrip::left:
      pull_least(walkway.x_m, walkway.width_m, way.right_m, step);
      break;
    case SiteGrip::right:
      pull_most(walkway.x_m, walkway.width_m, way.right_m, step);
      break;
    case SiteGrip::front:
      pull_least(walkway.y_m, walkway.depth_m, way.back_m, step);
      break;
    case SiteGrip::back:
      pull_most(walkway.y_m, walkway.depth_m, way.back_m, step);
      break;
  }
  return walkway;
}

}  // namespace

double plan_step_m(Units units, bool fine) {
  if (units == Units::feet) return metres_per_inch * (fine ? 0.5 : 2);
  return fine ? 0.01 : 0.05;
}

double dragged_distance(Units units, double right_m, double back_m) {
  return stepped(std::hypot(right_m, back_m), plan_step_m(units, false));
}

Event dragged_object(const Event& event, std::string_view area_id, const SiteObject& object, SiteGrip grip,
                     const Way& way, bool fine) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr || !has_object(*area, object) || (way.right_m == 0 && way.back_m == 0)) return event;
  const double step = plan_step_m(event.units, fine);
  const auto to = [&](double x_m, double y_m) {
    return SitePlace{carried(x_m, way.right_m, step), carried(y_m, way.back_m, step)};
  };
  switch (object.kind) {
    case SiteObjectKind::structure: {
      Structure structure = *find_structure(*area, object.id);
      const SitePlace place = to(structure.x_m, structure.y_m);
      structure.x_m = place.x_m, structure.y_m = place.y_m;
      return with_structure(event, area_id, std::move(structure));
    }
    case SiteObjectKind::walkway:
      return with_walkway(event, area_id, pulled(*find_walkway(*area, object.id), grip, way, step));
    case SiteObjectKind::outlet:
      // It is held where its ring lies to the right of where one inflates.
      return with_outlet_distance(event, area_id,
                                  stepped(std::hypot(*area->site.outlet_m + way.right_m, way.back_m), step));
    case SiteObjectKind::line: {
      SecuringLine line = *find_line(*area, object);
      if (line.anchor == AnchorKind::structure) return event;
      const SitePlace place = to(line.x_m, line.y_m);
      line.x_m = place.x_m, line.y_m = place.y_m;
      return with_changed_line(event, object.id, object.line, std::move(line));
    }
    case SiteObjectKind::piece:
      break;
  }
  const PlacedPiece& piece = *find_piece(*area, object.id);
  const SitePlace place = to(piece.x_m, piece.y_m);
  return piece.locked ? event : moved(event, object.id, place.x_m, place.y_m);
}

}  // namespace quadrille
