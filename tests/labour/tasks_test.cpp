// The tasks of built events: what is in them, what they wait for, and their seconds by hand.
#include "studio/labour/tasks.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <set>
#include <string>

#include "studio/labour/loads.hpp"
#include "studio/model/rates.hpp"
#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

bool waits_for(const Task& task, const std::string& id) { return std::ranges::count(task.after, id) > 0; }

double quantity_of(const Job& job, const char* piece, const char* work) {
  double sum = 0;
  for (const Work& unit : job.built.at(piece)->piece.work)
    if (unit.key == work) sum += unit.quantity;
  return sum;
}

double standard(const char* rate) { return find_rate(rate)->standard; }

TEST_CASE("every unit of work that the piece types ask for is in a task at its rate") {
  const Job job(event_of({arch_of_33_quads(), placed_piece("p2", "column"), placed_piece("p3", "garland")}));
  const Labour labour = job.labour();
  const SecondsByRate seconds = seconds_by_rate(labour.tasks);
  // Work by balloons is looked at elsewhere; all other keys are rates.
  for (const char* key : {"make-cluster", "mount-cluster", "tie-to-frame", "join-rod", "place-base", "carry-ballast",
                          "raise-frame", "hang", "glue-filler"}) {
    CAPTURE(key);
    const double units = quantity_of(job, "p1", key) + quantity_of(job, "p2", key) + quantity_of(job, "p3", key);
    CHECK(units > 0);
    CHECK(seconds.at(key) == doctest::Approx(units * standard(key)));
  }
  CHECK(!find_finding(labour.findings, "work-without-rate").has_value());
}

TEST_CASE("balloons take their size's rate, the pairs one knot, and the air the nozzles' time") {
  // 132 balloons of 11 in at 9 in: 66 pairs. Air: π/6 × 0.229³ m³ = 6.288 l (the list has whole millimetres), × 1.03454
  // for 3.5 kPa over 101.325, × 132 = 858.7 l through two nozzles of 10 l/s: 42.9 s.
  const Job job(event_of({arch_of_33_quads()}));
  const Task task = task_of(job.labour().tasks, "p1/inflate");
  CHECK(task.fixed_s == doctest::Approx(42.9).epsilon(2e-3));
  CHECK(task.work_s == doctest::Approx(132 * standard("inflate-medium") + 66 * standard("tie-pair")));
  CHECK(task.seconds_by_rate.at("air-medium") == doctest::Approx(task.fixed_s));
  CHECK(task.seconds_by_rate.at("inflate-medium") == doctest::Approx(132 * standard("inflate-medium") + task.fixed_s));
  CHECK(task.at_inflator);
  CHECK(task.can_be_before);

  Job by_hand = job;
  by_hand.house.inflator = "hand-pump";  // 0.7 l/s
  CHECK(task_of(by_hand.labour().tasks, "p1/inflate").fixed_s == doctest::Approx(858.7 / 0.7).epsilon(2e-3));
  CHECK(find_task(by_hand.labour().tasks, "a1/power") == nullptr);
  by_hand.house.inflators.clear();
  CHECK(find_finding(by_hand.labour().findings, "no-inflator").has_value());
  CHECK(task_of(by_hand.labour().tasks, "p1/inflate").fixed_s == doctest::Approx(858.7 / 0.7).epsilon(2e-3));
}

TEST_CASE("clusters above reach are climbed for") {
  Job job(event_of({arch_of_33_quads()}));
  const double mount = task_of(job.labour().tasks, "p1/mount").work_s;
  job.house.rates["reach"] = 3;  // all within reach of the arch's crown, which is lower
  const double without = task_of(job.labour().tasks, "p1/mount").work_s;
  CHECK(without == doctest::Approx(33 * standard("mount-cluster")));
  std::size_t high = 0;
  for (const Cluster& cluster : job.built.at("p1")->piece.clusters)
    high += cluster.centre.z() > standard("reach") ? 1 : 0;
  CHECK(high > 0);
  CHECK(mount == doctest::Approx(without + static_cast<double>(high) * standard("climb")));
}

