// Lines that secure a piece: the cords they are made of, where they begin and end, and how long they are.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "sdk/built.hpp"
#include "sdk/result.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// A kind of cord. Strength and stretch are those of new, dry cord.
struct Cord {
  const char* key;
  const char* label;
  double diameter_m;
  double strength_n;
  double stretch_at_strength;  ///< how much longer it is when it breaks
  const char* source;

  /// Axial stiffness E·A [N]: the straight line from slack to breaking.
  constexpr double stiffness_n() const { return strength_n / stretch_at_strength; }
};

/// The first is the standard one.
inline constexpr std::array<Cord, 4> cords{{
    {"nylon-550lb", "Nylon cord, 4 mm, 550 lb", 0.004, 2447, 0.30,
     "MIL-C-5040H type III, strength second-hand, stretch from memory"},
    {"nylon-100lb", "Nylon cord, 2 mm, 100 lb", 0.002, 445, 0.30,
     "MIL-C-5040H type I, strength second-hand, stretch from memory"},
    {"nylon-750lb", "Nylon cord, 5 mm, 750 lb", 0.005, 3336, 0.30,
     "MIL-C-5040H type IV, strength second-hand, stretch from memory"},
    {"polyester-6mm", "Polyester rope, 6 mm", 0.006, 5000, 0.15, "double-braid polyester, all from memory"},
}};

/// The cord with this key, the standard one for an empty key, null for a key that none has.
const Cord* find_cord(std::string_view key);

/// The key of a piece's tie point: what it is for and its number among those, "front-1", "side-2".
std::string tie_key(const Piece& piece, std::size_t tie_point);

/// The place in piece.tie_points of the one with this key.
std::optional<std::size_t> find_tie_point(const Piece& piece, std::string_view key);

/// A line as it runs, in the piece's frame [m].
struct LineRun {
  std::size_t tie_point = 0;  ///< in piece.tie_points
  Vec3 from = Vec3::Zero(), to = Vec3::Zero();
  double length_m() const { return (to - from).norm(); }
};

/// Where `line` of the piece runs, or a sentence that says what it lacks: no such tie point, no such structure, a place
/// higher than the structure, no length.
Result<LineRun> run_of(const SecuringLine& line, const PlacedPiece& placed, const Piece& piece, const Area& area);

}  // namespace quadrille
