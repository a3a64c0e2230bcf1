// Parameter tables for the tests of this folder: those of the piece types of this build, and one made by hand.
#pragma once

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <utility>
#include <vector>

#include "studio/host/discovery.hpp"
#include "studio/model/conditions.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/parameter.hpp"
#include "tests/places.hpp"

namespace quadrille::testing {

inline const PieceTypes& types_here() {
  static const PieceTypes found = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  REQUIRE(found.types.size() >= 3);
  return found;
}

inline Parameter number_parameter(const char* key, Kind kind, double least, double most, double standard) {
  Parameter p;
  p.key = p.label = key;
  p.group = "Size";
  p.kind = kind;
  p.hard_min = p.display_min = least;
  p.hard_max = p.display_max = most;
  p.standard = Value::of_number(kind, standard);
  return p;
}

inline Parameter length_parameter(const char* key, double least, double most, double standard) {
  return number_parameter(key, Kind::length, least, most, standard);
}

inline Event event_of(const std::vector<PlacedPiece>& pieces, Units units = Units::metric) {
  Area area;
  area.id = "a";
  for (const PlacedPiece& piece : pieces) area.pieces.push_back(piece);
  Event event;
  event.units = units;
  event.areas.push_back(area);
  return event;
}

inline PlacedPiece piece_of(const std::string& id, const std::string& type, ValueMap values = {}) {
  PlacedPiece piece;
  piece.id = piece.name = id;
  piece.type = type;
  piece.values = std::move(values);
  return piece;
}

/// A number from `least` to `most`, round or with all its bits.
inline double any(double least, double most) {
  const double share = static_cast<double>(*rc::gen::inRange(0, 1'000'001)) / 1e6;
  const double number = least + share * (most - least);
  return *rc::gen::arbitrary<bool>() ? number : std::clamp(std::round(number * 100) / 100, least, most);
}

}  // namespace quadrille::testing
