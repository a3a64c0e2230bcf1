// What is known of a place as a form: the area's own facts, and those of what stands in it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/result.hpp"
#include "studio/form/facts.hpp"
#include "studio/model/built_event.hpp"
#include "studio/model/finding.hpp"
#include "studio/model/site_object.hpp"

namespace quadrille {

/// Keys: name; surroundings, ground; gust; event-temperature, inflating-temperature, altitude, inflating-altitude; outlet,
/// vehicle; wall-width, wall-height.
FactFields area_fields(const Event& event, const Area& area);

/// The event with what was typed into the field of `key`, or the sentence of what is wrong with it. An area that is not
/// there changes nothing.
Result<Event> with_area_field(const Event& event, std::string_view area_id, std::string_view key,
                              std::string_view text);

/// The fields of a structure, walkway, outlet or line; none where the area has no such thing. `built` has the tie points of
/// the pieces. Keys of a structure: name, kind, along, depth, height, width, deep, allowed-by; of a walkway: name, left,
/// front, width, deep; of the outlet: distance; of a line: tie, anchor, and aside, ahead, mass or structure,
/// height; cord. Of a piece: along, depth.
FactFields object_fields(const Event& event, const Area& area, const SiteObject& object, const BuiltEvent& built);

/// As with_area_field.
Result<Event> with_object_field(const Event& event, std::string_view area_id, const SiteObject& object,
                                const BuiltEvent& built, std::string_view key, std::string_view text);

/// One line of the list of what an area holds.
struct SiteRow {
  SiteObject object;
  std::string what;      ///< "Gate post", "Door arch, front-1"
  std::string where;     ///< "2.40 m along, 0.50 m front"; of a line what it ends at
  std::string measures;  ///< "2.00 m high, allowed", "2.91 m at 52°", to the ground; of a line that cannot run why not
  bool operator==(const SiteRow&) const = default;
};

/// Of everything in site_objects(), in that order.
std::vector<SiteRow> site_rows(const Event& event, const Area& area, const BuiltEvent& built);

/// The same of one object, which may also be a piece; empty texts where it is not there.
SiteRow site_row(const Event& event, const Area& area, const SiteObject& object, const BuiltEvent& built);

/// "2.40 m along, 0.50 m front": a place on the floor of an area.
std::string floor_words(double x_m, double y_m, Units units);

/// "Gate post", "Line front-1 of Door arch": what a step of the undo history calls it.
std::string object_name(const Area& area, const SiteObject& object);

/// True where a finding is about the wind, the lines or the outlet, which have their fields here and not among those of a
/// piece.
bool is_of_site(const Finding& finding);

}  // namespace quadrille
