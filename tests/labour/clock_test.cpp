// The day's clock, over midnight both ways.
#include "studio/labour/clock.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

constexpr std::int64_t minute = 60, hour = 3600;

TEST_CASE("seconds from midnight are told as a clock and a day") {
  CHECK(clock_of(0) == "00:00");
  CHECK(clock_of(7 * hour + 30 * minute + 59) == "07:30");
  CHECK(clock_of(-1) == "23:59");
  CHECK(clock_of(-seconds_of_day) == "00:00");
  CHECK(clock_of(25 * hour) == "01:00");
  CHECK(day_of(0) == 0);
  CHECK(day_of(seconds_of_day - 1) == 0);
  CHECK(day_of(seconds_of_day) == 1);
  CHECK(day_of(-1) == -1);
  CHECK(day_of(-seconds_of_day) == -1);
  CHECK(day_of(-seconds_of_day - 1) == -2);
}

TEST_CASE("how long something takes is told in minutes and hours") {
  CHECK(print_duration(0) == "0 s");
  CHECK(print_duration(59) == "59 s");
  CHECK(print_duration(60) == "1 min");
  CHECK(print_duration(89) == "1 min");
  CHECK(print_duration(90) == "2 min");
  CHECK(print_duration(59 * minute + 29) == "59 min");
  CHECK(print_duration(59 * minute + 30) == "1 h 00 min");
  CHECK(print_duration(2 * hour + 5 * minute) == "2 h 05 min");
}

TEST_CASE("the load-in is before ready, and the strike after it") {
  Event event;
  event.load_in_from = "07:30";
  event.ready_by = "11:00";
  event.strike_from = "17:00";
  DayTimes times = times_of(event);
  CHECK(times.load_in_from_s == 7 * hour + 30 * minute);
  CHECK(times.ready_by_s == 11 * hour);
  CHECK(times.strike_from_s == 17 * hour);
  // A wedding breakfast prepared overnight, and a ball that ends after midnight.
  event.load_in_from = "22:00";
  event.strike_from = "01:30";
  times = times_of(event);
  CHECK(times.load_in_from_s == -2 * hour);
  CHECK(times.strike_from_s == 25 * hour + 30 * minute);
}

TEST_CASE("times that are not set, or are no times, stay unset") {
  Event event;
  event.ready_by = "25:00";
  event.load_in_from = "20:00";
  event.strike_from = "02:00";
  const DayTimes times = times_of(event);
  CHECK(!times.ready_by_s);
  CHECK(times.load_in_from_s == 20 * hour);
  CHECK(times.strike_from_s == 26 * hour);
  CHECK(!times_of({}).strike_from_s);
}

}  // namespace
}  // namespace quadrille
