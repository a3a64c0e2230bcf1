// Cords and power: published resistances, worked voltage drops, a published table of cord gauges.
#include "studio/takeoff/power.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

#include "sdk/units.hpp"
#include "sdk/vec.hpp"
#include "tests/reference_table.hpp"

namespace quadrille {
namespace {

const PowerCord* awg(int gauge) {
  const auto cords = awg_cords();
  const auto found = std::ranges::find_if(cords, [&](const PowerCord& cord) { return std::atoi(cord.name) == gauge; });
  return found == cords.end() ? nullptr : &*found;
}

TEST_CASE("wire gauges have their diameter, area and resistance") {
  // Source: first line of the table.
  const ReferenceTable table("awg.csv");
  int cords = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const int gauge = static_cast<int>(table.number(row, "AWG"));
    CAPTURE(gauge);
    const double diameter = awg_diameter_m(gauge), area = pi / 4 * diameter * diameter;
    CHECK(diameter * 1000 == doctest::Approx(table.number(row, "diameter_mm")).epsilon(1e-6));
    CHECK(area * 1e6 == doctest::Approx(table.number(row, "area_mm2")).epsilon(1e-6));
    CHECK(copper_ohm_per_m(area, 20) * 1000 == doctest::Approx(table.number(row, "ohm_per_km_20C_calc")).epsilon(1e-5));
    CHECK(copper_ohm_per_m(area, 75) * 304.8 ==
          doctest::Approx(table.number(row, "ohm_per_kft_75C_calc")).epsilon(1e-5));
    const PowerCord* const cord = awg(gauge);
    if (cord == nullptr) continue;
    ++cords;
    CHECK(cord->ohm_per_m * 304.8 == doctest::Approx(table.number(row, "NEC_T8_stranded_uncoated_75C_ohm_per_kft")));
    CHECK(cord->area_mm2 == doctest::Approx(table.number(row, "area_mm2")).epsilon(1e-3));
    // A strand is twisted, and so a little longer than a solid wire: 2 to 3 %.
    CHECK(cord->ohm_per_m > copper_ohm_per_m(area, 75));
    CHECK(cord->ohm_per_m < 1.04 * copper_ohm_per_m(area, 75));
  }
  CHECK(cords == 5);
}

TEST_CASE("metric cords resist what copper of their section does, and a little more") {
  // An invariant: class 5 conductors are fine strands, up to 17 % above solid copper of the nominal section.
  for (const PowerCord& cord : metric_cords()) {
    CAPTURE(cord.name);
    const double solid = copper_ohm_per_m(cord.area_mm2 * 1e-6, 75);
    CHECK(cord.ohm_per_m > solid);
    CHECK(cord.ohm_per_m < 1.17 * solid);
  }
}

TEST_CASE("worked voltage drops") {
  // Source: first line of the table.
  const ReferenceTable table("voltage_drop.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const PowerCord* const cord = awg(static_cast<int>(table.number(row, "AWG")));
    REQUIRE(cord != nullptr);
    const double drop =
        voltage_drop(table.number(row, "amps"), cord->ohm_per_m, table.number(row, "one_way_ft") * metres_per_foot);
    CHECK(drop == doctest::Approx(table.number(row, "drop_V")).epsilon(1e-4));
    CHECK(100 * drop / table.number(row, "supply_V") ==
          doctest::Approx(table.number(row, "drop_percent")).epsilon(1e-4));
  }
}

TEST_CASE("a cord serves to its published length and not beyond") {
  // Source: first line of the table. Within what the cord bears.
  const ReferenceTable table("cord_length.csv");
  int rows = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const PowerCord* const cord = awg(static_cast<int>(table.number(row, "AWG")));
    const double amps = table.number(row, "amps");
    if (cord == nullptr) continue;
    const std::span<const PowerCord> one(cord, 1);
    const double longest = table.number(row, "max_one_way_m_3pct");
    const bool bears = amps <= cord->ampacity_a;
    CHECK((thinnest_cord(one, amps, 120, longest * 0.9995, 0.03) == cord) == bears);
    CHECK(thinnest_cord(one, amps, 120, longest * 1.0005, 0.03) == nullptr);
    ++rows;
  }
  CHECK(rows > 20);
}

