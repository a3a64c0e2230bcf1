// What is brought and taken back, the cord, and the strike: seconds, trips and lines by hand.
#include <doctest/doctest.h>

#include <string>

#include "studio/model/rates.hpp"
#include "studio/takeoff/air.hpp"
#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

bool waits_for(const Task& task, const std::string& id) { return std::ranges::count(task.after, id) > 0; }

/// An arch on the lawn with one line in front and one behind.
Event tied_arch() {
  Event event = event_of({arch_of_33_quads()}, Surroundings::outdoors);
  event.areas[0].edit([](Area& area) {
    area.pieces[0].edit([](PlacedPiece& piece) {
      piece.lines.resize(2);
      piece.lines[0].tie = "front-1";
      piece.lines[0].y_m = -1.8;
      piece.lines[1].tie = "back-1";
      piece.lines[1].y_m = 1.8;
    });
  });
  return event;
}

TEST_CASE(
    "taking off lines, parting rods and lifting bases were half as much again for one person: lowering alone is") {
  const Job job(tied_arch());
  const auto tasks = job.labour().tasks;
  // Two lines of 40 s.
  const Task release = task_of(tasks, "p1/release");
  CHECK(release.work_s == doctest::Approx(80));
  CHECK(seconds_of(release, 1) == 80);
  // Lowering is 90 s for two, and half as much again for one.
  const Task lower = task_of(tasks, "p1/lower");
  CHECK(lower.work_s == doctest::Approx(90));
  CHECK(lower.crew_least == 2);
  CHECK(seconds_of(lower, 1) == 135);
  // Two bases of 30 s, 20 kg of ballast at 2 s/kg, and 15 s for each rod that was joined: 100 s and the rods.
  std::int64_t joints = 0;
  for (const Work& work : job.built.at("p1")->piece.work)
    if (work.key == "join-rod") joints += std::llround(work.quantity);
  REQUIRE(joints > 0);
  const Task part = task_of(tasks, "p1/part");
  CHECK(part.crew_least == 1);
  CHECK(seconds_of(part, 1) == 100 + 15 * joints);
  // Nobody lowers a frame that lines still hold, nor parts one that stands.
  CHECK(waits_for(release, "p1/take-down"));
  CHECK(waits_for(lower, "p1/release"));
  CHECK(waits_for(part, "p1/lower"));
  CHECK(waits_for(task_of(tasks, "p1/pack"), "p1/part"));
}

TEST_CASE("one bag was pulled for every size that its balloons are blown to, and water off a shelf") {
  // By hand: one bag of balloons blown to two sizes, a container, a line and a rod are four lines; ballast is no line,
  // since its container stands for it, and water comes out of the tap.
  Job job(event_of({arch_of_33_quads()}));
  job.count.bags.resize(1);
  job.count.balloons.resize(2);
  job.count.supplies = {{"ballast", "Ballast", "kg", 20},
                        {"ballast-container", "Container", "piece", 2},
                        {"ballast-water", "Water", "l", 20},
                        {"cluster-line", "Line", "m", 6},
                        {"rod-pvc", "Rod", "piece", 3}};
  job.house.kits.clear();
  CHECK(task_of(job.labour().tasks, "pull").text == "Pull and pack 4 lines of the lists");
  CHECK(task_of(job.labour().tasks, "pull").work_s == doctest::Approx(4 * 30));
  // A kit that brings all three rods and both containers is one line for two.
  FrameKit kit;
  kit.key = "gate";
  kit.parts = {{"rod-pvc", 3}, {"ballast-container", 2}};
  job.house.kits = {kit};
  CHECK(task_of(job.labour().tasks, "pull").text == "Pull and pack 3 lines of the lists");
}

TEST_CASE("the tools were loaded once for each area: they go into the vehicle once, and into each area") {
  Event event = event_of({arch_of_33_quads()});
  Area second = *event.areas[0];
  second.id = "a2";
  second.pieces[0].edit([](PlacedPiece& piece) { piece.id = "p2"; });
  event.areas.emplace_back(second);
  Job job(event);
  const auto parts = [&](const char* task) { return task_of(job.labour().tasks, task).parts; };
  const auto loaded = parts("load-vehicle"), back = parts("put-away"), first = parts("a1/carry-in"),
             other = parts("a2/carry-in"), out = parts("a2/carry-out");
  // 180 kg more of tools are nine more trips of 20 kg.
  job.house.rates["tools-mass"] = 200;
  CHECK(parts("load-vehicle") == loaded + 9);
  CHECK(parts("put-away") == back + 9);
  CHECK(parts("a1/carry-in") == first + 9);
  CHECK(parts("a2/carry-in") == other + 9);
  CHECK(parts("a2/carry-out") == out + 9);
}

