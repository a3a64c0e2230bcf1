// The tasks at home and on the road.
#pragma once

#include "studio/labour/loads.hpp"
#include "studio/labour/tasks.hpp"

namespace quadrille {

/// What the vehicle brings, of all areas.
struct VehicleLoad {
  std::int64_t trips = 0, trips_back = 0;         ///< between store and vehicle, as one person carries
  double ballast_kg = 0;                          ///< that is filled in, with what the dead weights hold
  std::int64_t containers = 0, dead_weights = 0;  ///< that it goes into
};

/// Appends "pull", "fill-ballast" and "load-vehicle". The last waits for whatever is made the day before, which has to
/// stand in the list already.
void add_leaving(Labour& labour, const EventCount& count, const VehicleLoad& load, const House& house, Units units);

/// Appends the drive to the venue, or back: "travel", "travel-back"; none where the way is not known.
void add_travel(Labour& labour, const Event& event, bool back, const House& house);

/// Appends "put-away".
void add_put_away(Labour& labour, const VehicleLoad& load, const House& house);

}  // namespace quadrille