TEST_CASE("gauges of a tool manual keep within its drop of 5 V") {
  // Source: a tool maker's manual, least gauge for 25, 50, 75, 100 and 150 ft by rated current, for a drop of 5 V at 150 %
  // of it (read in a copy); copper at 20 °C gives its digits to 5 mV. 12 A over 25 ft breaks its own rule (18 AWG, 5.75 V).
  struct Row {
    double rated;
    std::vector<int> gauges;
  };
  const Row rows[] = {{2, {18, 18, 18, 18, 16}},
                      {3.4, {18, 18, 18, 16, 14}},
                      {5, {18, 18, 16, 14, 12}},
                      {7, {18, 16, 14, 12, 12}},
                      {12, {0, 14, 12, 10}},
                      {16, {14, 12, 10}},
                      {20, {12, 10}}};
  const double feet[] = {25, 50, 75, 100, 150};
  for (const Row& row : rows)
    for (std::size_t i = 0; i < row.gauges.size(); ++i) {
      if (row.gauges[i] == 0) continue;
      CAPTURE(row.rated);
      CAPTURE(feet[i]);
      const double diameter = awg_diameter_m(row.gauges[i]);
      const double drop =
          voltage_drop(1.5 * row.rated, copper_ohm_per_m(pi / 4 * diameter * diameter, 20), feet[i] * metres_per_foot);
      CHECK(drop <= 5.005);
    }
}

TEST_CASE("more amps and longer cords never take a thinner one") {
  for (const auto cords : {awg_cords(), metric_cords()}) {
    CHECK(std::ranges::is_sorted(cords, {}, &PowerCord::area_mm2));
    CHECK(std::ranges::is_sorted(cords, std::ranges::greater{}, &PowerCord::ohm_per_m));
    CHECK(std::ranges::is_sorted(cords, {}, &PowerCord::ampacity_a));
    for (double amps = 1; amps < 30; amps += 3) {
      const PowerCord* last = cords.data();
      for (double length = 1; length < 300; length *= 1.5) {
        const PowerCord* const cord = thinnest_cord(cords, amps, 120, length, 0.03);
        if (cord == nullptr) break;
        CHECK(cord >= last);
        last = cord;
      }
    }
  }
}

/// An event of one area with balloons that take 1 kWh at 1080 W.
struct PowerJob {
  PowerJob() {
    area.id = "a1";
    house.inflators = {{"i", "Inflator", 10, 2, 1080, 120, "", {}}};
    air.areas = {{"a1", 500, 4000, 200, 60}};
    air.all = air.areas[0];
  }
  std::vector<AreaPower> power() {
    event.areas = {Shared<Area>(area)};
    return power_of(event, air, house);
  }
  const Finding* find(std::string_view code) {
    const auto needs = power();
    held = power_findings(event, needs, air, house);
    for (const Finding& finding : held)
      if (finding.code == code) return &finding;
    return nullptr;
  }
  Area area;
  Event event;
  House house;
  AirNeed air;
  Findings held;
};

TEST_CASE("the cord is chosen for the outlet's distance with slack") {
  // By hand: 1080 W / 120 V / 0.9 = 10 A. 30.48 m (100 ft) · 1.15 = 35.05 m: 10 AWG loses 2 · 10 · 1.24 · 0.115 = 2.852 V
  // = 2.38 %, 12 AWG 3.8 %. 2.5 mm²: 2 · 10 · 0.00798 · 1.21615 · 35.052 = 6.80 V; 6 mm²: 2.81 V = 2.34 %, 4 mm²: 3.52 %.
  PowerJob job;
  job.area.site.outlet_m = 30.48;
  const auto power = job.power();
  REQUIRE(power.size() == 1);
  CHECK(power[0].amps == doctest::Approx(10));
  CHECK(power[0].cord_m == doctest::Approx(35.052));
  REQUIRE(power[0].awg != nullptr);
  CHECK(std::string(power[0].awg->name) == "10 AWG");
  CHECK(power[0].awg_drop == doctest::Approx(0.02377).epsilon(1e-3));
  REQUIRE(power[0].metric != nullptr);
  CHECK(std::string(power[0].metric->name) == "6 mm²");
  const Finding* const told = job.find("cord");
  REQUIRE(told != nullptr);
  CHECK(told->remedy == "Bring a three-wire outdoor cord of at least 10 AWG (loses 2.4 %) or 6 mm² (loses 2.3 %).");
}

