// What is carried from the vehicle to an area and back: its mass and bulk, and how many trips that is.
#pragma once

#include <cstdint>
#include <vector>

#include "sdk/built.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// Something that is carried in one piece, or shared out where it can be divided.
struct LoadItem {
  double mass_kg = 0, bulk_l = 0;  ///< 0 or more
  bool divisible = false;
  bool operator==(const LoadItem&) const = default;
};

/// What one person carries on a trip; both above 0.
struct TripLimit {
  double mass_kg = 20, bulk_l = 250;
};

struct Trips {
  std::int64_t trips = 0;  ///< of one person; what takes two people counts twice
  double mass_kg = 0, bulk_l = 0;
  double heaviest_kg = 0;  ///< of what cannot be divided
};

/// Packs `items` into trips: the heaviest first, each into the first trip that still takes it (first fit decreasing);
/// what can be divided then fills what is left. An item over the limit is a trip for as many people as it takes.
Trips trips_of(std::vector<LoadItem> items, const TripLimit& limit);

/// Mass of a frame's rods and poles [kg].
double frame_mass_kg(const Frame& frame);

/// Its containers of ballast, as the list has them: each support has its own.
std::int64_t containers_of(const PieceCount& count);

/// Ballast [kg] of a built piece and of the dead weights of its lines.
double ballast_kg(const Piece& piece);
double dead_weights_kg(const PlacedPiece& placed);

/// Rods, plates, ballast in its containers, dead weights, supplies by the house's mass of one unit, and the balloons as
/// they come in their bags. `piece` is null where the type is not available: then the balloons alone, with what hangs
/// on the lines. `with_ballast` false: containers and dead weights are empty.
std::vector<LoadItem> items_of(const PlacedPiece& placed, const PieceCount& count, const Piece* piece,
                               const House& house, bool with_ballast);

/// The balloons of `count` made into clusters, one item for each: random heaps of equal balls fill 0.64 of their space
/// (Scott and Kilgour, 1969, from memory).
std::vector<LoadItem> made_clusters(const PieceCount& count);

/// Litres of air that fill the balloons of `count` to the air's own pressure.
double volume_l(const PieceCount& count);

}  // namespace quadrille
