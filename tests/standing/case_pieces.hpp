// Pieces for the standing tests: built by the piece types themselves, or by hand where a hand calculation is matched.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "sdk/built.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/gust_limit.hpp"
#include "studio/standing/standing_case.hpp"
#include "tests/places.hpp"

namespace quadrille {

/// A piece as its type builds it, through the plugin boundary.
inline Piece built_of(const char* type, const ValueMap& values) {
  static const PieceTypes found = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  REQUIRE(found.find(type) != nullptr);
  const auto built = build_piece(*found.find(type), values);
  REQUIRE(built->status == Status::ok);
  return built->piece;
}

inline Value length_of(double metres) { return Value::of_number(Kind::length, metres); }
inline Value mass_of(double kilograms) { return Value::of_number(Kind::mass, kilograms); }

/// A smooth upright drum without balloons: a stiff pole of that width, almost without weight, on one plate.
inline Piece drum(double width_m, double height_m, double plate_m, double plate_kg) {
  Piece piece;
  constexpr std::uint32_t stretches = 20;
  for (std::uint32_t i = 0; i <= stretches; ++i) piece.frame.nodes.emplace_back(0, 0, height_m * i / stretches);
  for (std::uint32_t i = 0; i < stretches; ++i)
    piece.frame.members.push_back({i, i + 1, Joint::rigid, Rest::as_drawn, width_m, 0, 70e9, 1e-6, 1e9});
  Support plate;
  plate.width_m = plate.depth_m = plate_m;
  plate.own_mass_kg = plate_kg;
  piece.supports.push_back(plate);
  return piece;
}

/// An area outdoors on this ground.
inline Area lawn(Ground ground = Ground::grass) {
  Area area;
  area.id = "a1";
  area.site.surroundings = Surroundings::outdoors;
  area.site.ground = ground;
  return area;
}

inline SecuringLine stake(std::string tie, double x_m, double y_m) {
  SecuringLine line;
  line.tie = std::move(tie);
  line.x_m = x_m;
  line.y_m = y_m;
  return line;
}

inline PlacedPiece placed_with(std::vector<SecuringLine> lines) {
  PlacedPiece placed;
  placed.id = "p1";
  placed.lines = std::move(lines);
  return placed;
}

/// What the piece bears with these lines [m/s].
inline double limit_of(const Piece& piece, std::vector<SecuringLine> lines, const Area& area = lawn()) {
  const Event event;
  const PlacedPiece placed = placed_with(std::move(lines));
  StandingCase its(event, area, placed, piece);
  return limit_of(its).gust_m_s;
}

}  // namespace quadrille
