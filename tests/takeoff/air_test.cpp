// Air: volumes, growth, inflating, and what heat, sun and altitude do.
#include "studio/takeoff/air.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>

#include "studio/model/atmosphere.hpp"
#include "studio/takeoff/air_findings.hpp"
#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

TEST_CASE("a balloon is a sphere, and its rubber holds a little more air in it") {
  // π/6 · 0.28³ m³ = 11.4940 l, worked out apart. 3.5 kPa over 101.325 kPa: 3.4542 % more.
  CHECK(balloon_litres(0.28) == doctest::Approx(11.4940).epsilon(1e-5));
  CHECK(litres_to_blow(0.28, 101'325, 3500) == doctest::Approx(11.4940 * 1.034542).epsilon(1e-5));
  CHECK(litres_to_blow(0.28, 101'325, 0) == balloon_litres(0.28));
  CHECK(balloon_litres(0) == 0);
}

TEST_CASE("growth by heat goes as the cube root of the ideal gas's volume") {
  // (308.15/293.15)^(1/3) = 1.016773; (273.15/293.15)^(1/3) = 0.976721; (318.15/295.15)^(1/3) = 1.025329: ideal gas,
  // worked out apart.
  CHECK(growth({20, 0}, {35, 0}) == doctest::Approx(1.016773).epsilon(1e-6));
  CHECK(growth({20, 0}, {0, 0}) == doctest::Approx(0.976721).epsilon(1e-6));
  CHECK(growth({22, 0}, {45, 0}) == doctest::Approx(1.025329).epsilon(1e-6));
  // From sea level at 20 °C to 1600 m at 30 °C.
  CHECK(growth({20, 0}, {30, 1600}) == doctest::Approx(1.078495).epsilon(1e-6));
}

TEST_CASE("growth by heat agrees with the tabulated densities of air") {
  // A closed mass of gas: V2/V1 = ρ1/ρ2. Source: first line of the table.
  const ReferenceTable table("gas.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double ratio = table.number(0, "rho_air_dry_ideal_kg_m3") / table.number(row, "rho_air_dry_ideal_kg_m3");
    CHECK(growth({table.number(0, "temp_C"), 0}, {table.number(row, "temp_C"), 0}) ==
          doctest::Approx(std::cbrt(ratio)).epsilon(1e-6));
  }
}

TEST_CASE("growth by altitude agrees with the standard atmosphere") {
  // Source: first line of the table.
  const ReferenceTable table("atmosphere.csv");
  int rows = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    if (table.text(row, "altitude_type") != "geometric") continue;
    const double altitude = table.number(row, "altitude_m");
    CHECK(growth({15, 0}, {15, altitude}) ==
          doctest::Approx(table.number(row, "free_diameter_ratio_same_T")).epsilon(1e-5));
    CHECK(growth({15, 0}, {table.number(row, "t_C"), altitude}) ==
          doctest::Approx(table.number(row, "free_diameter_ratio_ISA_T")).epsilon(1e-5));
    ++rows;
  }
  CHECK(rows > 4);
}

const std::vector<Palette> palettes{{"fair",
                                     "Fair",
                                     "USD",
                                     {{"night", "Night", 20, 30, 80, Finish::matte, {{11, 100, 900}, {14, 50, 900}}},
                                      {"cream", "Cream", 250, 240, 220, Finish::pearl, {{11, 100, 1100}}}}}};

/// One piece of `balloons` balloons of 11 in in one colour.
struct Job {
  explicit Job(const char* colour, double inflated_m, int balloons = 100) {
    PlacedPiece piece;
    piece.id = "p1";
    piece.colours = {{"fair", colour}};
    area.id = "a1";
    area.pieces.push_back(piece);
    auto made = std::make_shared<BuiltPiece>();
    made->status = Status::ok;
    for (int i = 0; i < balloons; ++i) {
      Balloon balloon;
      balloon.nominal_in = 11;
      balloon.diameter_m = inflated_m;
      made->piece.balloons.push_back(balloon);
    }
    built["p1"] = made;
  }
  Event event() const {
    Event whole;
    whole.areas.push_back(area);
    return whole;
  }
  AirNeed air(const House& house) const { return air_of(event(), count_event(event(), built, palettes, house), house); }
  Findings findings() const {
    return air_findings(event(), count_event(event(), built, palettes, House{}), palettes, House{});
  }
  const Finding* find(std::string_view code) {
    held = findings();
    for (const Finding& finding : held)
      if (finding.code == code) return &finding;
    return nullptr;
  }
  Area area;
  BuiltEvent built;
  Findings held;
};

TEST_CASE("an inflator runs as long as its air takes, with all its nozzles") {
  // By hand: 100 balloons of 0.28 m: 1149.40 l · 1.034542 = 1189.10 l; at 10 l/s through each of two nozzles 59.455 s;
  // 1200 W · 59.455 s = 19.818 Wh.
  const Job job("cream", 0.28);
  const AirNeed need = job.air(standard_house());
  CHECK(need.all.litres == doctest::Approx(1189.10).epsilon(1e-5));
  CHECK(need.all.blowing_s == doctest::Approx(59.455).epsilon(1e-4));
  CHECK(need.all.watt_hours == doctest::Approx(19.818).epsilon(1e-4));
  REQUIRE(need.areas.size() == 1);
  CHECK(need.areas[0].litres == need.all.litres);
  REQUIRE(need.lines.size() == 1);
  CHECK(need.lines[0].balloons == 100);
  CHECK(need.lines[0].inflate_to_m == 0.28);  // no temperature is known
  const AirNeed by_mouth = job.air(House{});
  CHECK(by_mouth.all.blowing_s == 0);
  CHECK(by_mouth.all.litres == need.all.litres);
}

TEST_CASE("balloons are blown to what makes them right at the event") {
  // 20 → 35 °C: 0.28 m / 1.016773 = 0.275381 m.
  Job job("cream", 0.28);
  job.area.site.inflating_celsius = 20;
  job.area.site.event_celsius = 35;
  CHECK(job.air(House{}).lines[0].inflate_to_m == doctest::Approx(0.275381).epsilon(1e-5));
  // An altitude at which they are blown too changes nothing; from sea level it is 0.28 m / 1.078495 at 30 °C.
  job.area.site.event_celsius = 30;
  job.area.site.altitude_m = 1600;
  CHECK(job.air(House{}).lines[0].inflate_to_m == doctest::Approx(0.28 / growth({20, 0}, {30, 0})).epsilon(1e-9));
  job.area.site.inflating_altitude_m = 0;
  CHECK(job.air(House{}).lines[0].inflate_to_m == doctest::Approx(0.28 / 1.078495).epsilon(1e-6));
}

TEST_CASE("the air of the areas adds up") {
  Job job("cream", 0.25, 30);
  Event event = job.event();
  Area second = job.area;
  second.id = "a2";
  second.pieces.clear();
  PlacedPiece piece;
  piece.id = "p2";
  second.pieces.push_back(piece);
  event.areas.push_back(second);
  job.built["p2"] = job.built["p1"];
  const House house = standard_house();
  const AirNeed need = air_of(event, count_event(event, job.built, palettes, house), house);
  REQUIRE(need.areas.size() == 2);
  CHECK(need.areas[0].litres + need.areas[1].litres == doctest::Approx(need.all.litres));
  CHECK(need.areas[0].watt_hours + need.areas[1].watt_hours == doctest::Approx(need.all.watt_hours));
  CHECK(need.all.balloons == 60);
}

TEST_CASE("a warmer event is told with figures, and what is not known is told as well") {
  Job job("cream", 0.2286);
  job.area.site.surroundings = Surroundings::outdoors;
  CHECK(job.find("heat-not-known") != nullptr);
  job.area.site.inflating_celsius = 20;
  job.area.site.event_celsius = 35;
  CHECK(job.find("heat-not-known") == nullptr);
  const Finding* const told = job.find("inflate-to");
  REQUIRE(told != nullptr);
  // 20 °C = 68 °F, 35 °C = 95 °F; 1.7 %; 9.0 in / 1.016773 = 8.85 in.
  CHECK(told->text == "Balloons grow by 1.7 % in diameter from 68 °F, where they are inflated, to 95 °F at the event.");
  CHECK(told->remedy == "Blow them to 8.9 in for 9.0 in at the event.");
  job.area.site.event_celsius = 21;
  CHECK(job.find("inflate-to") == nullptr);
  job.area.site.altitude_m = 1600;
  const Finding* const high = job.find("inflated-lower-down");
  REQUIRE(high != nullptr);
  CHECK(high->text.find("6.7 %") != std::string::npos);  // 1.066503
  job.area.site.inflating_altitude_m = 1600;
  CHECK(job.find("inflated-lower-down") == nullptr);
}

TEST_CASE("an altitude was told to the centimetre: it is told in whole metres, or feet") {
  // By hand: 1500 m ÷ 0.3048 = 4921.3 ft.
  Job job("cream", 0.2);
  job.area.site.altitude_m = 1500;
  const Finding* const feet = job.find("inflated-lower-down");
  REQUIRE(feet != nullptr);
  CHECK(feet->text.find("brought up to 4921 ft grow") != std::string::npos);
  Event metric = job.event();
  metric.units = Units::metric;
  const Findings findings = air_findings(metric, count_event(metric, job.built, palettes, House{}), palettes, House{});
  const auto told = std::ranges::find(findings, std::string("inflated-lower-down"), &Finding::code);
  REQUIRE(told != findings.end());
  CHECK(told->text.find("brought up to 1500 m grow") != std::string::npos);
}

TEST_CASE("in the sun dark colours are over-full before light ones") {
  // By hand at 30 °C: dark + 25 K, (328.15/303.15)^(1/3) = 1.02677; light + 10 K, 1.01088. 95 % of 11 in is 265.4 mm:
  // dark ones are over-full from 258.5 mm, light ones from 262.6 mm. Counts are in whole millimetres.
  for (const double inflated : {0.258, 0.259, 0.262, 0.263}) {
    CAPTURE(inflated);
    for (const char* colour : {"night", "cream"}) {
      CAPTURE(colour);
      Job job(colour, inflated);
      job.area.site.inflating_celsius = job.area.site.event_celsius = 30;
      CHECK(job.find("sun-overfull") == nullptr);  // indoors
      job.area.site.surroundings = Surroundings::outdoors;
      CHECK((job.find("sun-overfull") != nullptr) == (inflated > (colour[0] == 'n' ? 0.2585 : 0.2626)));
    }
  }
}

TEST_CASE("the remedy in the sun names a larger size that is sold, and how small would do") {
  // 0.27 m, dark: 0.27 · 1.02677 = 277.2 mm = 10.9 in, 99 % of 279.4 mm. At most 265.4 / 1.02677 = 258.5 mm = 10.2 in.
  // A larger one must measure 277.2 / 0.95 = 291.8 mm: 14 in does.
  Job job("night", 0.27);
  job.area.site.inflating_celsius = job.area.site.event_celsius = 30;
  job.area.site.surroundings = Surroundings::outdoors;
  const Finding* const told = job.find("sun-overfull");
  REQUIRE(told != nullptr);
  CHECK(told->weight == Weight::warning);
  CHECK(told->piece == "p1");
  CHECK(
      told->text ==
      "In the sun Night balloons of 11 in swell to 10.9 in, 99 % of their nominal size; dark colours heat up most and "
      "burst first.");
  CHECK(told->remedy.find("14 in balloons") != std::string::npos);
  CHECK(told->remedy.find("no larger than 10.2 in") != std::string::npos);
}

TEST_CASE("indoors a warmer hall is warned of where balloons are blown nearly full") {
  // By hand: 0.264 m blown at 10 °C is 0.264 · (295.15/283.15)^(1/3) = 0.26768 m at 22 °C, over 265.4 mm. At 0.26 m it is
  // 263.6 mm.
  for (const double inflated : {0.26, 0.264}) {
    Job job("cream", inflated);
    job.area.site.inflating_celsius = 10;
    job.area.site.event_celsius = 22;
    const Finding* const told = job.find("grows-overfull");
    CHECK((told != nullptr) == (inflated == 0.264));
    if (told != nullptr) CHECK(told->remedy == "Blow them to 10.3 in.");  // 0.264/1.01393 = 260.4 mm
  }
}

TEST_CASE("dark is what lies below L* 40") {
  // sRGB greys: 94 has L* 39.9, 95 has 40.3 (CIE 15 by hand: linear 0.1119 and 0.1144, 116 · cbrt − 16).
  const auto grey = [](std::uint8_t part) { return Colour{"g", "G", part, part, part, Finish::matte, {}}; };
  CHECK(is_dark(grey(94), House{}));
  CHECK_FALSE(is_dark(grey(95), House{}));
}

}  // namespace
}  // namespace quadrille
