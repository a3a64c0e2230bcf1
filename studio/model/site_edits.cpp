#include "studio/model/site_edits.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/units.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/securing.hpp"

namespace quadrille {
namespace {

constexpr double new_height_m = 2, new_walkway_m = 3, new_walkway_depth_m = 1.2, new_mass_kg = 20;
constexpr double least_anchor_way_m = 1, tie_height_m = 1.2;

/// `name`, or with the least free number from 2 behind it.
template <class Things>
std::string free_name_among(const Things& things, const std::string& name) {
  const auto borne = [&](const std::string& wanted) {
    return std::ranges::any_of(things, [&](const auto& thing) { return thing.name == wanted; });
  };
  std::string free = name;
  for (int number = 2; borne(free); ++number) free = name + " " + std::to_string(number);
  return free;
}

/// A place on the floor for the anchor of a line from this tie point, from the piece's place.
SitePlace place_for_anchor(const TiePoint& tie) {
  const double way = std::max(least_anchor_way_m, std::ceil(tie.point.z() * 10 - 1e-6) / 10);
  const double x = std::round(tie.point.x() * 100) / 100, y = std::round(tie.point.y() * 100) / 100;
  if (tie.purpose == TiePurpose::side) return {to_twelve_digits(x < 0 ? x - way : x + way), y};
  return {x, to_twelve_digits(tie.purpose == TiePurpose::front ? y - way : y + way)};
}

SitePlace place_of(const SecuringLine& line, const Piece* built) {
  const auto tie = built != nullptr ? find_tie_point(*built, line.tie) : std::nullopt;
  return tie ? place_for_anchor(built->tie_points[*tie]) : SitePlace{0, -least_anchor_way_m};
}

}  // namespace

Event without_object(Event event, std::string_view area_id, const SiteObject& object) {
  switch (object.kind) {
    case SiteObjectKind::structure:
      return without_structure(std::move(event), area_id, object.id);
    case SiteObjectKind::walkway:
      return without_walkway(std::move(event), area_id, object.id);
    case SiteObjectKind::outlet:
      return with_outlet_distance(std::move(event), area_id, std::nullopt);
    case SiteObjectKind::line:
      return without_line(std::move(event), object.id, object.line);
    case SiteObjectKind::piece:
      break;
  }
  return without_piece(std::move(event), object.id);
}

Event with_outlet_distance(Event event, std::string_view area_id, std::optional<double> distance_m) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr) return event;
  Site site = area->site;
  site.outlet_m = distance_m;
  return with_site(std::move(event), area_id, std::move(site));
}

std::optional<AddedObject> with_new_structure(const Event& event, std::string_view area_id, const SitePlace& place) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr) return std::nullopt;
  Structure structure;
  structure.id = free_id(event, "s");
  structure.name = free_name_among(area->structures, "Post");
  structure.kind = StructureKind::post;
  structure.x_m = place.x_m, structure.y_m = place.y_m, structure.height_m = new_height_m;
  const SiteObject object{SiteObjectKind::structure, structure.id};
  return AddedObject{with_structure(event, area_id, std::move(structure)), object};
}

std::optional<AddedObject> with_new_walkway(const Event& event, std::string_view area_id, const SitePlace& place) {
  const Area* const area = find_area(event, area_id);
  if (area == nullptr) return std::nullopt;
  Walkway walkway;
  walkway.id = free_id(event, "w");
  walkway.name = free_name_among(area->walkways, "Walkway");
  walkway.width_m = new_walkway_m, walkway.depth_m = new_walkway_depth_m;
  walkway.x_m = to_twelve_digits(place.x_m - new_walkway_m / 2),
  walkway.y_m = to_twelve_digits(place.y_m - new_walkway_depth_m / 2);
  const SiteObject object{SiteObjectKind::walkway, walkway.id};
  return AddedObject{with_walkway(event, area_id, std::move(walkway)), object};
}

std::optional<AddedObject> with_new_line(const Event& event, std::string_view area_id, std::string_view piece_id,
                                         const Piece& built, const std::optional<SitePlace>& place) {
  const Area* const area = find_area(event, area_id);
  const PlacedPiece* const piece = area != nullptr ? find_piece(*area, piece_id) : nullptr;
  if (piece == nullptr || built.tie_points.empty()) return std::nullopt;
  std::optional<std::size_t> first, without;
  for (const TiePurpose purpose : {TiePurpose::front, TiePurpose::back, TiePurpose::side})
    for (std::size_t i = 0; i < built.tie_points.size(); ++i) {
      if (built.tie_points[i].purpose != purpose) continue;
      const bool taken = std::ranges::find(piece->lines, tie_key(built, i), &SecuringLine::tie) != piece->lines.end();
      if (!first) first = i;
      if (!taken && !without) without = i;
    }
  SecuringLine line;
  line.tie = tie_key(built, without ? *without : *first);
  line = with_anchor(std::move(line), is_hard(area->site.ground) ? AnchorKind::dead_weight : AnchorKind::stake, *area,
                     &built);
  if (place) line.x_m = to_twelve_digits(place->x_m - piece->x_m), line.y_m = to_twelve_digits(place->y_m - piece->y_m);
  const SiteObject object{SiteObjectKind::line, piece->id, piece->lines.size()};
  return AddedObject{with_line(event, piece_id, std::move(line)), object};
}

SecuringLine with_anchor(SecuringLine line, AnchorKind anchor, const Area& area, const Piece* built) {
  const bool had_place = line.anchor != AnchorKind::structure && (line.x_m != 0 || line.y_m != 0);
  line.anchor = anchor;
  if (anchor == AnchorKind::structure) {
    line.x_m = line.y_m = line.mass_kg = 0;
    const Structure* const known = find_structure(area, line.structure);
    const Structure* const to = known == nullptr && !area.structures.empty() ? &area.structures.front() : known;
    line.structure = to != nullptr ? to->id : std::string();
    line.height_m = to != nullptr ? std::min(tie_height_m, to->height_m) : 0;
    return line;
  }
  line.structure.clear(), line.height_m = 0;
  if (!had_place) {
    const SitePlace place = place_of(line, built);
    line.x_m = place.x_m, line.y_m = place.y_m;
  }
  if (anchor == AnchorKind::stake) line.mass_kg = 0;
  if (anchor == AnchorKind::dead_weight && line.mass_kg <= 0) line.mass_kg = new_mass_kg;
  return line;
}

}  // namespace quadrille
