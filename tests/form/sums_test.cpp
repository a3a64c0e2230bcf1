// Sums of quantities. The figures are worked out by hand, in metres, from 1 ft = 0.3048 m and 1 in = 0.0254 m exactly.
#include "studio/form/sums.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdint>

#include "sdk/units.hpp"
#include "studio/form/field_units.hpp"

using namespace quadrille;

namespace {

double metres(std::string_view text, std::string_view bare = "m") {
  const auto read = read_sum(text, measure_of(Kind::length), bare);
  CHECK_MESSAGE(read, std::string(text), ": ", read.error);
  return read ? *read : -1;
}

std::string fault(std::string_view text, std::string_view bare = "m") {
  const auto read = read_sum(text, measure_of(Kind::length), bare);
  CHECK_MESSAGE(!read, std::string(text));
  return read.error;
}

double number(std::string_view text) { return *read_sum(text, measure_of(Kind::count), "").value; }

}  // namespace

TEST_CASE("one quantity is read as everywhere") {
  CHECK(metres("8'6\"") == doctest::Approx(2.5908).epsilon(1e-14));  // 102 in
  CHECK(metres("2.4 m") == 2.4);
  CHECK(metres("2,4 m") == 2.4);
  CHECK(metres("30cm") == doctest::Approx(0.3));
  CHECK(metres("1/2 in") == doctest::Approx(0.0127));
  CHECK(metres("6 1/2 in") == doctest::Approx(0.1651));
  CHECK(metres("8' 6 1/2\"") == doctest::Approx(2.6035));
  CHECK(metres("½ in") == doctest::Approx(0.0127));
}

TEST_CASE("a bare number is in the field's unit, and so is a sum of bare numbers") {
  CHECK(metres("8", "ft") == doctest::Approx(2.4384));
  CHECK(metres("30", "cm") == doctest::Approx(0.3));
  CHECK(metres("14", "mm") == doctest::Approx(0.014));
  CHECK(metres("16/2", "ft") == doctest::Approx(2.4384));
  CHECK(metres("2,5 + 1.5", "ft") == doctest::Approx(1.2192));
  CHECK(metres("6 1/2", "in") == doctest::Approx(0.1651));
  CHECK(metres("-3", "cm") == doctest::Approx(-0.03));
}

TEST_CASE("quantities are added and taken away, in either decimal mark") {
  CHECK(metres("2.4m + 30cm") == doctest::Approx(2.7));
  CHECK(metres("2,4m+30cm") == doctest::Approx(2.7));
  CHECK(metres("20ft - 6in") == doctest::Approx(5.9436));   // 19.5 ft
  CHECK(metres("20ft-6ft") == doctest::Approx(4.2672));     // 14 ft
  CHECK(metres("8'6\" - 3\"") == doctest::Approx(2.5146));  // 99 in
  CHECK(metres("1m − 1cm + 1mm") == doctest::Approx(0.991));
  CHECK(metres("-1m + 2m") == doctest::Approx(1));
}

TEST_CASE("a quantity is multiplied and divided by plain numbers") {
  CHECK(metres("20ft/3") == doctest::Approx(2.032));  // 80 in
  CHECK(metres("20 ft ÷ 3") == doctest::Approx(2.032));
  CHECK(metres("3 * 9in") == doctest::Approx(0.6858));  // 27 in
  CHECK(metres("3 × 9in") == doctest::Approx(0.6858));
  CHECK(metres("3 x 9in") == doctest::Approx(0.6858));
  CHECK(metres("9in*3") == doctest::Approx(0.6858));
  CHECK(metres("1,5*2m") == doctest::Approx(3));
  CHECK(metres("20ft/2/2") == doctest::Approx(1.524));  // from the left: 5 ft
  CHECK(metres("12ft/3*2") == doctest::Approx(2.4384));
  CHECK(metres("2m + 3*10cm") == doctest::Approx(2.3));
  CHECK(metres("2m + 3*10cm/2 - 1/2 m") == doctest::Approx(1.65));
  CHECK(metres("(20ft - 2ft) / 3") == doctest::Approx(1.8288));  // 6 ft
  CHECK(metres("2*(1m+(3m-1m))") == doctest::Approx(6));
  CHECK(metres("=2*3m") == doctest::Approx(6));
}

