// Dates and times as event files write them.
#pragma once

#include <string_view>

namespace quadrille {

/// True for a day of the calendar written as ISO 8601 does: "2027-06-19".
bool is_date(std::string_view text);

/// True for a local time "00:00" to "23:59".
bool is_time(std::string_view text);

/// True for three capital letters, as ISO 4217 writes currencies.
bool is_currency(std::string_view text);

}  // namespace quadrille
