// Rates: the table is sane, the house's own count, and the paces that the trade tells of are within what they express.
#include "studio/model/rates.hpp"

#include <doctest/doctest.h>

#include <limits>
#include <set>
#include <stdexcept>
#include <string>

#include "studio/model/figures.hpp"

namespace quadrille {
namespace {

TEST_CASE("every rate has a key of its own, words, a source, and its standard within its range") {
  std::set<std::string> keys;
  for (const Rate& rate : all_rates()) {
    CAPTURE(rate.key);
    CHECK(keys.insert(rate.key).second);
    CHECK(find_figure(rate.key) == nullptr);  // both are kept in House::rates
    CHECK(std::string(rate.key).find(foreign_work) != 0);
    CHECK(std::string(rate.label).size() > 3);
    CHECK(std::string(rate.source).size() > 5);
    CHECK(rate.least >= 0);
    CHECK(rate.least <= rate.standard);
    CHECK(rate.standard <= rate.most);
    CHECK(rate.least < rate.most);
    CHECK(find_rate(rate.key) == &rate);
  }
  CHECK(keys.size() > 40);
}

TEST_CASE("the house's own rate counts, drawn into its range") {
  House house;
  CHECK(rate_of(house, "mount-cluster") == find_rate("mount-cluster")->standard);
  house.rates["mount-cluster"] = 14;
  CHECK(rate_of(house, "mount-cluster") == 14);
  house.rates["mount-cluster"] = 1e9;
  CHECK(rate_of(house, "mount-cluster") == find_rate("mount-cluster")->most);
  house.rates["mount-cluster"] = -1;
  CHECK(rate_of(house, "mount-cluster") == find_rate("mount-cluster")->least);
  house.rates["mount-cluster"] = std::numeric_limits<double>::quiet_NaN();
  CHECK(rate_of(house, "mount-cluster") == find_rate("mount-cluster")->standard);
  CHECK_THROWS_AS(rate_of(house, "mount"), std::invalid_argument);
}

TEST_CASE("work that only a stranger's piece type knows has the house's rate or none") {
  House house;
  CHECK(!rate_of_foreign_work(house, "polish"));
  house.rates["work-polish"] = 25;
  CHECK(rate_of_foreign_work(house, "polish") == 25);
  CHECK(rate_findings(house).empty());
  house.rates["work-polish"] = 1e9;
  CHECK(rate_of_foreign_work(house, "polish") == find_rate("other-work")->most);
  CHECK(rate_findings(house).size() == 1);
}

TEST_CASE("rates that nothing goes by, and rates outside their range, are told") {
  House house;
  house.rates = {{"mount-clusters", 9}, {"sparkle", 4}, {"tie-pair", 5000}, {"sand-density", 1.5}, {"make-cluster", 4}};
  const Findings findings = rate_findings(house);
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].code == "rate-unknown");
  CHECK(findings[0].key == "mount-clusters");
  CHECK(findings[0].remedy == "Did you mean \"mount-cluster\"?");
  CHECK(findings[1].key == "sparkle");
  CHECK(findings[1].remedy.find("work-") != std::string::npos);
  CHECK(findings[2].code == "rate-range");
  CHECK(findings[2].key == "tie-pair");
  CHECK(findings[2].remedy.find("1 to 120 s") != std::string::npos);
  house.rates = {{"tie-pair", std::numeric_limits<double>::infinity()}};
  CHECK(rate_findings(house).size() == 1);
}

/// Seconds for each balloon of quads of 11 in, alone, without the air's own time: a pair for two, a cluster for four.
double seconds_by_balloon(double inflate, double pair, double make, double mount) {
  return inflate + pair / 2 + (make + mount) / 4;
}

TEST_CASE("an expert's and a beginner's pace are within what the rates can express") {
  const auto by_balloon = [](auto end) {
    return seconds_by_balloon(find_rate("inflate-medium")->*end, find_rate("tie-pair")->*end,
                              find_rate("make-cluster")->*end, find_rate("mount-cluster")->*end);
  };
  // Common practice, "Classic Balloon Decor 101": an expert builds 20 ft of spiral arch, about 120 balloons, in about 10
  // minutes: 5 s for each. The air of one 9 in balloon (6.3 l) at 20 litres a second takes 0.3 s of that.
  CHECK(by_balloon(&Rate::least) < 5 - 0.3);
  // Common practice, "Balloon Drops": a beginner inflates 75 to 100 balloons an hour: up to 48 s for each.
  CHECK(find_rate("inflate-medium")->most >= 48);
  CHECK(find_rate("inflate-medium")->least <= 36);
  // Common practice, "Classic Balloon Decor 101": two people inflate and tie 100 balloons in 12 minutes: 14.4 s of one
  // person for each; "Balloon Drops": an experienced decorator inflates about 300 an hour, 12 s for each.
  const Rate &inflate = *find_rate("inflate-medium"), &pair = *find_rate("tie-pair");
  CHECK(inflate.least + pair.least / 2 < 12);
  CHECK(inflate.most + pair.most / 2 > 14.4);
  // The standard lies between the expert and the beginner.
  CHECK(by_balloon(&Rate::standard) > 5);
  CHECK(by_balloon(&Rate::standard) < 36);
}

}  // namespace
}  // namespace quadrille
