// Quantities as people write them. Exact factors: international yard and pound agreement of 1959 and the international
// nautical mile, as listed in NIST SP 811 appendix B (from memory): 1 in = 0.0254 m, 1 ft = 0.3048 m, 1 yd = 0.9144 m,
// 1 lb = 0.45359237 kg, 1 oz = 1/16 lb, 1 mi = 1609.344 m, 1 nautical mile = 1852 m.
#include "sdk/units.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

using namespace quadrille;

namespace {

using Reader = Result<double> (*)(std::string_view);
struct Reading {
  const char* text;
  double si;
};

void check_readings(Reader read, std::initializer_list<Reading> readings) {
  for (const auto& [text, si] : readings) {
    CAPTURE(text);
    const auto quantity = read(text);
    CAPTURE(quantity.error);
    REQUIRE(quantity);
    CHECK(quantity.error.empty());
    CHECK(std::abs(*quantity - si) <= 1e-15 * std::abs(si));
  }
}

void check_refused(Reader read, std::initializer_list<std::pair<const char*, const char*>> refusals) {
  for (const auto& [text, said] : refusals) {
    CAPTURE(text);
    const auto quantity = read(text);
    REQUIRE(!quantity);
    CAPTURE(quantity.error);
    CHECK(quantity.error.find(said) != std::string::npos);
    CHECK(quantity.error.ends_with('.'));
  }
}

}  // namespace

TEST_CASE("lengths are read in metric units, feet and inches") {
  check_readings(parse_length, {{"20ft", 20 * 0.3048},    // 6.096
                                {"8'6\"", 102 * 0.0254},  // 8 × 12 + 6 = 102 in
                                {"8' 6 1/2\"", 102.5 * 0.0254},
                                {"8'-6 1/2\"", 102.5 * 0.0254},
                                {"8'-6-1/2\"", 102.5 * 0.0254},
                                {"8ft 6in", 102 * 0.0254},
                                {"8 ft. 6 in.", 102 * 0.0254},
                                {"8ft6in", 102 * 0.0254},
                                {"8'6", 102 * 0.0254},
                                {"8'6.5\"", 102.5 * 0.0254},
                                {"8.5ft", 102 * 0.0254},
                                {"8 1/2'", 102 * 0.0254},
                                {"8 FEET 6 Inches", 102 * 0.0254},
                                {"2.4m", 2.4},
                                {"2,4 m", 2.4},
                                {"230mm", 0.23},
                                {"30cm", 0.3},
                                {"0.012 km", 12},
                                {"9in", 9 * 0.0254},
                                {"9\"", 9 * 0.0254},
                                {"9''", 9 * 0.0254},
                                {"1/2 in", 0.5 * 0.0254},
                                {"6 1/2\"", 6.5 * 0.0254},
                                {"6-1/2\"", 6.5 * 0.0254},
                                {"2 yd", 2 * 0.9144},
                                {"3", 3},
                                {"3 1/2", 3.5},
                                {".5m", 0.5},
                                {",5m", 0.5},
                                {"1e-3m", 0.001},
                                {"1E+2 m", 100},
                                {"+2m", 2},
                                {"  2 m\n", 2},
                                {"0", 0},
                                {"0 m", 0}});
}

TEST_CASE("typographic signs are read as the plain ones") {
  check_readings(parse_length, {{"8′ 6½″", 102.5 * 0.0254},
                                {"8’6”", 102 * 0.0254},
                                {"8′6′′", 102 * 0.0254},
                                {"6 ¾″", 6.75 * 0.0254},
                                {"−2 m", -2},
                                {"2.4\u00A0m", 2.4},
                                {"2.4\u202Fm", 2.4}});
  check_readings(parse_temperature, {{"20 ℃", 20}, {"68 ℉", 20}, {"20 ºC", 20}});
}

TEST_CASE("a sign counts for feet and inches together") {
  check_readings(parse_length, {{"-8'6\"", -102 * 0.0254}, {"- 8' 6\"", -102 * 0.0254}, {"-1/2 in", -0.0127}});
}

TEST_CASE("decimal quantities are the nearest double, without an error of the factor") {
  CHECK(*parse_length("230mm") == 0.23);
  CHECK(*parse_length("9in") == 0.2286);
  CHECK(*parse_length("11in") == 0.2794);
  CHECK(*parse_length("20ft") == 6.096);
  CHECK(*parse_length("12.7mm") == 0.0127);
  CHECK(*parse_mass("350g") == 0.35);
  CHECK(*parse_mass("22lb") == 9.97903214);  // 22 × 0.45359237
  CHECK(*parse_ratio("88%") == 0.88);
}

