// The day's clock: seconds from midnight at the beginning of the event's day, as local time shows them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "studio/model/event.hpp"

namespace quadrille {

inline constexpr std::int64_t seconds_of_day = 86'400;

/// "07:30" for the second it falls on, of whatever day; the minute that has begun.
std::string clock_of(std::int64_t second);

/// The day it falls on: 0 the event's, -1 the one before.
int day_of(std::int64_t second);

/// "40 s", "48 min", "1 h 05 min": to the nearest minute from one minute on.
std::string print_duration(std::int64_t seconds);

/// The event's times, seconds from midnight at the beginning of the day on which it must be ready.
struct DayTimes {
  std::optional<std::int64_t> load_in_from_s, ready_by_s, strike_from_s;
};

/// The text where it is a time of day such as "07:30"; empty otherwise.
std::string known_time(const std::string& text);

/// Times that are not set, or are no times, stay unset. A load-in after "ready by" is of the day before, a strike
/// before it of the day after: nobody loads in when all is ready. Without "ready by" the strike is after the load-in. A
/// change of the clocks in that night is not seen.
DayTimes times_of(const Event& event);

}  // namespace quadrille
