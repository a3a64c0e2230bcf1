// The day in words.
#include "studio/labour/day_words.hpp"

#include <doctest/doctest.h>

#include <string>

#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

TEST_CASE("a time that is none was told as if it were one") {
  Event event = event_of({arch_of_33_quads()});
  CHECK(says(plan_in_words(Job(event).plan(), event), ", to be ready by 11:00."));
  event.ready_by = "25:00";
  CHECK_FALSE(says(plan_in_words(Job(event).plan(), event), "to be ready by"));
  CHECK(known_time("25:00").empty());
  CHECK(known_time("07:30") == "07:30");
}

TEST_CASE("how much earlier the work could begin is told, in minutes that are surely there") {
  DayPlan plan;
  Event event;
  plan.tasks.resize(1);
  plan.spare_s = 7'319;  // 2 h 01 min 59 s
  CHECK(says(plan_in_words(plan, event), "You could begin up to 2 h 01 min earlier."));
  plan.spare_s = 59;
  CHECK_FALSE(says(plan_in_words(plan, event), "earlier"));
}

TEST_CASE("whose pace the times are is told") {
  House house = standard_house();
  CHECK(pace_in_words(house) == "Times are by the standard rates, which are those of a practised hand.");
  house.rates["cord-slack"] = 1.3;  // a figure, and no rate of work
  CHECK(says(pace_in_words(house), "by the standard rates, which"));
  house.rates["tie-pair"] = 9;
  CHECK(says(pace_in_words(house), "by the house's own rates"));
}

}  // namespace
}  // namespace quadrille
