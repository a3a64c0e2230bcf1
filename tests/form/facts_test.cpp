// What may be typed into the field of a fact. Factors are the exact ones of the international units; Fahrenheit is
// 9/5 C + 32 by definition.
#include "studio/form/facts.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

namespace {

constexpr FactRule distance{"d", "Distance", "", FactKind::length, 0, 1000, true, ""};
constexpr FactRule gust{"g", "Gust", "", FactKind::speed, 0, 60, true, ""};
constexpr FactRule air{"t", "Air", "", FactKind::temperature, -40, 60, true, ""};
constexpr FactRule weight{"m", "Weight", "", FactKind::mass, 0.5, 2000, false, ""};
constexpr FactRule way{"w", "Way", "", FactKind::way, 0, 5e6, true, ""};

std::optional<double> read(const FactRule& rule, std::string_view text, Units units) {
  const auto amount = read_amount(rule, text, std::nullopt, units);
  REQUIRE_MESSAGE(amount.value.has_value(), amount.error);
  return *amount;
}

std::string fault(const FactRule& rule, std::string_view text, Units units) {
  return read_amount(rule, text, std::nullopt, units).error;
}

}  // namespace

TEST_CASE("a bare number is in the unit beside the field, any other unit is taken too, and sums") {
  CHECK(read(distance, "3", Units::metric) == doctest::Approx(3));
  CHECK(read(distance, "10", Units::feet) == doctest::Approx(3.048));
  CHECK(read(distance, "8'6\"", Units::metric) == doctest::Approx(2.5908));
  CHECK(read(distance, "2 m + 30 cm", Units::feet) == doctest::Approx(2.3));
  CHECK(read(distance, " 2,5 ", Units::metric) == doctest::Approx(2.5));
  CHECK(read(gust, "36", Units::metric) == doctest::Approx(10));
  CHECK(read(gust, "10", Units::feet) == doctest::Approx(4.4704));
  CHECK(read(gust, "20 kn", Units::metric) == doctest::Approx(20 * 1852.0 / 3600));
  CHECK(read(air, "68", Units::feet) == doctest::Approx(20));
  CHECK(read(air, "-5", Units::metric) == doctest::Approx(-5));
  CHECK(read(air, "14 °F", Units::metric) == doctest::Approx(-10));
  CHECK(read(weight, "10", Units::feet) == doctest::Approx(4.5359237));
  CHECK(read(way, "8", Units::feet) == doctest::Approx(8 * 1609.344));
  CHECK(read(way, "12 km", Units::feet) == doctest::Approx(12000));
}

TEST_CASE("what a field shows reads back as the very amount, though it was rounded to be shown") {
  const double odd = 1.23456789;
  for (const Units units : {Units::feet, Units::metric})
    for (const FactRule& rule : {distance, gust, air, weight, way}) {
      const std::string text = amount_text(rule.kind, odd, units);
      const auto again = read_amount(rule, text, odd, units);
      REQUIRE(again.value.has_value());
      CHECK(*again == odd);
    }
  CHECK(amount_text(FactKind::length, 2.5908, Units::feet) == "8' 6\"");
  CHECK(amount_text(FactKind::speed, 10, Units::metric) == "36");
  CHECK(amount_text(FactKind::temperature, 20, Units::feet) == "68");
  CHECK(amount_text(FactKind::share, 75'000, Units::metric) == "7.5");
  CHECK(amount_text(FactKind::length, std::nullopt, Units::metric).empty());
}

TEST_CASE("an amount that six digits do not hold is shown in four") {
  // 22 km are 22000 / 1609.344 = 13.67016… miles; 38250 m are 38.25 km.
  CHECK(amount_field(way, 22000, Units::feet).text == "13.67");
  CHECK(amount_field(way, 38250, Units::metric).text == "38.25");
}

TEST_CASE("the stroke in km/h was taken for a division") {
  for (const Units units : {Units::feet, Units::metric}) {
    CHECK(*read(gust, "20 km/h", units) == doctest::Approx(20 / 3.6));
    CHECK(*read(gust, "36km/h / 2 + 1 m/s", units) == doctest::Approx(6));
  }
}

TEST_CASE("nothing typed is not known, where that may be") {
  CHECK(!read(distance, "  ", Units::metric));
  CHECK(fault(weight, "", Units::metric).starts_with("Weight is missing: 0.5 kg to 2000 kg would"));
}

TEST_CASE("what cannot be is refused with what would be accepted, and the ends that are told are accepted") {
  CHECK(fault(distance, "wide", Units::metric).find("wide") != std::string::npos);
  CHECK(fault(gust, "300", Units::metric) == "Gust is 300 km/h: 0 km/h to 216 km/h would be accepted.");
  CHECK(fault(distance, "-1", Units::metric) == "Distance is -1 m: 0 m to 1000 m would be accepted.");
  CHECK(!fault(distance, "3 kg", Units::metric).empty());
  // 1000 m are 3280 ft 10.08 in; half an inch downwards that is 10 in.
  CHECK(fault(distance, "4000", Units::feet).find("0\" to 3280' 10\" would be accepted") != std::string::npos);
  CHECK(read(distance, "3280' 10\"", Units::feet));
  // 60 m/s are 134.216 mph.
  CHECK(fault(gust, "200", Units::feet).find("0 mph to 134.2 mph") != std::string::npos);
  CHECK(read(gust, "134.2", Units::feet));
  CHECK(fault(air, "300 K", Units::metric).empty());
  CHECK(!fault(air, "400 K", Units::metric).empty());
}

TEST_CASE("a time is typed as people say it") {
  const auto time = [](const char* text) { return read_clock("Ready by", text).value.value_or("refused"); };
  CHECK(time("7:30") == "07:30");
  CHECK(time("19.05") == "19:05");
  CHECK(time("0730") == "07:30");
  CHECK(time("7") == "07:00");
  CHECK(time("7 pm") == "19:00");
  CHECK(time("12:15 am") == "00:15");  // midnight and a quarter
  CHECK(time("12 p.m.") == "12:00");   // noon
  CHECK(time("18h45") == "18:45");
  CHECK(time("") == "");
  for (const char* wrong : {"25:00", "7:5", "7:60", "noon", "13 pm", "0 am", "7:30:15", "-7", "123"})
    CHECK_MESSAGE(time(wrong) == "refused", wrong);
  CHECK(read_clock("Ready by", "noon").error.starts_with("Ready by cannot be 'noon'"));
}

TEST_CASE("a day is one of the calendar") {
  CHECK(*read_day("Date", "2028-02-29", Units::metric) == "2028-02-29");
  CHECK(read_day("Date", " ", Units::metric)->empty());
  CHECK(!read_day("Date", "2027-02-29", Units::metric));  // no leap year
  CHECK(*read_day("Date", "6/12/2027", Units::feet) == "2027-06-12");
  CHECK(*read_day("Date", "6/12/2027", Units::metric) == "2027-12-06");
}

TEST_CASE("a choice is taken by label or key, in either case") {
  const std::vector<Choice> choices{{"wood-floor", "Wood floor"}, {"grass", "Grass"}};
  CHECK(*read_choice("Ground", choices, "wood FLOOR") == "wood-floor");
  CHECK(*read_choice("Ground", choices, "grass") == "grass");
  CHECK(read_choice("Ground", choices, "ice").error == "Ground is Wood floor or Grass, not 'ice'.");
}
