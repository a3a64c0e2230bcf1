// Numbers as text: shortest, exact both ways, and deaf to the locale.
#include "sdk/number.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>

using namespace quadrille;

TEST_CASE("the shortest text is printed that reads back as the same number") {
  CHECK(print_number(2.4) == "2.4");
  CHECK(print_number(0.1) == "0.1");
  CHECK(print_number(100) == "100");
  CHECK(print_number(-0.0) == "0");
}

TEST_CASE("any finite number survives printing and reading to the last bit") {
  CHECK(rc::check("print then parse", [](std::uint64_t bits) {
    double number = 0;
    std::memcpy(&number, &bits, sizeof number);
    RC_PRE(std::isfinite(number));
    RC_ASSERT(parse_number(print_number(number)) == number);
  }));
}

TEST_CASE("fixed decimals round to nearest and never show a negative zero") {
  CHECK(print_fixed(2.5, 2) == "2.50");
  CHECK(print_fixed(1.0 / 3, 4) == "0.3333");
  CHECK(print_fixed(-0.004, 2) == "0.00");
  CHECK(print_fixed(-0.006, 2) == "-0.01");
  CHECK(print_fixed(-3, 0) == "-3");
  // 2.345 is stored as 2.34500000000000019984… and 0.125 exactly: the first rounds up, the second to even.
  CHECK(print_fixed(2.345, 2) == "2.35");
  CHECK(print_fixed(0.125, 2) == "0.12");
}

TEST_CASE("only a whole text that is one finite decimal number is read") {
  CHECK(parse_number("2.4") == 2.4);
  CHECK(parse_number("+5") == 5.0);
  CHECK(parse_number("-1e3") == -1000.0);
  for (const char* wrong : {"", " 1", "1 ", "1,5", "1.5m", "nan", "inf", "-inf", "infinity", "0x10", "++1", "+-1",
                            "1e999", "1e-999", "--1", ".", "e5"})
    CHECK_MESSAGE(!parse_number(wrong), std::string(wrong));
}

TEST_CASE("whole numbers are read over all of 64 bits and nothing beyond") {
  CHECK(parse_whole("9223372036854775807") == std::numeric_limits<std::int64_t>::max());
  CHECK(parse_whole("-9223372036854775808") == std::numeric_limits<std::int64_t>::min());
  for (const char* wrong : {"", "9223372036854775808", "1.0", "1e3", " 1", "1 ", "one", "0x1"})
    CHECK_MESSAGE(!parse_whole(wrong), std::string(wrong));
}

TEST_CASE("numbers of 1e15 and more printed bytes that nobody had written: every finite number is printed whole") {
  CHECK(print_fixed(1e15, 2) == "1000000000000000.00");
  CHECK(print_fixed(-1e300, 0).size() == 302);
  const double largest = std::numeric_limits<double>::max();
  CHECK(print_fixed(largest, 12).size() == 309 + 1 + 12);
  CHECK(print_fixed(largest, 12).starts_with("179769313486231570"));  // 1.7976931348623157e308, IEEE 754
  CHECK(parse_number(print_fixed(-largest, 0)) == -largest);
  CHECK(print_fixed(1.5, 40) == "1.500000000000");
  CHECK(print_fixed(std::numeric_limits<double>::infinity(), 2) == "inf");
}

TEST_CASE("twelve digits are kept, rounded to nearest, and keeping them twice changes nothing") {
  CHECK(to_twelve_digits(1.0 / 3) == 0.333333333333);
  CHECK(to_twelve_digits(-2.0e9 / 3) == -666666666.667);
  CHECK(to_twelve_digits(0) == 0);
  CHECK(to_twelve_digits(2.4) == 2.4);
  CHECK(rc::check("twice is once", [](double number) {
    RC_PRE(std::isfinite(number));
    const double once = to_twelve_digits(number);
    RC_ASSERT(to_twelve_digits(once) == once);
    RC_ASSERT(std::abs(once - number) <= 5.1e-12 * std::abs(number));
  }));
}
