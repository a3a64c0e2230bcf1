// Tools to take along: what the job asks for besides what stays in the pieces.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "studio/model/built_event.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/takeoff/count.hpp"
#include "studio/takeoff/power.hpp"

namespace quadrille {

struct Tool {
  std::string key;   ///< "tool-ladder"
  std::string name;  ///< the house's own for that key, else the usual one
  std::string why;   ///< what asks for it; empty where every job does
  std::string kept_where;
  bool reused = true;
  bool operator==(const Tool&) const = default;
};

/// What the event asks for: inflator, sizer, scissors, tape measure, first aid, broom and bags for every job with
/// balloons; a cord for each outlet that is known, by power_of(), and where none serves a battery or a generator; a
/// ground-fault device and an anemometer outdoors; a ladder where something is higher than can be reached from the
/// floor; a mallet for stakes; covers for cords where there are walkways. Areas in which nothing is built ask for
/// nothing. Empty where the event has no balloons. A supply of the house with the tool's key says what it is called and
/// where it is kept. Common practice, no source.
std::vector<Tool> tools_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                           std::span<const AreaPower> power);

/// What is higher [m] is not reached from the floor; common practice, no source.
inline constexpr double floor_reach_m = 2.1;

}  // namespace quadrille
