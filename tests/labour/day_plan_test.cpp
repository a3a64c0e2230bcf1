// The plan of a day: its clock, its people, what does not fit, and what must hold for any plan.
#include "studio/labour/day_plan.hpp"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

Event busy_event() {
  Event event = event_of(
      {arch_of_33_quads(), placed_piece("p2", "column"), placed_piece("p3", "column"), placed_piece("p4", "garland")},
      Surroundings::outdoors);
  Area second;
  second.id = "a2";
  second.name = "Stage";
  second.site.vehicle_m = 60;
  second.pieces.emplace_back(placed_piece("p5", "arch"));
  event.areas.emplace_back(second);
  return event;
}

TEST_CASE("the day is planned back from ready, and on from the strike") {
  const Job job(event_of({arch_of_33_quads()}));
  const DayPlan plan = job.plan();
  // Half an hour before 11:00 is kept free.
  CHECK(plan.build.end->clock == "10:30");
  CHECK(plan.build.start->second + plan.build.length_s == 10 * 3600 + 1800);
  CHECK(plan.spare_s == plan.build.start->second - (7 * 3600 + 1800));
  CHECK(plan.short_s == 0);
  // 15 km at 45 km/h: 20 minutes, before the load-in and after the strike.
  CHECK(plan.there.length_s == 1200);
  CHECK(plan.there.end->second == plan.build.start->second);
  CHECK(plan.strike.start->clock == "17:00");
  CHECK(plan.back.start->second == plan.strike.end->second);
  CHECK(plan.after.start->second == plan.back.end->second);
  CHECK(plan.before.start->clock.empty());
  CHECK(plan.before.start->day == -1);
  for (const PlannedTask& planned : plan.tasks)
    CHECK(planned.start.clock.empty() == (planned.task.phase == Phase::day_before));
}

TEST_CASE("time is kept free before ready where the house wants it") {
  Job job(event_of({arch_of_33_quads()}));
  job.house.rates["spare-time"] = 900;
  CHECK(job.plan().build.end->clock == "10:45");
}

TEST_CASE("a night's work crosses midnight") {
  Event event = event_of({arch_of_33_quads()});
  event.load_in_from = "22:00";
  event.ready_by = "01:00";
  event.strike_from = "23:45";
  const DayPlan plan = Job(event).plan();
  CHECK(plan.build.start->day == -1);
  CHECK(plan.build.end->clock == "00:30");
  CHECK(plan.build.end->day == 0);
  CHECK(plan.strike.start->clock == "23:45");
  CHECK(plan.strike.end->day == 1);
  CHECK(plan.strike.end->clock < "01:00");
  CHECK(find_finding(plan.findings, "load-in-day-before").has_value());
}

TEST_CASE("times that are not set leave the clock out, and say so") {
  Event event = event_of({arch_of_33_quads()});
  event.ready_by.clear();
  event.strike_from.clear();
  DayPlan plan = Job(event).plan();
  CHECK(plan.build.start->clock == "07:30");
  CHECK(plan.strike.start->clock.empty());
  CHECK(plan.strike.start->second == 0);
  CHECK(find_finding(plan.findings, "no-ready-by").has_value());
  CHECK(find_finding(plan.findings, "no-strike-from").has_value());
  event.load_in_from.clear();
  plan = Job(event).plan();
  CHECK(plan.build.start->second == 0);
  CHECK(plan.build.start->clock.empty());
  CHECK(plan.there.start->second == 0);
}

TEST_CASE(
    "moments without a clock ran on from the stretch before, some of them below nought: each stretch has its own") {
  Event event = event_of({arch_of_33_quads()});
  event.strike_from.clear();  // as is common
  DayPlan plan = Job(event).plan();
  // 15 km at 45 km/h are 1200 s of road.
  CHECK(plan.there.end->second == plan.build.start->second);
  CHECK(plan.back.start->second == 0);
  CHECK(plan.back.end->second == 1200);
  CHECK(plan.after.start->second == 0);
  CHECK(plan.after.end->second == plan.after.length_s);
  event.ready_by.clear();
  event.load_in_from.clear();
  plan = Job(event).plan();
  CHECK(plan.there.start->second == 0);
  CHECK(plan.there.end->second == 1200);
  CHECK(plan.build.start->second == 0);
  for (const PlannedTask& planned : plan.tasks) {
    CAPTURE(planned.task.id);
    CHECK(planned.start.clock.empty());
    CHECK(planned.start.second >= 0);
    if (planned.task.phase == Phase::travel) CHECK(planned.start.second == 0);
  }
}

