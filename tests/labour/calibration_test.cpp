// Rates out of finished jobs, by hand.
#include "studio/labour/calibration.hpp"

#include <doctest/doctest.h>

#include <limits>

#include "studio/model/rates.hpp"
#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

JobRecord job(const char* rate, double planned, double actual) {
  JobRecord record;
  record.planned_s[rate] = planned;
  record.actual_s[rate] = actual;
  return record;
}

House house_of(std::vector<JobRecord> jobs) {
  House house;
  house.jobs = std::move(jobs);
  return house;
}

TEST_CASE("one job moves a rate a third of the way") {
  // Standard 10 s, ratio 450/300 = 1.5, one job of three: 10 × (1 + 0.5/3) = 11.67, to three digits 11.7.
  const auto rates = calibrated_rates(house_of({job("mount-cluster", 300, 450)}));
  REQUIRE(rates.size() == 1);
  CHECK(rates[0].key == "mount-cluster");
  CHECK(rates[0].held == 10);
  CHECK(rates[0].ratio == doctest::Approx(1.5));
  CHECK(rates[0].trust == doctest::Approx(1.0 / 3));
  CHECK(rates[0].jobs == 1);
  CHECK(rates[0].proposed == 11.7);
}

TEST_CASE("the weighted median counts, and many jobs are believed") {
  // Ratios 0.8 (100), 1.2 (200), 1.3 (300), 9 (100): the weights reach 100, 300, 600 of 700, and more than 350 at 1.3.
  // Effective jobs 700² / (100² + 200² + 300² + 100²) = 490,000 / 150,000 = 3.2667; trust 3.2667 / 5.2667 = 0.62025.
  // 10 × (1 + 0.62025 × 0.3) = 11.861, to three digits 11.9. The slip of the pen, a ratio of 9, moves nothing.
  const auto rates = calibrated_rates(house_of({job("mount-cluster", 100, 80), job("mount-cluster", 200, 240),
                                                job("mount-cluster", 300, 390), job("mount-cluster", 100, 900)}));
  REQUIRE(rates.size() == 1);
  CHECK(rates[0].ratio == doctest::Approx(1.3));
  CHECK(rates[0].trust == doctest::Approx(0.62025).epsilon(1e-4));
  CHECK(rates[0].proposed == 11.9);
}

TEST_CASE("between two that weigh the same the middle counts") {
  const auto rates = calibrated_rates(house_of({job("mount-cluster", 100, 100), job("mount-cluster", 100, 140)}));
  CHECK(rates[0].ratio == doctest::Approx(1.2));
  CHECK(rates[0].trust == doctest::Approx(0.5));
  CHECK(rates[0].proposed == 11);
}

TEST_CASE("who is slower on foot has a lower speed") {
  // Twice as long: 0.9 / (1 + 1/3) = 0.675 m/s.
  const auto rates = calibrated_rates(house_of({job("walk-loaded", 100, 200)}));
  CHECK(rates[0].proposed == 0.675);
}

TEST_CASE("the inflator's own time is not the hands'") {
  // 132 balloons: planned 462 s of hands and 43 s of air; a watch said 736 s: (736 − 43) / 462 = 1.5; a third of the way:
  // 3.5 × 1.16667 = 4.083.
  JobRecord record = job("inflate-medium", 505, 736);
  record.planned_s["air-medium"] = 43;
  record.actual_s["air-medium"] = 0;
  const auto rates = calibrated_rates(house_of({record}));
  REQUIRE(rates.size() == 1);
  CHECK(rates[0].ratio == doctest::Approx(1.5));
  CHECK(rates[0].proposed == 4.08);
}

TEST_CASE("what was not timed, is no number or is no rate of time says nothing") {
  const double infinity = std::numeric_limits<double>::infinity(), nan = std::numeric_limits<double>::quiet_NaN();
  JobRecord untimed;
  untimed.planned_s["mount-cluster"] = 100;
  CHECK(
      calibrated_rates(house_of({untimed, job("make-cluster", 0, 10), job("make-cluster", nan, 10),
                                 job("make-cluster", 10, infinity), job("carry-mass", 10, 20), job("sparkle", 10, 20)}))
          .empty());
}

TEST_CASE("a rate stays in its range") {
  std::vector<JobRecord> jobs(30, job("mount-cluster", 100, 1e7));
  CHECK(calibrated_rates(house_of(jobs))[0].proposed == find_rate("mount-cluster")->most);
  jobs.assign(400, job("mount-cluster", 100, 0.001));
  CHECK(calibrated_rates(house_of(jobs))[0].proposed == find_rate("mount-cluster")->least);
}

TEST_CASE("rates that were taken over change nothing when they are reckoned again") {
  House house = house_of({job("mount-cluster", 300, 450), job("tie-pair", 100, 100)});
  const auto first = calibrated_rates(house);
  house = with_rates(house, first);
  CHECK(house.rates.at("mount-cluster") == 11.7);
  CHECK(!house.rates.contains("tie-pair"));  // it is the standard
  const auto second = calibrated_rates(house);
  REQUIRE(second.size() == 2);
  CHECK(second[0].proposed == first[0].proposed);
  CHECK(second[0].held == 11.7);
}

TEST_CASE("a record holds what the standard rates plan, whatever the house's own are") {
  Job arch(event_of({arch_of_33_quads()}));
  const JobRecord standard = record_of(arch.event, arch.built, arch.count, arch.house);
  CHECK(standard.date == "2027-06-19");
  CHECK(standard.planned_s.at("mount-cluster") == doctest::Approx(330));
  CHECK(standard.actual_s.empty());
  arch.house.rates["mount-cluster"] = 20;
  CHECK(record_of(arch.event, arch.built, arch.count, arch.house) == standard);
  arch.house.rates["carry-mass"] = 50;  // a load is no time: the trips are the house's own
  CHECK(record_of(arch.event, arch.built, arch.count, arch.house).planned_s.at("load") < standard.planned_s.at("load"));
}

TEST_CASE("who works at other rates all the time is known after some jobs") {
  // A decorator who takes 0.7 of the standard for mounting, told by twenty jobs whose ratios lie evenly up to a fifth to
  // either side: the median is within their spacing of 0.7, and a trust of about 20/22 leaves some of the way.
  House house;
  for (int i = 0; i < 20; ++i)
    house.jobs.push_back(job("mount-cluster", 300, 300 * 0.7 * (1 + 0.2 * (7 * i % 20 - 9.5) / 9.5)));
  CHECK(calibrated_rates(house)[0].proposed == doctest::Approx(10 * (1 - 0.3 * 20 / 22)).epsilon(0.03));
}

}  // namespace
}  // namespace quadrille
