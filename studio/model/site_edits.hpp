// Edits of what stands in an area besides its pieces, as a plan from above has them: adding, removing, where the outlet is,
// what a line ends at.
#pragma once

#include <optional>
#include <string_view>

#include "sdk/built.hpp"
#include "studio/model/site_object.hpp"

namespace quadrille {

/// Takes the object away; of the outlet its distance.
Event without_object(Event event, std::string_view area_id, const SiteObject& object);

/// How far the nearest outlet is from the area's work_place(), 0 or more [m]; nothing: not known. An area that is not
/// there leaves the event as it is.
Event with_outlet_distance(Event event, std::string_view area_id, std::optional<double> distance_m);

/// An event with something new in it.
struct AddedObject {
  Event event;
  SiteObject object;
};

/// A post 2 m high with nobody's leave, about `place`; nothing where there is no such area.
std::optional<AddedObject> with_new_structure(const Event& event, std::string_view area_id, const SitePlace& place);
/// A walkway 1.2 m deep and 3 m wide about `place`; nothing where there is no such area.
std::optional<AddedObject> with_new_walkway(const Event& event, std::string_view area_id, const SitePlace& place);

/// A line from the first tie point of the piece that has none yet (front before back before side), else from its first, to
/// a stake, or a dead weight of 20 kg on hard ground: at `place` in the area, else as far out on its side as the tie point
/// is high, at least 1 m. Nothing where the piece is not there or has no tie points.
std::optional<AddedObject> with_new_line(const Event& event, std::string_view area_id, std::string_view piece_id,
                                         const Piece& built, const std::optional<SitePlace>& place = {});

/// The line with another kind of anchor, the rest of it filled in: where a structure is meant the first of the area, at
/// 1.2 m or its top, and for stakes and weights a place as with_new_line has it, which is 1 m before the piece where `built` is
/// null or has no such tie point. The structure stays empty where the area has none.
SecuringLine with_anchor(SecuringLine line, AnchorKind anchor, const Area& area, const Piece* built);

}  // namespace quadrille
