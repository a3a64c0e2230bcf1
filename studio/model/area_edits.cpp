#include "studio/model/area_edits.hpp"

#include <utility>
#include <vector>

#include "studio/model/edit_parts.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

/// Replaces the one that bears the same id, or adds it.
template <class Thing>
void put(std::vector<Thing>& things, Thing thing) {
  const auto found = std::ranges::find(things, thing.id, &Thing::id);
  if (found == things.end())
    things.push_back(std::move(thing));
  else
    *found = std::move(thing);
}

}  // namespace

const Area* find_area(const Event& event, std::string_view area_id) {
  for (const auto& area : event.areas)
    if (area->id == area_id) return &*area;
  return nullptr;
}

Event with_new_area(Event event, std::string name) {
  Area area;
  area.id = free_id(event, "a");
  area.name = std::move(name);
  return with_area(std::move(event), std::move(area));
}

Event without_area(Event event, std::string_view area_id) {
  std::erase_if(event.areas, [&](const auto& area) { return area->id == area_id; });
  return event;
}

Event renamed_area(Event event, std::string_view area_id, std::string name) {
  edit_area(event, area_id, [&](Area& area) { area.name = std::move(name); });
  return event;
}

Event with_area_at(Event event, std::string_view area_id, std::size_t index) {
  const auto found = std::ranges::find_if(event.areas, [&](const auto& area) { return area->id == area_id; });
  if (found == event.areas.end()) return event;
  const Shared<Area> area = *found;
  event.areas.erase(found);
  const auto at = static_cast<std::ptrdiff_t>(std::min(index, event.areas.size()));
  event.areas.insert(event.areas.begin() + at, area);
  return event;
}

Event with_wall(Event event, std::string_view area_id, std::optional<double> width_m, std::optional<double> height_m) {
  edit_area(event, area_id, [&](Area& area) {
    area.wall_width_m = width_m;
    area.wall_height_m = height_m;
  });
  return event;
}

Event with_structure(Event event, std::string_view area_id, Structure structure) {
  if (structure.id.empty()) structure.id = free_id(event, "s");
  edit_area(event, area_id, [&](Area& area) { put(area.structures, std::move(structure)); });
  return event;
}

Event without_structure(Event event, std::string_view area_id, std::string_view structure_id) {
  edit_area(event, area_id, [&](Area& area) {
    std::erase_if(area.structures, [&](const Structure& structure) { return structure.id == structure_id; });
  });
  return event;
}

Event with_walkway(Event event, std::string_view area_id, Walkway walkway) {
  if (walkway.id.empty()) walkway.id = free_id(event, "w");
  edit_area(event, area_id, [&](Area& area) { put(area.walkways, std::move(walkway)); });
  return event;
}

Event without_walkway(Event event, std::string_view area_id, std::string_view walkway_id) {
  edit_area(event, area_id, [&](Area& area) {
    std::erase_if(area.walkways, [&](const Walkway& walkway) { return walkway.id == walkway_id; });
  });
  return event;
}

}  // namespace quadrille
