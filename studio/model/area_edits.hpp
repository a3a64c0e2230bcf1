// Edits of areas and of what stands in them besides pieces. An id that is not there leaves the event as it is.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "studio/model/event.hpp"

namespace quadrille {

/// The area with this id, or null.
const Area* find_area(const Event& event, std::string_view area_id);

/// An area of this name with nothing in it, after the others; its id is one that nothing bears yet.
Event with_new_area(Event event, std::string name);
/// Takes the area away with all its pieces.
Event without_area(Event event, std::string_view area_id);
Event renamed_area(Event event, std::string_view area_id, std::string name);
/// Makes it the one at `index`, counted from 0 without it; beyond the others it becomes the last.
Event with_area_at(Event event, std::string_view area_id, std::size_t index);
/// Of the wall behind the area [m], above 0; nothing where there is none or it is not known.
Event with_wall(Event event, std::string_view area_id, std::optional<double> width_m, std::optional<double> height_m);

/// Puts `structure` in the place of the one that bears its id, or adds it; one without an id gets a free one.
Event with_structure(Event event, std::string_view area_id, Structure structure);
/// Takes it away. Lines that were tied to it stay, and the standing check says of each that it ends nowhere.
Event without_structure(Event event, std::string_view area_id, std::string_view structure_id);

/// As with_structure.
Event with_walkway(Event event, std::string_view area_id, Walkway walkway);
Event without_walkway(Event event, std::string_view area_id, std::string_view walkway_id);

}  // namespace quadrille
