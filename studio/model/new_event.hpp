// An event from the answers to a few questions.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/parameter.hpp"

namespace quadrille {

struct NewEventAnswers {
  std::string title, client, venue;
  std::string date;  ///< ISO 8601; empty = not set
  Surroundings surroundings = Surroundings::indoors;
  std::optional<double> width_m;  ///< of the place to be dressed, above 0
  Units units = Units::feet;
  std::string palette;                   ///< key of the palette that the event draws from; empty = none yet
  std::vector<ColourReference> colours;  ///< of the first piece, slot A first
  std::string first_type;                ///< id of the first piece's type; empty = no piece yet
  std::string first_name;                ///< of the first piece
  ValueMap first_values;                 ///< of the first piece, at other than the default
};

/// An event with one area and perhaps a piece in its middle. Indoors the area has a wall as wide as asked, of a
/// height that is not known yet, on a wood floor; outdoors it lies on grass and has no wall. Without a width the piece stands 2 m from the left.
Event new_event(const NewEventAnswers& answers);

/// The values of a piece that is to show `colours` colours: its number of slots, as near as the type has them; nothing
/// where that is its default, or where the type has no slots.
ValueMap values_for_colours(const ParameterTable& table, std::size_t colours);

}  // namespace quadrille
