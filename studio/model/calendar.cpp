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

}  // namespace

bool is_date(std::string_view text) {
  if (!has_shape(text, "0000-00-00")) return false;
  return std::chrono::year_month_day(std::chrono::year(digits(text.substr(0, 4))),
                                     std::chrono::month(static_cast<unsigned>(digits(text.substr(5, 2)))),
                                     std::chrono::day(static_cast<unsigned>(digits(text.substr(8, 2)))))
      .ok();
}

bool is_time(std::string_view text) {
  return has_shape(text, "00:00") && digits(text.substr(0, 2)) < 24 && digits(text.substr(3, 2)) < 60;
}

bool is_currency(std::string_view text) {
  return text.size() == 3 && std::ranges::all_of(text, [](char c) { return c >= 'A' && c <= 'Z'; });
}

}  // namespace quadrille
