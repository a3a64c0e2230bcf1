// Dates and times as event files write them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille {

/// True for a day of the calendar written as ISO 8601 does: "2027-06-19".
bool is_date(std::string_view text);

/// True for a local time "00:00" to "23:59".
bool is_time(std::string_view text);

/// True for three capital letters, as ISO 4217 writes currencies.
bool is_currency(std::string_view text);

/// "19 June 2027"; what is no date stays as it is.
std::string print_date(const std::string& date);

/// The date, in the form of is_date, that is written as people do: "19 June 2027", "Jun 19th, 2027", "19.6.2027",
/// "2027-06-19". Figures between strokes ("6/19/2027") are month and day where `month_first`, else day and month. English
/// names of months, from three letters on. Nothing where the text is no day of the calendar.
std::optional<std::string> read_date(std::string_view text, bool month_first);

/// The day that many days after `date`, in the form of is_date; at most 9999-12-31. Empty where `date` is none; days
/// below 0 count as 0.
std::string days_after(std::string_view date, std::int64_t days);

}  // namespace quadrille
