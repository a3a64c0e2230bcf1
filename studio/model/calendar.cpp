#include "studio/model/calendar.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <utility>
#include <vector>

#include "sdk/quantity.hpp"
#include "studio/model/capital.hpp"

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

constexpr std::array<std::string_view, 12> months{"january",   "february", "march",    "april",
                                                  "may",       "june",     "july",     "august",
                                                  "september", "october",  "november", "december"};

/// Words and numbers of a date, in small letters; what stands between them is left out, and so is "th" behind a number.
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  bool goes_on = false;
  for (const char c : in_lower_case(text)) {
    const bool letter = c >= 'a' && c <= 'z';
    if (!letter && !is_digit(c)) {
      goes_on = false;
      continue;
    }
    if (!goes_on) words.emplace_back();
    goes_on = true;
    words.back() += c;
  }
  for (std::string& word : words)
    for (const std::string_view ending : {"st", "nd", "rd", "th"})
      if (is_digit(word.front()) && word.ends_with(ending)) word.resize(word.size() - ending.size());
  return words;
}

/// 1 to 12 by its name, from three letters on; 0 where it is none.
unsigned month_named(std::string_view word) {
  for (std::size_t i = 0; word.size() >= 3 && i < months.size(); ++i)
    if (months[i].starts_with(word)) return static_cast<unsigned>(i + 1);
  return 0;
}

/// The number, of at most so many digits; nothing where it is none.
std::optional<unsigned> number_of(std::string_view word, std::size_t most) {
  if (word.empty() || word.size() > most || !std::ranges::all_of(word, is_digit)) return std::nullopt;
  return static_cast<unsigned>(digits(word));
}

}  // namespace

std::string print_date(const std::string& date) {
  if (!is_date(date)) return date;
  const std::string month(months[static_cast<std::size_t>(digits(date.substr(5, 2)) - 1)]);
  return std::to_string(digits(date.substr(8, 2))) + " " + with_capital(month) + " " +
         std::to_string(digits(date.substr(0, 4)));
}

std::optional<std::string> read_date(std::string_view text, bool month_first) {
  std::vector<std::string> words = words_of(text);
  if (words.size() != 3) return std::nullopt;
  const bool year_first = words[0].size() == 4 && number_of(words[0], 4);
  if (year_first) std::swap(words[0], words[2]);  // the year is last from here on
  // The month is in the middle from here on.
  const bool month_before = text.find('/') != std::string_view::npos && month_first && !year_first;
  if (month_named(words[0]) != 0 || (month_before && month_named(words[1]) == 0)) std::swap(words[0], words[1]);
  const unsigned named = month_named(words[1]);
  const auto day = number_of(words[0], 2), year = number_of(words[2], 4);
  const auto month = named != 0 ? named : number_of(words[1], 2);
  if (!day || !month || !year || words[2].size() != 4) return std::nullopt;
  const std::string date = padded(*year, 4) + "-" + padded(*month, 2) + "-" + padded(*day, 2);
  return is_date(date) ? std::optional(date) : std::nullopt;
}

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
