#include "studio/labour/home_tasks.hpp"

#include <utility>

#include "studio/labour/effort.hpp"
#include "studio/labour/piece_tasks.hpp"
#include "studio/model/amounts.hpp"

namespace quadrille {
namespace {

void add(Labour& labour, std::string id, std::string text, Task task, std::vector<std::string> after = {}) {
  if (task.work_s + task.fixed_s <= 0) return;
  task.id = std::move(id);
  task.text = std::move(text);
  task.after = std::move(after);
  task.can_be_before = task.phase == Phase::day_before;
  labour.tasks.push_back(std::move(task));
}

Task carrying(std::int64_t trips, Phase phase, const House& house) {
  Effort effort(house);
  effort.add("load", static_cast<double>(trips));
  Task task = effort.task(phase, 20);
  task.parts = trips;
  return task;
}

}  // namespace

void add_leaving(Labour& labour, const EventCount& count, const VehicleLoad& load, const House& house, Units units) {
  std::vector<std::string> packed;
  for (const Task& task : labour.tasks)
    if (task.phase == Phase::day_before) packed.push_back(task.id);
  const auto lines = static_cast<double>(count.balloons.size() + count.supplies.size());
  Effort pulling(house), filling(house);
  pulling.add("pull", lines);
  add(labour, "pull", "Pull and pack " + so_many(lines, "line") + " of the lists", pulling.task(Phase::day_before, 2));
  filling.add("fill-ballast", load.ballast_kg);
  std::string what;
  if (load.containers > 0) what = so_many(static_cast<double>(load.containers), "container");
  if (load.dead_weights > 0)
    what += (what.empty() ? "" : " and ") + so_many(static_cast<double>(load.dead_weights), "dead weight");
  add(labour, "fill-ballast",
      "Fill " + what + " with " + print_load(load.ballast_kg, units) + " of " +
          (house.ballast_fill == BallastFill::sand ? "sand" : "water"),
      filling.task(Phase::day_before, 2));
  packed.insert(packed.end(), {"pull", "fill-ballast"});
  add(labour, "load-vehicle", "Load the vehicle", carrying(load.trips, Phase::day_before, house), std::move(packed));
}

void add_travel(Labour& labour, const Event& event, bool back, const House& house) {
  if (!event.terms.travel_m) {
    if (!back)
      labour.findings.push_back({Weight::note,
                                 "travel-unknown",
                                 {},
                                 {},
                                 "travel-m",
                                 "How far it is to the venue is not known, so the day has no time for the road.",
                                 "Give the job its distance by road."});
    return;
  }
  Effort driving(house);
  driving.walk("drive", *event.terms.travel_m * 3.6);  // the rate is in km/h
  Task task = driving.task(Phase::travel, 1);
  std::swap(task.work_s, task.fixed_s);
  add(labour, back ? "travel-back" : "travel",
      (back ? "Drive back, " : "Drive to the venue, ") + print_road(*event.terms.travel_m, event.units), task);
}

void add_put_away(Labour& labour, const VehicleLoad& load, const House& house) {
  add(labour, "put-away", "Unload and put away", carrying(load.trips_back, Phase::put_away, house));
}

}  // namespace quadrille