TEST_CASE("where the day is just long enough the spare time is given up before it is too short, and that is told") {
  Event event = event_of({arch_of_33_quads()});
  const std::int64_t length_min = (Job(event).plan().build.length_s + 59) / 60;
  // Twelve minutes more than it takes, of the half hour.
  const std::int64_t load_in_min = 11 * 60 - length_min - 12;
  event.load_in_from = clock_of(load_in_min * 60);
  const DayPlan plan = Job(event).plan();
  CHECK(plan.short_s == 0);
  CHECK(plan.spare_s == 0);
  CHECK(plan.build.start->clock == event.load_in_from);
  const auto told = find_finding(plan.findings, "spare-time-short");
  REQUIRE(told.has_value());
  CHECK(told->weight == Weight::warning);
  CHECK(told->text == "Of the 30 min that are kept free before it must be ready, 12 min are left.");
  CHECK(!find_finding(plan.findings, "day-too-short").has_value());
  CHECK(!find_finding(Job(event_of({arch_of_33_quads()})).plan().findings, "spare-time-short").has_value());
}

TEST_CASE("what does not help enough was offered as a remedy: it says so") {
  // Ten minutes are too few whatever is done the day before, and 1000 l take none of the 1297 l of 33 made quads.
  Event event = event_of({arch_of_33_quads()});
  event.load_in_from = "10:50";
  House small = standard_house();
  small.rates["vehicle-bulk"] = 1000;
  const std::string remedy = find_finding(Job(event, small).plan().findings, "day-too-short")->remedy;
  CAPTURE(remedy);
  const std::string made = print_duration(Job(event, small).plan({{true}, 1, 1}).build.length_s);
  CHECK(remedy.find("Clusters made the day before leave " + made +
                    " at the venue, which is still too long. They are more than the vehicle has room for.") !=
        std::string::npos);
  // Enough time for what is left then: no such words.
  event.load_in_from = "10:10";
  const std::string helps = find_finding(Job(event).plan().findings, "day-too-short")->remedy;
  CAPTURE(helps);
  CHECK(helps.find(" at the venue.") != std::string::npos);
  CHECK(helps.find("still too long") == std::string::npos);
}

TEST_CASE("a strike is not before all is built") {
  Event event = event_of({arch_of_33_quads()});
  event.load_in_from = "10:50";
  event.strike_from = "11:01";
  const DayPlan plan = Job(event).plan();
  CHECK(plan.build.end->second > 11 * 3600 + 60);
  CHECK(plan.strike.start->second == plan.build.end->second);
}

TEST_CASE("a day that is too short says by how much, and what would help") {
  Event event = event_of({arch_of_33_quads()});
  event.load_in_from = "10:20";  // 40 minutes for an hour's work
  const Job job(event);
  const DayPlan plan = job.plan();
  CHECK(plan.build.start->clock == "10:20");
  CHECK(plan.short_s == plan.build.length_s - 40 * 60);
  CHECK(plan.spare_s == 0);
  const auto told = find_finding(plan.findings, "day-too-short");
  REQUIRE(told.has_value());
  CHECK(told->weight == Weight::problem);
  CHECK(told->text.find(print_duration(plan.short_s)) != std::string::npos);
  // What it says helps is so: the smallest crew that fits, and clusters made before.
  int crew = 1;
  while (job.plan({{}, crew, 1}).short_s > 0) ++crew;
  REQUIRE(crew > 1);
  CHECK(told->remedy.find("With " + std::to_string(crew) + " people it takes " +
                          print_duration(job.plan({{}, crew, 1}).build.length_s)) != std::string::npos);
  CHECK(told->remedy.find("Clusters made the day before leave " +
                          print_duration(job.plan({{true}, 1, 1}).build.length_s)) != std::string::npos);
  CHECK(!find_finding(job.plan({{}, crew, 1}).findings, "day-too-short").has_value());
}

TEST_CASE("where no crew is enough, that is said") {
  Event event = event_of({arch_of_33_quads()});
  event.load_in_from = "10:58";
  const DayPlan plan = Job(event).plan();
  CHECK(find_finding(plan.findings, "day-too-short")->remedy.find("No number of people") != std::string::npos);
}

TEST_CASE("somebody alone is told what wants two") {
  const Job job(event_of({arch_of_33_quads()}));
  const auto told = find_finding(job.plan().findings, "too-few-people");
  REQUIRE(told.has_value());
  CHECK(told->piece == "p1");
  CHECK(told->weight == Weight::warning);
  CHECK(!find_finding(job.plan({{}, 2, 1}).findings, "too-few-people").has_value());
}

