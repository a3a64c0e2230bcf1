#include "studio/labour/clock.hpp"

#include <string_view>

#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

std::string two_digits(std::int64_t number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::optional<std::int64_t> second_of(std::string_view time) {
  if (!is_time(time)) return std::nullopt;
  const auto number = [&](std::size_t at) { return (time[at] - '0') * 10 + (time[at + 1] - '0'); };
  return number(0) * 3600 + number(3) * 60;
}

}  // namespace

int day_of(std::int64_t second) {
  const std::int64_t day = second / seconds_of_day;
  return static_cast<int>(second % seconds_of_day < 0 ? day - 1 : day);
}

std::string clock_of(std::int64_t second) {
  const std::int64_t of_day = second - day_of(second) * seconds_of_day;
  return two_digits(of_day / 3600) + ":" + two_digits(of_day % 3600 / 60);
}

std::string print_duration(std::int64_t seconds) {
  if (seconds < 60) return std::to_string(seconds) + " s";
  const std::int64_t minutes = (seconds + 30) / 60;
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + two_digits(minutes % 60) + " min";
}

std::string known_time(const std::string& text) { return is_time(text) ? text : std::string(); }

DayTimes times_of(const Event& event) {
  DayTimes times{second_of(event.load_in_from), second_of(event.ready_by), second_of(event.strike_from)};
  if (times.load_in_from_s && times.ready_by_s && *times.load_in_from_s > *times.ready_by_s)
    *times.load_in_from_s -= seconds_of_day;
  const auto& before_strike = times.ready_by_s ? times.ready_by_s : times.load_in_from_s;
  if (times.strike_from_s && before_strike && *times.strike_from_s < *before_strike)
    *times.strike_from_s += seconds_of_day;
  return times;
}

}  // namespace quadrille
