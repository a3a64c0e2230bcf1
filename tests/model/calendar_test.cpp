// Days, times and currencies as event files write them.
#include "studio/model/calendar.hpp"

#include <doctest/doctest.h>

#include <initializer_list>

using namespace quadrille;

// A second, laxer test of dates let 2027-99-99 through, and a document was dated 2035.
TEST_CASE("days of the calendar are dates, and nothing else is") {
  // Leap years by the Gregorian rule: 2000 and 2028 are, 1900 and 2027 are not.
  for (const char* date : {"2027-06-19", "2028-02-29", "2000-02-29", "1900-02-28", "2027-12-31", "0001-01-01"})
    CHECK_MESSAGE(is_date(date), date);
  for (const char* text : {"2027-99-99", "2027-02-29", "1900-02-29", "2027-06-31", "2027-00-10", "2027-10-00",
                           "2027-13-01", "27-06-19", "2027-6-19", "2027/06/19", "20270619", "19-06-2027", "2027-06-19 ",
                           "2027-06-19T00:00", "+027-06-19", "next week", ""})
    CHECK_FALSE_MESSAGE(is_date(text), text);
}

TEST_CASE("times run from 00:00 to 23:59") {
  for (const char* time : {"00:00", "07:30", "23:59"}) CHECK_MESSAGE(is_time(time), time);
  for (const char* text : {"24:00", "23:60", "7:30", "07.30", "0730", "07:30:00", " 07:30", ""})
    CHECK_FALSE_MESSAGE(is_time(text), text);
}

TEST_CASE("currencies are three capital letters") {
  CHECK(is_currency("USD"));
  for (const char* text : {"usd", "US", "USDT", "U$D", "€", ""}) CHECK_FALSE_MESSAGE(is_currency(text), text);
}