TEST_CASE("a hyphen within a length is none of a difference") {
  CHECK(metres("8'-6\"") == doctest::Approx(2.5908));
  CHECK(metres("8ft-6in") == doctest::Approx(2.5908));
  CHECK(metres("6-1/2 in") == doctest::Approx(0.1651));
  CHECK(metres("8' - 6\"") == doctest::Approx(2.286));  // with blanks it takes away: 90 in
  CHECK(metres("1e-3 m") == doctest::Approx(0.001));
  CHECK(metres("6-2", "cm") == doctest::Approx(0.04));
}

TEST_CASE("what makes no sense is said, and why") {
  CHECK(fault("2.4m + 30") ==
        "A number without a unit cannot be added to a length or taken from it: write its unit too.");
  CHECK(fault("2m * 3m").find("cannot be multiplied") != std::string::npos);
  CHECK(fault("20ft / 5ft").find("divided by a plain number") != std::string::npos);
  CHECK(fault("3 / 9in").find("divided by a plain number") != std::string::npos);
  CHECK(fault("20ft / 0") == "Nothing can be divided by 0.");
  CHECK(fault("20ft / (1 - 1)") == "Nothing can be divided by 0.");
  CHECK(fault("2m +") == "At the end something is missing.");
  CHECK(fault("* 2m") == "Before '*' something is missing.");
  CHECK(fault("(2m + 1m") == "A bracket is not closed.");
  CHECK(fault("2m)") == "Before ')' something is missing.");
  CHECK(fault("2m 3cm").find("'3cm'") != std::string::npos);
  CHECK(fault("2 parsec").find("'parsec' is no unit of length") != std::string::npos);
  CHECK(fault("1.234,5 m").find("more than one way") != std::string::npos);
  CHECK(fault("").find("No length is given") != std::string::npos);
  CHECK(fault("  ").find("No length is given") != std::string::npos);
  CHECK(fault("1e300*1e300 m").find("beyond the numbers") != std::string::npos);
}

TEST_CASE("whole numbers are reckoned with too") {
  CHECK(number("3*11") == 33);
  CHECK(number("100/4 - 1") == 24);
  CHECK(*read_sum("95%", measure_of(Kind::ratio), "") == doctest::Approx(0.95));
  CHECK(*read_sum("90° / 2", measure_of(Kind::angle), "°") == doctest::Approx(0.785398163397448));  // pi/4
  CHECK(*read_sum("5 lb 4 oz * 2", measure_of(Kind::mass), "kg") == doctest::Approx(4.762719885));  // 10.5 lb
}

TEST_CASE("a random sum is what the processor makes of it") {
  // Numbers of millimetres and plain factors, written out and reckoned with whole numbers beside it.
  CHECK(rc::check("a random sum is", [] {
    const int terms = *rc::gen::inRange(1, 7);
    std::string text;
    std::int64_t sum_mm = 0;
    for (int i = 0; i < terms; ++i) {
      const std::int64_t mm = *rc::gen::inRange(0, 100'000), times = *rc::gen::inRange(1, 20);
      const bool minus = i > 0 && *rc::gen::arbitrary<bool>();
      if (i > 0) text += minus ? " - " : *rc::gen::arbitrary<bool>() ? "+" : " + ";
      if (times > 1) text += std::to_string(times) + *rc::gen::element<std::string>("*", " × ", " x ", " * ");
      const char mark = *rc::gen::element('.', ',');
      if (*rc::gen::arbitrary<bool>())
        text += std::to_string(mm) + "mm";
      else
        text += std::to_string(mm / 10) + mark + std::to_string(mm % 10) + " cm";
      sum_mm += (minus ? -1 : 1) * times * mm;
    }
    const auto read = read_sum(text, measure_of(Kind::length), "m");
    RC_ASSERT(bool(read));
    RC_ASSERT(std::abs(*read - static_cast<double>(sum_mm) / 1000) < 1e-9);
  }));
}

TEST_CASE("no text brings it down") {
  CHECK(rc::check("no text brings it", [] {
    const auto text = *rc::gen::container<std::string>(rc::gen::element(
        '1', '2', '0', '.', ',', '+', '-', '*', '/', '(', ')', ' ', '\'', '"', 'm', 'f', 't', 'i', 'n', 'e', '%', '='));
    const auto read = read_sum(text, measure_of(Kind::length), "ft");
    RC_ASSERT((read ? std::isfinite(*read) : !read.error.empty()));
  }));
}