TEST_CASE("masses, speeds, temperatures, angles and ratios are read") {
  check_readings(parse_mass, {{"10kg", 10},
                              {"10", 10},
                              {"350 g", 0.35},
                              {"22lb", 22 * 0.45359237},
                              {"5 lb 4 oz", 5.25 * 0.45359237},
                              {"5 lbs", 5 * 0.45359237},
                              {"8oz", 0.5 * 0.45359237},
                              {"1,2 t", 1200}});
  check_readings(parse_speed, {{"24mph", 10.72896},  // 24 × 1609.344 / 3600
                               {"36km/h", 10},
                               {"38 km/h", 38 / 3.6},
                               {"10.7m/s", 10.7},
                               {"10.7", 10.7},
                               {"20kn", 20 * 1852.0 / 3600},
                               {"10 ft/s", 3.048}});
  // Celsius and Fahrenheit by definition: 32 °F = 0 °C, 212 °F = 100 °C, 0 °C = 273.15 K; both scales meet at -40.
  check_readings(parse_temperature, {{"20", 20},
                                     {"20C", 20},
                                     {"20 °C", 20},
                                     {"32F", 0},
                                     {"212 °F", 100},
                                     {"-40°F", -40},
                                     {"-40", -40},
                                     {"68 f", 20},
                                     {"293.15K", 20},
                                     {"0 K", -273.15}});
  check_readings(parse_angle, {{"180deg", 3.14159265358979323846},
                               {"45°", 0.78539816339744830962},
                               {"1.5", 1.5},
                               {"1.5 rad", 1.5},
                               {"-90 degrees", -1.57079632679489661923}});
  check_readings(parse_ratio, {{"0.88", 0.88}, {"0,88", 0.88}, {"12 %", 0.12}, {"7/8", 0.875}, {"-1", -1}});
}

TEST_CASE("what is no quantity is refused with a sentence that says what would be accepted") {
  check_refused(parse_length, {{"", "No length is given: write it like 2.4 m"},
                               {"   ", "No length is given"},
                               {"abc", "'abc' is no length"},
                               {"m", "'m' is no length"},
                               {"2.4xy", "'xy' is no unit of length"},
                               {"10kg", "'kg' is no unit of length"},
                               {"2.4 m abc", "'abc' after the length"},
                               {"2 m 40", "'40' after the length"},
                               {"1 234 m", "'234 m' after the length"},
                               {"8'6\"2", "'2' after the length"},
                               {"1.234,5", "more than one way"},
                               {"1,234.5 m", "more than one way"},
                               {"1,234,567", "more than one way"},
                               {"nan", "'nan' is no length"},
                               {"inf", "'inf' is no length"},
                               {"-inf", "'-inf' is no length"},
                               {"0x10", "'x' is no unit"},
                               {"--2m", "is no length"},
                               {"1/0 in", "no fraction"},
                               {"1e999m", "beyond the numbers"},
                               {"1e308km", "beyond the numbers"},
                               {"8'14\"", "below 12"},
                               {"8.5' 6\"", "whole"},
                               {"8' -", "after the length"},
                               {"2..4m", "after the length"},
                               {"\xff", "'?' is no length"}});
  check_refused(parse_mass, {{"heavy", "'heavy' is no mass"}, {"3 lb 20 oz", "below 16"}, {"2m", "no unit of mass"}});
  check_refused(parse_speed, {{"24 miles", "no unit of speed"}, {"fast", "'fast' is no speed"}});
  check_refused(parse_temperature,
                {{"warm", "no temperature"}, {"-300 C", "absolute zero"}, {"-1 K", "absolute zero"}});
  check_refused(parse_angle, {{"45 m", "no unit of angle"}});
  check_refused(parse_ratio, {{"12 m", "no unit of ratio"}, {"half", "no ratio"}});
}

TEST_CASE("no text whatever makes the reader fall over, and a refusal always says something") {
  CHECK(rc::check("any bytes", [](const std::string& text) {
    const auto length = parse_length(text);
    RC_ASSERT(static_cast<bool>(length) == length.error.empty());
    if (length) RC_ASSERT(std::isfinite(*length));
  }));
  CHECK(rc::check("any text of these signs", [] {
    const auto text = *rc::gen::container<std::string>(rc::gen::elementOf(std::string("0123456789.,'\"/-+eE ftinm%")));
    const auto length = parse_length(text);
    RC_ASSERT(static_cast<bool>(length) == length.error.empty());
    if (length) RC_ASSERT(std::isfinite(*length));
  }));
}

TEST_CASE("a comma means what a point means") {
  CHECK(rc::check("comma as point", [] {
    const auto hundredths = *rc::gen::inRange(0, 1'000'000);
    std::string text = print_fixed(hundredths / 100.0, 2);
    const double with_point = *parse_length(text + " m");
    text[text.find('.')] = ',';
    RC_ASSERT(*parse_length(text + " m") == with_point);
  }));
}

