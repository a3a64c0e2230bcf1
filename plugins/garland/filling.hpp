// Seats for fillers among the balls of a garland: in the creases of three, on two at the outline, on two before the line.
#pragma once

#include <optional>
#include <vector>

#include "plugins/garland/ball.hpp"
#include "plugins/garland/grid.hpp"
#include "plugins/garland/measure.hpp"
#include "sdk/random.hpp"

namespace quadrille::garland {

/// No filler presses deeper than this into any ball, share of the smaller diameter.
inline constexpr double deepest_filler = 0.16;

struct Seat {
  Vec3 centre;
  Vec3 glue;         ///< where the neck goes: between those it is glued to
  double along = 0;  ///< arc length [m] of the place of the line nearest to it
  double score = 0;  ///< the higher the sooner
};

/// Finds seats among balls to which it adds fillers. Every seat is before the wall, above the floor, and neither presses
/// deep nor reaches out of the garland; one found earlier may be taken when its turn comes.
class Filling {
 public:
  /// `balls`, `request` and `line` must outlive it; nobody else may add to `balls` meanwhile.
  Filling(std::vector<Ball>& balls, const Request& request, const Curve& line);

  /// In creases of three that are seen from the front, for a filler of this size; among three of which one has index
  /// `since` or more.
  std::vector<Seat> in_creases(std::size_t size, std::uint32_t since);

  /// On top of two balls, outward and to the front as far as it goes; of which one has index `since` or more.
  std::vector<Seat> on_pairs(std::size_t size, std::uint32_t since);

  /// Touching two balls, with its outside on the outline near a place where that is not reached.
  std::optional<Seat> at_outline(const Shortfall& gap, std::size_t size) const;

  /// Touching two balls, before a place of the line that shows.
  std::optional<Seat> before(const BarePlace& bare, std::size_t size) const;

  /// True where some ball hides a place of the line.
  bool covers_place(const BarePlace& bare) const;

  /// False where the seat is taken by now.
  bool add(const Seat& seat, std::size_t size);

 private:
  struct Near {
    Vec3 centre;
    double radius, along;
    std::uint32_t index;
  };

  double radius_of(std::size_t size) const { return request_.mix[size].inflated_m / 2; }
  /// Balls within `reach` and their own radius of a place.
  void gather(const Vec3& place, double reach, std::vector<Near>& near) const;
  bool is_allowed(const Vec3& centre, double radius, double along, double depth_share) const;
  bool is_free(const Vec3& centre, double radius) const;
  std::optional<Seat> in_crease(const Near& a, const Near& b, const Near& c, double radius,
                                const std::vector<Near>& around);
  /// The best of all places of a ball that touches two of `near` and lies in a plane, by `rating` (0: not to be used).
  template <class Rating>
  std::optional<Seat> on_two(const std::vector<Near>& near, double radius, const Vec3& normal, double level,
                             Rating rating) const;

  std::vector<Ball>& balls_;
  const Request& request_;
  const Curve& line_;
  Random chance_;
  Grid grid_;
};

}  // namespace quadrille::garland
