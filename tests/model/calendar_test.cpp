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

TEST_CASE("dates are read as people write them, and printed in words") {
  for (const char* text : {"19 June 2027", "19. jun 2027", "June 19, 2027", "JUN 19th 2027", "19.6.2027", "19.06.2027",
                           "19-6-2027", "2027-06-19", "2027/6/19", "2027 June 19", " 19  june, 2027 "}) {
    for (const bool month_first : {false, true}) CHECK_MESSAGE(read_date(text, month_first) == "2027-06-19", text);
  }
  CHECK(read_date("6/12/2027", true) == "2027-06-12");
  CHECK(read_date("6/12/2027", false) == "2027-12-06");
  CHECK(read_date("1st Feb 2028", false) == "2028-02-01");
  for (const char* text : {"", "June 2027", "19 June", "19 June 27", "31 June 2027", "29 Feb 2027", "19 Ju 2027",
                           "19 Juneuary 2027", "6/19/27", "19 6 2027 1", "tomorrow", "2027-13-01", "0 June 2027"})
    CHECK_FALSE_MESSAGE(read_date(text, false), text);
  CHECK(print_date("2027-06-09") == "9 June 2027");
  CHECK(print_date("soon") == "soon");
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
