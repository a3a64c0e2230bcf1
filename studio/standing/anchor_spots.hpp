// Where the site lets lines of a piece end: the choices that a search for the best lines goes through.
#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <optional>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"
#include "studio/standing/assumptions.hpp"

namespace quadrille {

/// One line by its tie point and where it ends: so far from the tie's foot in one of 24 directions, or at a structure.
struct LineChoice {
  static constexpr int directions = 24;                                  ///< every 15°
  static constexpr std::array<double, 4> distances{1, 1.25, 1.6, 0.75};  ///< as shares of the usual one, that first

  std::size_t tie = 0;  ///< in Piece::tie_points
  int direction = 0;    ///< on the floor, counted from the right towards what is away from the audience
  int distance = 0;     ///< in `distances`
  std::optional<std::size_t> structure =
      std::nullopt;  ///< in Area::structures; the direction is then the one nearest to its own
  auto operator<=>(const LineChoice&) const = default;
  /// The number of the direction nearest to an angle.
  static int nearest_direction(double angle);
};

/// Lines leave a front tie forwards, a back tie backwards, a tie at a side outwards, so that none goes through the piece.
/// Stakes are for soft ground and dead weights for hard; structures count where the owner has allowed them, from 0.3 m to
/// three times the height of the tie away. No line is steep, ends in a walkway or crosses one below headroom, or runs
/// through a structure. The area, the piece and its place outlive this.
class AnchorSpots {
 public:
  AnchorSpots(const Area& area, const PlacedPiece& placed, const Piece& built, const Assumptions& figures);

  /// How many tie points the piece has.
  std::size_t ties() const { return built_.tie_points.size(); }
  /// The place in Piece::tie_points of the one with this number, from 0, among those of its purpose; nothing where it has none.
  std::optional<std::size_t> tie_of(TiePurpose purpose, std::size_t number) const;
  /// The line of this choice, its dead weight still without mass; nothing where the site does not allow it.
  std::optional<SecuringLine> line(const LineChoice& choice) const;
  /// The choice from `tie` that is allowed and nearest to this direction: the first structure within 20° of it before others,
  /// the usual distance before others.
  std::optional<LineChoice> nearest(std::size_t tie, double angle) const;
  /// What is allowed one step from a choice: turned by 15° or 30°, at another distance, from another tie, at a structure.
  std::vector<LineChoice> beside(const LineChoice& choice) const;
  /// All that is allowed.
  std::vector<LineChoice> all() const;
  /// The choice mirrored left for right, or front for back; it need not be allowed. Nothing at a structure, or where the
  /// piece has no such tie.
  std::optional<LineChoice> mirrored(const LineChoice& choice, bool left_right, bool front_back) const;

 private:
  bool leaves(std::size_t tie, int direction) const;
  void add_structures(std::size_t tie, std::vector<LineChoice>& to) const;
  bool is_left(std::size_t side_tie) const;

  const Area& area_;
  const PlacedPiece& placed_;
  const Piece& built_;
  double usual_share_, level_share_, headroom_m_;
};

}  // namespace quadrille