TEST_CASE("trips go by load and distance") {
  // 40 m away: a trip is 30 s at the vehicle, 15 s to set down, 40 m at 0.9 and back at 1.3 m/s: 120.2 s. 80 m: 195.4 s.
  Job job(event_of({arch_of_33_quads()}));
  const Task near = task_of(job.labour().tasks, "a1/carry-in");
  CHECK(near.parts >= 3);
  CHECK(near.work_s == doctest::Approx(static_cast<double>(near.parts) * 120.21).epsilon(1e-4));
  job.event.areas[0].edit([](Area& area) { area.site.vehicle_m = 80; });
  CHECK(task_of(job.labour().tasks, "a1/carry-in").work_s ==
        doctest::Approx(static_cast<double>(near.parts) * 195.43).epsilon(1e-4));
  job.event.areas[0].edit([](Area& area) { area.site.vehicle_m.reset(); });
  CHECK(task_of(job.labour().tasks, "a1/carry-in").work_s == doctest::Approx(near.work_s));  // 40 m are taken
  CHECK(find_finding(job.labour().findings, "vehicle-distance-unknown")->area == "a1");
  // By hand: two plates of 8 kg and two containers of 10.5 kg pair up to two trips of 18.5 kg; 20 kg of tools with
  // rods, tape and balloons are less than two more.
  CHECK(near.parts == 4);
  job.house.rates["carry-mass"] = 50;
  CHECK(task_of(job.labour().tasks, "a1/carry-in").parts == 2);
}

TEST_CASE("tasks wait for each other as the work does, and for nothing that is not there") {
  Event event = event_of({arch_of_33_quads(), placed_piece("p2", "garland")}, Surroundings::outdoors);
  event.areas[0].edit([](Area& area) {
    area.pieces[0].edit([](PlacedPiece& piece) {
      piece.lines.resize(2);
      piece.lines[0].tie = "front-1";
      piece.lines[0].y_m = -1.8;
      piece.lines[1].tie = "back-1";
      piece.lines[1].y_m = 1.8;
    });
  });
  const Job job(event);
  const auto tasks = job.labour().tasks;
  CHECK(waits_for(task_of(tasks, "a1/carry-in"), "arrive"));
  CHECK(waits_for(task_of(tasks, "a1/unpack"), "a1/carry-in"));
  CHECK(waits_for(task_of(tasks, "p1/raise"), "p1/join"));
  CHECK(waits_for(task_of(tasks, "p1/raise"), "p1/base"));
  CHECK(waits_for(task_of(tasks, "p1/inflate"), "a1/power"));
  CHECK(waits_for(task_of(tasks, "p1/make"), "p1/inflate"));
  CHECK(waits_for(task_of(tasks, "p1/mount"), "p1/make"));
  CHECK(waits_for(task_of(tasks, "p1/mount"), "p1/raise"));
  CHECK(waits_for(task_of(tasks, "p1/lines"), "p1/raise"));
  CHECK(waits_for(task_of(tasks, "p1/tie-to-frame"), "p1/mount"));
  CHECK(waits_for(task_of(tasks, "p1/tie-together"), "p1/mount"));
  CHECK(waits_for(task_of(tasks, "p2/hang"), "p2/mount"));
  CHECK(waits_for(task_of(tasks, "p2/fill"), "p2/hang"));
  CHECK(waits_for(task_of(tasks, "p1/lower"), "p1/take-down"));
  CHECK(waits_for(task_of(tasks, "a1/carry-out"), "a1/sweep"));
  CHECK(waits_for(task_of(tasks, "load-vehicle"), "fill-ballast"));
  for (const char* what : {"p1/lines", "p1/tie-together", "p2/fill", "p1/tie-to-frame"})
    CHECK(waits_for(task_of(tasks, "a1/check"), what));
  // A line with its stake each; by hand.
  CHECK(task_of(tasks, "p1/lines").work_s == doctest::Approx(2 * (standard("rig-line") + standard("drive-stake"))));
  std::set<std::string> ids;
  for (const Task& task : tasks) CHECK(ids.insert(task.id).second);
  for (const Task& task : tasks)
    for (const std::string& id : task.after) CHECK_MESSAGE(ids.contains(id), task.id, " waits for ", id);
  for (const Task& task : tasks) {
    CAPTURE(task.id);
    double by_rate = 0;
    for (const auto& [rate, seconds] : task.seconds_by_rate)
      if (!rate.starts_with("air-")) by_rate += seconds;
    CHECK(by_rate == doctest::Approx(task.work_s + task.fixed_s));
    CHECK(task.text.size() > 3);
    CHECK(task.crew_least <= task.crew_most);
  }
}

