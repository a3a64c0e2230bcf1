#include "studio/model/new_event.hpp"

#include <algorithm>
#include <utility>

namespace quadrille {

Event new_event(const NewEventAnswers& answers) {
  const bool outdoors = answers.surroundings == Surroundings::outdoors;
  Event event;
  event.title = answers.title, event.client = answers.client, event.venue = answers.venue;
  event.date = answers.date;
  event.units = answers.units;
  if (!answers.palette.empty()) event.palettes = {answers.palette};
  Area area;
  area.id = "a1";
  area.name = outdoors ? "Outside" : "Room";
  area.site.surroundings = answers.surroundings;
  area.site.ground = outdoors ? Ground::grass : Ground::wood_floor;
  if (!outdoors) area.wall_width_m = answers.width_m;
  if (!answers.first_type.empty()) {
    PlacedPiece piece;
    piece.id = "p1";
    piece.name = answers.first_name;
    piece.type = answers.first_type;
    piece.x_m = answers.width_m ? *answers.width_m / 2 : 2.0;
    piece.values = answers.first_values;
    piece.colours = answers.colours;
    area.pieces.emplace_back(std::move(piece));
  }
  event.areas.emplace_back(std::move(area));
  return event;
}

ValueMap values_for_colours(const ParameterTable& table, std::size_t colours) {
  const auto slots = std::ranges::find(table, Kind::slots, &Parameter::kind);
  if (slots == table.end() || colours == 0) return {};
  const Value value =
      Value::of_number(Kind::slots, std::clamp(static_cast<double>(colours), slots->hard_min, slots->hard_max));
  if (value == slots->standard) return {};
  return {{slots->key, value}};
}

}  // namespace quadrille
