#include "studio/labour/home_tasks.hpp"

#include <algorithm>
#include <utility>

#include "studio/labour/add_task.hpp"
#include "studio/labour/effort.hpp"
#include "studio/labour/piece_tasks.hpp"
#include "studio/model/amounts.hpp"
#include "studio/takeoff/supply_order.hpp"

namespace quadrille {
namespace {

/// As many as stand on the pull sheet besides its tools.
std::int64_t lines_to_pull(const EventCount& count, const House& house) {
  const SuppliesOrder supplies = order_supplies(count.supplies, house);
  return std::ssize(count.bags) + std::ssize(supplies.kits) + std::ranges::count_if(supplies.lines, is_pulled);
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
  const auto lines = static_cast<double>(lines_to_pull(count, house));
  Effort pulling(house), filling(house);
  pulling.add("pull", lines);
  add_task(labour.tasks, "pull", "Pull and pack " + so_many(lines, "line") + " of the lists",
           pulling.task(Phase::day_before, 2), {});
  filling.add("fill-ballast", load.ballast_kg);
  std::string what;
  if (load.containers > 0) what = so_many(static_cast<double>(load.containers), "container");
  if (load.dead_weights > 0)
    what += (what.empty() ? "" : " and ") + so_many(static_cast<double>(load.dead_weights), "dead weight");
  add_task(labour.tasks, "fill-ballast",
           "Fill " + what + " with " + print_load(load.ballast_kg, units) + " of " +
               (house.ballast_fill == BallastFill::sand ? "sand" : "water"),
           filling.task(Phase::day_before, 2), {});
  packed.insert(packed.end(), {"pull", "fill-ballast"});
  add_task(labour.tasks, "load-vehicle", "Load the vehicle", carrying(load.trips, Phase::day_before, house), packed);
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
  add_task(labour.tasks, back ? "travel-back" : "travel",
           (back ? "Drive back, " : "Drive to the venue, ") + print_road(*event.terms.travel_m, event.units),
           std::move(task), {});
}

void add_put_away(Labour& labour, const VehicleLoad& load, const House& house) {
  add_task(labour.tasks, "put-away", "Unload and put away", carrying(load.trips_back, Phase::put_away, house), {});
}

}  // namespace quadrille