TEST_CASE("feet and inches are printed to the half inch, and never twelve inches") {
  const auto printed = [](double inches) { return print_length(inches * 0.0254, LengthStyle::feet_inches); };
  CHECK(printed(102.5) == "8' 6 1/2\"");
  CHECK(printed(102) == "8' 6\"");
  CHECK(printed(96) == "8'");
  // Without the 0 it was read as eight and a half feet. Common practice, no source.
  CHECK(printed(96.5) == "8' 0 1/2\"");
  CHECK(printed(-204.5) == "-17' 0 1/2\"");
  CHECK(printed(11.5) == "11 1/2\"");
  CHECK(printed(11.75) == "1'");  // nearest half inches are 11 1/2 and 12: the half way goes up
  CHECK(printed(11.74) == "11 1/2\"");
  CHECK(printed(23.9) == "2'");
  CHECK(printed(0.5) == "1/2\"");
  CHECK(printed(0.25) == "1/2\"");
  CHECK(printed(0.2) == "0\"");
  CHECK(printed(0) == "0\"");
  CHECK(printed(-0.1) == "0\"");
  CHECK(printed(-6.5) == "-6 1/2\"");
  CHECK(printed(-18) == "-1' 6\"");
}

TEST_CASE("printed feet and inches read back within a quarter inch, and printing that again changes nothing") {
  CHECK(rc::check("feet and inches both ways", [] {
    const double metres = *rc::gen::inRange(-5'000'000, 5'000'000) * 1e-5;
    const std::string text = print_length(metres, LengthStyle::feet_inches);
    RC_ASSERT(text.find("12\"") == std::string::npos);
    RC_ASSERT(text.find("12 ") == std::string::npos || text.find("12 1/2") == std::string::npos);
    const auto back = parse_length(text);
    RC_ASSERT(static_cast<bool>(back));
    RC_ASSERT(std::abs(*back - metres) <= 0.25 * 0.0254 + 1e-6);
    RC_ASSERT(print_length(*back, LengthStyle::feet_inches) == text);
  }));
}

TEST_CASE("metres, masses, speeds and temperatures are printed for people") {
  CHECK(print_length(2.6, LengthStyle::metres) == "2.60 m");
  CHECK(print_length(-0.001, LengthStyle::metres) == "0.00 m");
  CHECK(print_mass(10, MassStyle::kilograms) == "10.0 kg");
  CHECK(print_mass(9.97903214, MassStyle::pounds) == "22.0 lb");
  CHECK(print_mass(0.35, MassStyle::kilograms, 2) == "0.35 kg");
  CHECK(print_speed(10.72896, SpeedStyle::miles_per_hour) == "24 mph");
  CHECK(print_speed(10, SpeedStyle::kilometres_per_hour) == "36 km/h");
  CHECK(print_speed(10.7, SpeedStyle::metres_per_second) == "10.7 m/s");
  CHECK(print_temperature(20, TemperatureStyle::fahrenheit) == "68 °F");
  CHECK(print_temperature(-0.2, TemperatureStyle::celsius) == "0 °C");
}

TEST_CASE("a least length was rounded below itself and then refused: bounds are rounded so that either figure holds") {
  // 1.2045 m is 47.42 in: up 47 1/2 in, down 47 in.
  CHECK(print_at_least(1.2045) == "1.21 m (3' 11 1/2\")");
  CHECK(print_at_most(1.2045) == "1.20 m (3' 11\")");
  CHECK(print_at_least(1.2) == "1.20 m (3' 11 1/2\")");
  CHECK(print_at_most(0.3048) == "0.30 m (1')");
  CHECK(print_at_least(0.3048) == "0.31 m (1')");
  CHECK(rc::check("bounds hold", [](std::uint32_t tenths_of_millimetres) {
    const double metres = (tenths_of_millimetres % 1'000'000) * 1e-4;
    for (const bool least : {true, false}) {
      const std::string text = least ? print_at_least(metres) : print_at_most(metres);
      const std::size_t open = text.find('(');
      const std::string_view figures[] = {std::string_view(text).substr(0, open),
                                          std::string_view(text).substr(open + 1, text.size() - open - 2)};
      for (const std::string_view figure : figures) {
        const auto read = parse_length(figure);
        RC_ASSERT(static_cast<bool>(read));
        const bool holds = least ? *read >= metres - 1e-8 && *read < metres + 0.0128
                                 : *read <= metres + 1e-8 && *read > metres - 0.0128;
        RC_ASSERT(holds);
      }
    }
  }));
}

TEST_CASE("a mass per length is told in kilograms per metre and pounds per foot") {
  // 1 lb/ft = 0.45359237/0.3048 = 1.488164 kg/m.
  CHECK(print_mass_per_length(1.488164) == "1.488 kg per metre (1.000 lb per foot)");
}
