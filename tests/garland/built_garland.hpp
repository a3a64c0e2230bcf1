// Builds garlands through the plugin boundary for the tests of this folder.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "tests/places.hpp"

namespace quadrille {

inline const PieceType& garland_type() {
  static const PieceTypes found = find_piece_types({{build_place("pieces")}, std::nullopt, false});
  REQUIRE(found.find("garland") != nullptr);
  return *found.find("garland");
}

inline std::shared_ptr<const BuiltPiece> build(const ValueMap& values) {
  auto built = build_piece(garland_type(), values);
  for (const Message& message : built->piece.messages)
    REQUIRE_MESSAGE(message.severity != Severity::refusal, message.key, ": ", message.text);
  return built;
}

inline Value number(Kind kind, double value) { return Value::of_number(kind, value); }
inline Value seed(double value) { return number(Kind::seed, value); }

/// A gently waved line at 3 m height that takes about `balloons` of the standard mix.
inline Value wave(int balloons) {
  std::vector<double> list;
  const double length = balloons / 10.5 * 0.3048;
  for (int i = 0; i <= 20; ++i) list.insert(list.end(), {length * i / 20, 0, 3 + 0.25 * std::sin(i * 1.0)});
  return Value::of_list(Kind::path, list);
}

/// A fact of the piece, which must be there.
inline double fact(const BuiltPiece& built, const std::string& key) {
  const auto found = std::ranges::find(built.piece.facts, key, &Fact::key);
  REQUIRE_MESSAGE(found != built.piece.facts.end(), "no fact ", key);
  return found->number;
}

}  // namespace quadrille