TEST_CASE("indoors nothing runs from cluster to cluster") {
  const Job job(event_of({arch_of_33_quads()}));
  CHECK(find_task(job.labour().tasks, "p1/tie-together") == nullptr);
  CHECK(find_task(job.labour().tasks, "p1/lines") == nullptr);
}

TEST_CASE("a frame over 2 m wants two") {
  const Job job(event_of({arch_of_33_quads()}));
  const Task tall = task_of(job.labour().tasks, "p1/raise");
  CHECK(tall.crew_least == 2);
  CHECK(seconds_of(tall, 1) == std::int64_t(standard("raise-frame") * standard("alone")));
  CHECK(task_of(job.labour().tasks, "p1/lower").crew_least == 2);
  const Job low(event_of({placed_piece("p1", "column", {{"height", number_of(Kind::length, 1.5)}})}));
  CHECK(task_of(low.labour().tasks, "p1/raise").crew_least == 1);
}

TEST_CASE("clusters made the day before are brought made") {
  const Job job(event_of({arch_of_33_quads()}));
  const auto there = job.labour().tasks, before = job.labour({true}).tasks;
  for (const char* what : {"p1/inflate", "p1/make"}) {
    CHECK(task_of(there, what).phase == Phase::build);
    CHECK(task_of(before, what).phase == Phase::day_before);
    CHECK(task_of(before, what).work_s == task_of(there, what).work_s);
    CHECK(waits_for(task_of(before, "load-vehicle"), what));
  }
  CHECK(task_of(before, "p1/mount").phase == Phase::build);
  CHECK(find_task(before, "a1/power") == nullptr);
  // 132 × 6.29 l in heaps of which they fill 0.64: 1297 l, 39.3 l a quad, six on a trip of 250 l: 6 trips, of which some
  // carry the rest besides.
  CHECK(task_of(before, "a1/carry-in").parts >= 6);
  CHECK(task_of(before, "a1/carry-in").parts > task_of(there, "a1/carry-in").parts);
  CHECK(task_of(before, "a1/carry-out").parts == task_of(there, "a1/carry-out").parts);
  House small = standard_house();
  small.rates["vehicle-bulk"] = 1000;
  const Job full(event_of({arch_of_33_quads()}), small);
  CHECK(find_finding(full.labour({true}).findings, "vehicle-full").has_value());
  CHECK(!find_finding(full.labour().findings, "vehicle-full").has_value());
}

TEST_CASE("work that no rate is for is told of, and goes by the house's own rate where it has one") {
  Job job(event_of({arch_of_33_quads()}));
  auto changed = std::make_shared<BuiltPiece>(*job.built.at("p1"));
  changed->piece.work.push_back({"polish", "Polish the balloons", 12});
  changed->piece.work.push_back({"polish", "Polish them again", 2});
  job.built["p1"] = changed;
  Labour labour = job.labour();
  CHECK(task_of(labour.tasks, "p1/work-polish").work_s == doctest::Approx(12 * standard("other-work")));
  CHECK(task_of(labour.tasks, "p1/work-polish-2").work_s == doctest::Approx(2 * standard("other-work")));
  const auto told = find_finding(labour.findings, "work-without-rate");
  REQUIRE(told.has_value());
  CHECK(told->key == "work-polish");
  CHECK(told->piece == "p1");
  job.house.rates["work-polish"] = 25;
  labour = job.labour();
  CHECK(task_of(labour.tasks, "p1/work-polish").work_s == doctest::Approx(12 * 25));
  CHECK(!find_finding(labour.findings, "work-without-rate").has_value());
}

