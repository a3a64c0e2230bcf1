// Air: how much it takes to blow the balloons up, for how long an inflator runs, and how large to blow them so that they
// have their size at the event.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/takeoff/count.hpp"

namespace quadrille {

/// Volume [l] of a balloon of this diameter [m], taken as a sphere.
double balloon_litres(double diameter_m);

/// Air [l] at the pressure around, `air_pa` above 0, that fills it: its rubber holds it at `over_pa` above. At sea level
/// 3.5 kPa add 3.5 % (the ideal gas; measured by amateurs, see the figure "balloon-pressure").
double litres_to_blow(double diameter_m, double air_pa, double over_pa);

/// How many nozzles the inflator has, 1 to 100: what a house file can say.
std::int64_t nozzles_of(const Inflator& inflator);

/// The air around a balloon.
struct AirAround {
  double celsius = 20;    ///< above -273.15
  double altitude_m = 0;  ///< geometric, -500 to 11,000
};

/// By how much a balloon's diameter grows from one air to the other: a free sphere of an ideal gas at the pressure of the
/// standard atmosphere, (T2/T1 · p1/p2)^(1/3). The rubber's own pull is left out: it makes true growth a little less.
double growth(const AirAround& from, const AirAround& to);

/// Where balloons are blown and where they stand; nothing where a temperature is not known. Where it is not said at which
/// altitude they are blown, it is that of the event; where that is not known either, sea level.
struct Climate {
  AirAround blown, event;
  bool in_sun = false;  ///< outdoors
};
std::optional<Climate> climate_of(const Site& site);

/// Balloons of one size in one area.
struct AirLine {
  std::string area;  ///< id
  double nominal_in = 0;
  double inflated_m = 0;  ///< at the event
  std::int64_t balloons = 0;
  double litres = 0;  ///< for all of them
  /// To blow them to [m], so that they have their size at the event; inflated_m where a temperature is not known.
  double inflate_to_m = 0;
};

/// One area's balloons, or all.
struct AirSum {
  std::string area;  ///< id; empty = all
  std::int64_t balloons = 0;
  double litres = 0;
  double blowing_s = 0;   ///< the inflator in use runs, with all its nozzles; 0 where the house has none
  double watt_hours = 0;  ///< it draws meanwhile
};

struct AirNeed {
  std::vector<AirLine> lines;  ///< by area in the order of the event, nominal size, inflated diameter
  std::vector<AirSum> areas;   ///< those with balloons, in the order of the event
  AirSum all;
};

/// What the balloons of `count` take, without spares.
AirNeed air_of(const Event& event, const EventCount& count, const House& house);

}  // namespace quadrille