TEST_CASE("no outlet known, or one too far, asks for a battery or a generator with a margin") {
  // By hand: 1080 W · 1.5 = 1620 W, told as 1650; 60 Wh · 1.5 = 90 Wh.
  PowerJob job;
  CHECK_FALSE(job.power()[0].cord_m.has_value());
  CHECK(job.power()[0].generator_w == doctest::Approx(1620));
  CHECK(job.power()[0].battery_wh == doctest::Approx(90));
  const Finding* const unknown = job.find("no-outlet-known");
  REQUIRE(unknown != nullptr);
  CHECK(unknown->weight == Weight::warning);
  CHECK(unknown->remedy.find("1650 W") != std::string::npos);
  CHECK(unknown->remedy.find("90 Wh") != std::string::npos);
  job.area.site.outlet_m = 200;
  const Finding* const far = job.find("outlet-too-far");
  REQUIRE(far != nullptr);
  CHECK(far->remedy.find("1650 W") != std::string::npos);
  CHECK(job.find("cord") == nullptr);
}

TEST_CASE("outdoors a ground-fault device is reminded of") {
  PowerJob job;
  job.area.site.outlet_m = 5;
  CHECK(job.find("ground-fault") == nullptr);
  job.area.site.surroundings = Surroundings::outdoors;
  CHECK(job.find("ground-fault") != nullptr);
}

TEST_CASE("inflators that share a circuit are cautioned of") {
  // By hand: 15 A · 0.8 = 12 A: one of 10 A, not two. At 1400 W: 12.96 A is too much for one.
  PowerJob job;
  job.area.site.outlet_m = 5;
  CHECK(circuit_amps(120, job.house) == doctest::Approx(12));
  CHECK(circuit_amps(230, job.house) == doctest::Approx(13 * 0.8));
  CHECK(job.find("inflators-share-circuit") == nullptr);
  job.event.terms.crew = 2;
  CHECK(job.find("inflators-share-circuit") != nullptr);
  job.house.inflators[0].watts = 1400;
  CHECK(job.find("circuit-overloaded") != nullptr);
}

TEST_CASE("an inflator that draws next to nothing was one of which a circuit carries less than none") {
  PowerJob job;
  job.area.site.outlet_m = 5;
  job.event.terms.crew = 3;
  job.house.inflators[0].watts = 1e-300;
  CHECK(job.find("inflators-share-circuit") == nullptr);
  CHECK(job.find("circuit-overloaded") == nullptr);
}

TEST_CASE("what serves without a cord is told in the same words everywhere") {
  // By hand as above: 1620 W told as 1650, 90 Wh.
  PowerJob job;
  const std::string own = print_own_power(job.power()[0]);
  CHECK(own == "a generator or an inverter of 1650 W, or a battery of 90 Wh with such an inverter");
  CHECK(job.find("no-outlet-known")->remedy.find(own) != std::string::npos);
  CHECK_FALSE(has_cord(job.power()[0]));
  // 10 A over 40.25 m: 6 mm² loses 2 × 10 × 0.0033 × 1.21615 × 40.25 = 3.23 V of the 3.6 that 3 % are; with 11.1 A 3.59 V,
  // while 10 AWG loses 2 × 11.1 × 1.24 ÷ 304.8 × 40.25 = 3.64 V: one kind of cord serves, the other does not.
  job.area.site.outlet_m = 35;
  job.house.inflators[0].watts = 1200;
  REQUIRE(job.power()[0].awg == nullptr);
  REQUIRE(job.power()[0].metric != nullptr);
  CHECK(has_cord(job.power()[0]));
  CHECK(print_gauges(job.power()[0], Units::metric) == "6 mm²");
  CHECK(print_gauges(job.power()[0], Units::feet) == "6 mm²");
}

TEST_CASE("a hand pump needs no power, and a house without an inflator says so") {
  PowerJob job;
  job.house.inflators[0].watts = 0;
  CHECK(job.power().empty());
  CHECK(job.find("no-outlet-known") == nullptr);
  CHECK(job.find("no-inflator") == nullptr);
  job.house.inflators.clear();
  CHECK(job.find("no-inflator") != nullptr);
}

}  // namespace
}  // namespace quadrille
