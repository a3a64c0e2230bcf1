// An invented event for the model's tests: two areas, two pieces each.
#pragma once

#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

inline PlacedPiece sample_piece(const std::string& id, double x_m) {
  PlacedPiece piece;
  piece.id = id;
  piece.name = "Piece " + id;
  piece.type = "arch";
  piece.x_m = x_m;
  piece.values = {{"span", Value::of_number(Kind::length, 2.4)}};
  piece.colours = {{"garden", "fern"}, {"garden", "poppy"}};
  return piece;
}

inline Event sample_event() {
  Area hall, lawn;
  hall.id = "a1";
  hall.name = "Hall";
  hall.pieces = {sample_piece("p1", 0), sample_piece("p2", 3)};
  lawn.id = "a2";
  lawn.name = "Lawn";
  lawn.pieces = {sample_piece("p3", 0), sample_piece("p4", 3)};
  Event event;
  event.title = "Spring fair";
  event.areas = {hall, lawn};
  return event;
}

/// The same event, sharing nothing with `event`.
inline Event deep_copy(Event event) {
  for (auto& area : event.areas) {
    Area copy = *area;
    for (auto& piece : copy.pieces) piece = Shared<PlacedPiece>(PlacedPiece(*piece));
    area = Shared<Area>(std::move(copy));
  }
  return event;
}

}  // namespace quadrille