TEST_CASE("a piece whose type is missing has its balloons and clusters, and says so") {
  Job job(event_of({arch_of_33_quads()}));
  job.event.areas[0].edit([](Area& area) {
    area.pieces[0].edit([](PlacedPiece& piece) {
      LastBuilt last;
      last.clusters = 10;
      last.counts = {{11, 0.229, 0, 40}};
      piece.last_built = last;
    });
  });
  job.built.clear();
  job.count = count_event(job.event, job.built, {});
  const Labour labour = job.labour();
  CHECK(task_of(labour.tasks, "p1/make").work_s == doctest::Approx(10 * standard("make-cluster")));
  CHECK(task_of(labour.tasks, "p1/mount").work_s == doctest::Approx(10 * standard("mount-cluster")));
  CHECK(find_task(labour.tasks, "p1/raise") == nullptr);
  CHECK(find_finding(labour.findings, "counted-as-last")->piece == "p1");
}

TEST_CASE("an event without pieces, or with none that can be built, has no tasks") {
  CHECK(Job(event_of({})).labour().tasks.empty());
  Event hidden = event_of({arch_of_33_quads()});
  hidden.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& piece) { piece.hidden = true; }); });
  CHECK(Job(hidden).labour().tasks.empty());
  CHECK(Job(hidden).labour().findings.empty());
  CHECK(Job(hidden).plan().tasks.empty());
}

TEST_CASE("an event in feet had kilograms, kilometres and metres in its day: each is in the event's units") {
  Event event = event_of({arch_of_33_quads()}, Surroundings::outdoors);
  event.terms.travel_m = 16'093.44;  // ten miles of 5280 ft
  event.areas[0].edit([](Area& area) { area.site.vehicle_m.reset(); });
  const auto texts = [](const Event& of) {
    const Labour labour = Job(of).labour();
    std::string all;
    for (const Task& task : labour.tasks) all += task.text + "; " + task.reason + "\n";
    for (const Finding& finding : labour.findings) all += finding.text + "\n";
    return all;
  };
  const std::string feet = texts(event);
  CAPTURE(feet);
  for (const char* metric : {" kg", " km", " m ", " m.", " m\n", "litres"})
    CHECK_MESSAGE(feet.find(metric) == std::string::npos, metric);
  CHECK(feet.find("Drive to the venue, 10.0 miles") != std::string::npos);
  CHECK(feet.find("with 44 lb of ballast") != std::string::npos);  // two feet with 10 kg each
  event.units = Units::metric;
  const std::string metric = texts(event);
  CHECK(metric.find("Drive to the venue, 16.1 km") != std::string::npos);
  CHECK(metric.find("with 20 kg of ballast") != std::string::npos);
  CHECK(metric.find(" lb") == std::string::npos);
}

TEST_CASE("one filled 11 containers where 12 were on the list: each foot has its own") {
  // Two feet with 12 kg each are two containers of 10 l apiece: four; their 24 kg together would be three.
  const Job job(event_of({placed_piece("p1", "arch", {{"ballast", number_of(Kind::mass, 12)}})}));
  CHECK(job.house.container_l == 10);
  const auto line = std::ranges::find(job.count.supplies, "ballast-container", &SupplyLine::key);
  REQUIRE(line != job.count.supplies.end());
  CHECK(line->quantity == 4);
  CHECK(task_of(job.labour().tasks, "fill-ballast").text.starts_with("Fill 4 containers with "));
}

TEST_CASE("what is too heavy for one person is told of") {
  const Job job(event_of({placed_piece("p1", "column", {{"plate-mass", number_of(Kind::mass, 35)}})}));
  const auto heavy = find_finding(job.labour().findings, "heavy-item");
  REQUIRE(heavy.has_value());
  CHECK(heavy->text.find("weighs 77 lb, and one person carries 44 lb") != std::string::npos);  // 35 and 20 ÷ 0.45359237
  Event metric = job.event;
  metric.units = Units::metric;
  CHECK(find_finding(Job(metric).labour().findings, "heavy-item")->text.find("weighs 35 kg") != std::string::npos);
  CHECK(!find_finding(Job(event_of({arch_of_33_quads()})).labour().findings, "heavy-item").has_value());
}

}  // namespace
}  // namespace quadrille