TEST_CASE("the crew is that of the options, the event, the house, in this order") {
  Event event;
  House house;
  house.crew = 3;
  CHECK(crew_of(event, house) == 3);
  event.terms.crew = 2;
  CHECK(crew_of(event, house) == 2);
  CHECK(crew_of(event, house, {{}, 5, 1}) == 5);
  CHECK(crew_of(event, house, {{}, 0, 1}) == 1);
  CHECK(crew_of(event, house, {{}, 500, 1}) == 20);
  CHECK_THROWS_AS(plan_day({}, {}, 0, house), std::invalid_argument);
}

TEST_CASE("in a day of many pieces nobody does two things at once, and the sums are those of the tasks") {
  const Job job(busy_event());
  for (const int crew : {1, 2, 3, 5}) {
    CAPTURE(crew);
    const DayPlan plan = job.plan({{}, crew, 1});
    std::int64_t all = 0, of_pieces = 0;
    for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
      const PlannedTask& a = plan.tasks[i];
      all += a.work_s();
      of_pieces += a.task.piece.empty() ? 0 : a.work_s();
      CHECK(a.slack_s >= 0);
      CHECK(a.critical == (a.slack_s == 0));
      CHECK(a.people.back() <= crew);
      if (a.start.clock.empty()) continue;
      for (std::size_t j = i + 1; j < plan.tasks.size(); ++j) {
        const PlannedTask& b = plan.tasks[j];
        const bool same_time = a.start.second < b.end.second && b.start.second < a.end.second;
        for (const int person : a.people)
          if (same_time) CHECK_MESSAGE(std::ranges::count(b.people, person) == 0, a.task.id, " and ", b.task.id);
        for (const std::string& id : a.task.after)
          if (b.task.id == id) FAIL_CHECK(a.task.id, " is before ", id);
      }
    }
    CHECK(all == plan.all_work_s());
    std::int64_t by_phase = 0, by_piece = 0;
    for (const auto& [phase, seconds] : plan.work_s_by_phase) by_phase += seconds;
    for (const auto& [piece, seconds] : plan.work_s_by_piece) by_piece += seconds;
    CHECK(by_phase == all);
    CHECK(by_piece == of_pieces);
    CHECK(plan.work_s_by_piece.size() == 5);
    CHECK(plan.site_work_s() <= plan.site_presence_s());
    CHECK(plan.all_work_s() <= plan.all_presence_s());
    CHECK(plan.build.length_s >= plan.build.critical_path_s);
    CHECK(plan.build.length_s <= plan.build.serial_s);
    CHECK(std::ranges::any_of(plan.tasks, &PlannedTask::critical));
  }
}

TEST_CASE("where people are many the inflator is what they wait for, and a second one helps") {
  const Job job(busy_event());
  CHECK(job.plan({{}, 6, 2}).build.length_s < job.plan({{}, 6, 1}).build.length_s);
}

TEST_CASE(
    "one inflator was in two areas at a time: it serves one until all there is blown up, then it is set up in the "
    "other") {
  Event event = event_of({arch_of_33_quads(), placed_piece("p2", "column")});
  Area terrace = *event.areas[0];
  terrace.id = "a2";
  terrace.pieces.clear();
  terrace.pieces.emplace_back(placed_piece("p3", "arch"));
  terrace.pieces.emplace_back(placed_piece("p4", "column"));
  event.areas.emplace_back(terrace);
  const Job job(event);
  for (const int crew : {1, 3, 6}) {
    CAPTURE(crew);
    const DayPlan plan = job.plan({{}, crew, 1});
    std::vector<const PlannedTask*> blown;
    for (const PlannedTask& planned : plan.tasks)
      if (planned.task.at_inflator) blown.push_back(&planned);
    REQUIRE(blown.size() == 6);  // four pieces, and the inflator set up twice
    std::ranges::sort(blown, {}, [](const PlannedTask* planned) { return planned->start.second; });
    int moves = 0;
    for (std::size_t i = 1; i < blown.size(); ++i) {
      CHECK(blown[i]->start.second >= blown[i - 1]->end.second);
      moves += blown[i]->task.area == blown[i - 1]->task.area ? 0 : 1;
    }
    CHECK(moves == 1);
  }
  CHECK(job.plan({{}, 6, 2}).build.length_s < job.plan({{}, 6, 1}).build.length_s);
}

TEST_CASE("on the road everybody is") {
  const DayPlan plan = Job(event_of({arch_of_33_quads()})).plan({{}, 3, 1});
  CHECK(planned_of(plan, "travel").people == std::vector<int>{1, 2, 3});
  CHECK(plan.there.work_s == 3 * 1200);
}

}  // namespace
}  // namespace quadrille