TEST_CASE("a cord was laid where none reaches the outlet, and none was ever taken up") {
  Job job(event_of({arch_of_33_quads()}));
  // Setting up takes 120 s, and 10 m of cord 3 s/m; taking it up 1.5 s/m, before the place is cleared up.
  CHECK(task_of(job.labour().tasks, "a1/power").work_s == doctest::Approx(150));
  const Task coil = task_of(job.labour().tasks, "a1/take-up-cord");
  CHECK(coil.work_s == doctest::Approx(15));
  CHECK(coil.phase == Phase::check);
  CHECK(waits_for(coil, "p1/mount"));
  CHECK(waits_for(task_of(job.labour().tasks, "a1/tidy"), "a1/take-up-cord"));
  // 1200 W at 120 V and 0.9 are 11.1 A: over 100 m and more even 6 mm² loses 2 × 11.1 × 0.0033 × 1.216 × 100 = 8.9 V, and
  // 3.6 are allowed.
  job.event.areas[0].edit([](Area& area) { area.site.outlet_m = 100; });
  CHECK(task_of(job.labour().tasks, "a1/power").work_s == doctest::Approx(120));
  CHECK(find_task(job.labour().tasks, "a1/take-up-cord") == nullptr);
  job.event.areas[0].edit([](Area& area) { area.site.outlet_m.reset(); });
  CHECK(task_of(job.labour().tasks, "a1/power").work_s == doctest::Approx(120));
  CHECK(find_task(job.labour().tasks, "a1/take-up-cord") == nullptr);
  job.event.areas[0].edit([](Area& area) { area.site.outlet_m = 10; });
  CHECK(find_task(job.labour({true}).tasks, "a1/take-up-cord") == nullptr);  // nothing is blown up there
}

TEST_CASE(
    "an area was cleared up before its lines were tied: that comes after all work there, and the check after it") {
  const auto tasks = Job(tied_arch()).labour().tasks;
  const Task tidy = task_of(tasks, "a1/tidy");
  for (const char* what : {"p1/mount", "p1/lines", "p1/tie-together", "p1/tie-to-frame"}) CHECK(waits_for(tidy, what));
  CHECK(waits_for(task_of(tasks, "a1/check"), "a1/tidy"));
}

TEST_CASE("the water of the ballast was carried home again: it is emptied at the venue, and sand comes back") {
  Job job(event_of({arch_of_33_quads()}));
  Labour labour = job.labour();
  CHECK(task_of(labour.tasks, "fill-ballast").phase == Phase::day_before);
  CHECK(task_of(labour.tasks, "fill-ballast").work_s == doctest::Approx(20 * 8));
  const Task empty = task_of(labour.tasks, "a1/empty-ballast");
  CHECK(empty.phase == Phase::strike);
  CHECK(empty.work_s == doctest::Approx(20 * 3));
  CHECK(waits_for(empty, "p1/part"));
  CHECK(waits_for(task_of(labour.tasks, "a1/carry-out"), "a1/empty-ballast"));
  // In: two plates of 8 kg with a container of 10.5 kg each are two trips, tools and the rest two more. Back the empty
  // containers weigh half a kilogram, and both plates with both of them 17 kg: one trip; three in all.
  CHECK(task_of(labour.tasks, "a1/carry-in").parts == 4);
  CHECK(task_of(labour.tasks, "a1/carry-out").parts == 3);
  CHECK(task_of(labour.tasks, "load-vehicle").parts == 4);
  CHECK(task_of(labour.tasks, "put-away").parts == 3);
  job.house.ballast_fill = BallastFill::sand;
  labour = job.labour();
  CHECK(find_task(labour.tasks, "a1/empty-ballast") == nullptr);
  CHECK(task_of(labour.tasks, "a1/carry-out").parts == 4);
  CHECK(task_of(labour.tasks, "put-away").parts == 4);
}

TEST_CASE("an inflator of more than ten nozzles blew quicker in the count than in the day") {
  // By hand: 858.7 l (132 balloons, see tasks_test.cpp) through 20 nozzles of 10 l/s take 4.29 s.
  Job job(event_of({arch_of_33_quads()}));
  REQUIRE(inflator_in_use(job.house) != nullptr);
  job.house.inflators[0].nozzles = 20;
  CHECK(task_of(job.labour().tasks, "p1/inflate").fixed_s == doctest::Approx(4.29).epsilon(2e-3));
  CHECK(air_of(job.event, job.count, job.house).all.blowing_s == doctest::Approx(4.29).epsilon(2e-3));
  job.house.inflators[0].nozzles = 0;  // at least one
  CHECK(nozzles_of(job.house.inflators[0]) == 1);
  CHECK(task_of(job.labour().tasks, "p1/inflate").fixed_s == doctest::Approx(85.87).epsilon(2e-3));
}

TEST_CASE("a frame's work is told from its dressing") {
  const auto tasks = Job(tied_arch()).labour().tasks;
  for (const Task& task : tasks) {
    CAPTURE(task.id);
    CHECK(task.of_frame == (task.id == "p1/join" || task.id == "p1/base" || task.id == "p1/raise"));
  }
}

}  // namespace
}  // namespace quadrille
