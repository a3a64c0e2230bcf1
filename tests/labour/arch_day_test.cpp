// The day of one arch, held against what the trade knows of its pace.
#include <doctest/doctest.h>

#include <map>
#include <string>

#include "studio/labour/schedule.hpp"
#include "studio/model/rates.hpp"
#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

/// Minutes that the dressing of the piece takes: inflating, tying, making and mounting.
double dressing_min(const DayPlan& plan) {
  std::int64_t seconds = 0;
  for (const char* what : {"p1/inflate", "p1/make", "p1/mount"}) seconds += planned_of(plan, what).seconds();
  return static_cast<double>(seconds) / 60;
}

TEST_CASE("one person dresses an arch of 33 quads in 20 to 25 minutes and is about an hour on site") {
  // Common practice, no source: 20 to 25 minutes once frame and power are up; about an hour in all, half an hour of
  // load-in in it. The half hour is that until frame and power are up; within 15 %.
  const Job job(event_of({arch_of_33_quads()}));
  REQUIRE(job.count.total_balloons == 132);
  REQUIRE(job.count.pieces[0].clusters == 33);
  const DayPlan plan = job.plan();
  const double dressing = dressing_min(plan), in_all = static_cast<double>(plan.build.length_s) / 60;
  const double load_in =
      static_cast<double>(planned_of(plan, "p1/inflate").start.second - plan.build.start->second) / 60;
  MESSAGE("load-in, frame and power ", load_in, " min, dressing ", dressing, " min, on site ", in_all, " min");
  CHECK(dressing >= 20);
  CHECK(dressing <= 25);
  CHECK(load_in == doctest::Approx(30).epsilon(0.15));
  CHECK(in_all == doctest::Approx(60).epsilon(0.15));
  CHECK(planned_of(plan, "p1/raise").end.second <= planned_of(plan, "p1/inflate").start.second);
  CHECK(plan.build.length_s == plan.build.serial_s);  // alone everything is in a row
  CHECK(plan.build.end->clock == "10:30");            // half an hour to spare
}

/// The house with these rates, none of which is drawn into its range.
House house_with(const std::map<std::string, double, std::less<>>& rates) {
  House house = standard_house();
  house.rates = rates;
  REQUIRE(rate_findings(house).empty());
  return house;
}

TEST_CASE("an expert's rates make the arch at an expert's pace") {
  // Common practice, "Classic Balloon Decor 101": 20 ft of spiral arch, about 120 balloons, in about 10 minutes.
  PlacedPiece arch = arch_of_33_quads();
  arch.values.insert_or_assign("clusters", number_of(Kind::count, 30));
  const Job job(
      event_of({arch}),
      house_with(
          {{"inflate-medium", 1.6}, {"tie-pair", 2.5}, {"make-cluster", 2.5}, {"mount-cluster", 4}, {"climb", 1}}));
  REQUIRE(job.count.total_balloons == 120);
  CHECK(dressing_min(job.plan()) == doctest::Approx(10).epsilon(0.1));
}

TEST_CASE("two people inflate and tie 100 balloons in 12 minutes") {
  // Common practice, "Classic Balloon Decor 101". By hand: 100 × 10.1 s, 50 pairs × 7.2 s, and the air: 100 balloons of
  // 9 in with 6.255 l × 1.035 each at 20 l/s take 32 s, which nobody shortens: (1010 + 360) / 2 + 32 = 717 s.
  PlacedPiece arch = arch_of_33_quads();
  arch.values.insert_or_assign("clusters", number_of(Kind::count, 25));
  const Job job(event_of({arch}), house_with({{"inflate-medium", 10.1}, {"tie-pair", 7.2}}));
  REQUIRE(job.count.total_balloons == 100);
  const auto tasks = job.labour().tasks;
  const std::int64_t seconds = seconds_of(task_of(tasks, "p1/inflate"), 2);
  CHECK(seconds == doctest::Approx(717).epsilon(0.005));
  CHECK(static_cast<double>(seconds) / 60 == doctest::Approx(12).epsilon(0.02));
}

TEST_CASE("a beginner inflates 75 to 100 balloons an hour") {
  // Common practice, "Balloon Drops". Without tying, which the guide does not count: the rate with the air.
  for (const double rate : {36.0, 48.0}) {
    const Job job(event_of({arch_of_33_quads()}), house_with({{"inflate-medium", rate - 0.3}}));
    const auto by_rate = task_of(job.labour().tasks, "p1/inflate").seconds_by_rate;
    CHECK(by_rate.at("inflate-medium") == doctest::Approx(132 * rate).epsilon(0.01));
  }
}

TEST_CASE("more people are never longer at it, and two are at least half as quick again") {
  const Job job(event_of({arch_of_33_quads()}));
  std::int64_t last = job.plan().build.serial_s;
  for (int crew = 1; crew <= 6; ++crew) {
    const DayPlan plan = job.plan({{}, crew, 1});
    CHECK(plan.build.length_s <= last);
    CHECK(plan.build.length_s >= plan.build.critical_path_s);
    last = plan.build.length_s;
    if (crew == 2) CHECK(static_cast<double>(last) <= static_cast<double>(plan.build.serial_s) / 1.5);
  }
}

}  // namespace
}  // namespace quadrille
