#include "studio/model/calendar.hpp"

#include <algorithm>
#include <chrono>

namespace quadrille {
namespace {

/// `shape` has '0' where a digit must stand.
bool has_shape(std::string_view text, std::string_view shape) {
  return std::ranges::equal(text, shape, [](char c, char s) { return s == '0' ? c >= '0' && c <= '9' : c == s; });
}

int digits(std::string_view text) {
  int number = 0;
  for (const char c : text) number = number * 10 + (c - '0');
  return number;
}

std::chrono::year_month_day day_of_calendar(std::string_view date) {
  return {std::chrono::year(digits(date.substr(0, 4))),
          std::chrono::month(static_cast<unsigned>(digits(date.substr(5, 2)))),
          std::chrono::day(static_cast<unsigned>(digits(date.substr(8, 2))))};
}

/// `number` in so many digits.
std::string padded(unsigned number, std::size_t places) {
  const std::string text = std::to_string(number);
  return std::string(places - std::min(places, text.size()), '0') + text;
}

}  // namespace

bool is_date(std::string_view text) { return has_shape(text, "0000-00-00") && day_of_calendar(text).ok(); }

bool is_time(std::string_view text) {
  return has_shape(text, "00:00") && digits(text.substr(0, 2)) < 24 && digits(text.substr(3, 2)) < 60;
}

bool is_currency(std::string_view text) {
  return text.size() == 3 && std::ranges::all_of(text, [](char c) { return c >= 'A' && c <= 'Z'; });
}

std::string days_after(std::string_view date, std::int64_t days) {
  if (!is_date(date)) return {};
  using std::chrono::sys_days;
  const sys_days last =
      std::chrono::year_month_day(std::chrono::year(9999), std::chrono::month(12), std::chrono::day(31));
  const sys_days from = day_of_calendar(date);
  const auto most = static_cast<std::int64_t>((last - from).count());
  const std::chrono::year_month_day then(from + std::chrono::days(std::clamp<std::int64_t>(days, 0, most)));
  return padded(static_cast<unsigned>(static_cast<int>(then.year())), 4) + "-" +
         padded(static_cast<unsigned>(then.month()), 2) + "-" + padded(static_cast<unsigned>(then.day()), 2);
}

}  // namespace quadrille
