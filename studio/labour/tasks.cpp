// The tasks of an event, area by area; those of each piece stand in piece_tasks.cpp.
#include "studio/labour/tasks.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "studio/labour/add_task.hpp"
#include "studio/labour/effort.hpp"
#include "studio/labour/home_tasks.hpp"
#include "studio/labour/loads.hpp"
#include "studio/labour/piece_tasks.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/air.hpp"
#include "studio/takeoff/power.hpp"
#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

/// An area in which something is built.
struct AreaJob {
  const Area* area = nullptr;
  std::vector<PieceJob> pieces;
  std::vector<LoadItem> brought, taken_back;      ///< in the vehicle for it, besides tools
  Trips in, out;                                  ///< from the vehicle into the area, and back to it, with tools
  double ballast_kg = 0;                          ///< with dead weights
  std::int64_t containers = 0, dead_weights = 0;  ///< that the ballast goes into
  Units units = Units::feet;                      ///< of the event
  double way_m = 0;
  double cord_m = 0;  ///< to lay to the outlet; 0 where none reaches it, or none is known
};

void append(std::vector<LoadItem>& to, const std::vector<LoadItem>& items) {
  to.insert(to.end(), items.begin(), items.end());
}

Trips trips_with_tools(std::vector<LoadItem> items, const House& house) {
  items.push_back({rate_of(house, "tools-mass"), 0, true});
  return trips_of(std::move(items), {rate_of(house, "carry-mass"), rate_of(house, "carry-bulk")});
}

std::vector<PieceJob> pieces_of(const Area& area, const BuiltEvent& built, const EventCount& count, Units units) {
  std::vector<PieceJob> jobs;
  for (const auto& placed : area.pieces) {
    const auto counted = std::ranges::find(count.pieces, placed->id, &PieceCount::id);
    if (counted == count.pieces.end() || counted->not_built) continue;
    const auto found = built.find(placed->id);
    const bool known = found != built.end() && found->second && found->second->status == Status::ok;
    jobs.push_back({&area, &*placed, &*counted, known ? &found->second->piece : nullptr, units});
  }
  return jobs;
}

/// Water is left at the venue, sand comes back.
bool is_emptied(const House& house) { return house.ballast_fill == BallastFill::water; }

AreaJob area_job(const Area& area, std::vector<PieceJob> pieces, const House& house, const WorkOptions& options,
                 Units units) {
  AreaJob job;
  job.area = &area;
  job.units = units;
  job.pieces = std::move(pieces);
  job.way_m = area.site.vehicle_m.value_or(rate_of(house, "vehicle-distance"));
  for (const PieceJob& piece : job.pieces) {
    append(job.brought, items_of(*piece.placed, *piece.count, piece.piece, house, true));
    append(job.taken_back, items_of(*piece.placed, *piece.count, piece.piece, house, !is_emptied(house)));
    if (options.prepare_clusters) append(job.brought, made_clusters(*piece.count));
    job.ballast_kg += dead_weights_kg(*piece.placed) + (piece.piece != nullptr ? ballast_kg(*piece.piece) : 0);
    job.containers += containers_of(*piece.count);
    job.dead_weights += std::ranges::count_if(piece.placed->lines, [](const SecuringLine& line) {
      return line.anchor == AnchorKind::dead_weight && line.mass_kg > 0;
    });
  }
  job.in = trips_with_tools(job.brought, house);
  job.out = trips_with_tools(job.taken_back, house);
  return job;
}

/// Appends tasks of one area.
class AreaTasks {
 public:
  AreaTasks(Labour& labour, const AreaJob& job, const House& house, const WorkOptions& options)
      : labour_(labour), job_(job), house_(house), options_(options) {}

  void load_in() {
    Effort unpacking(house_), power(house_);
    add("carry-in", "Unload and carry in", carrying(job_.in, Phase::load_in), {"arrive"});
    unpacking.add("unpack", static_cast<double>(job_.pieces.size()));
    Task unpack = unpacking.task(Phase::load_in, 4);
    unpack.parts = std::ssize(job_.pieces);
    add("unpack", "Unpack and lay out " + so_many(static_cast<double>(job_.pieces.size()), "piece"), unpack,
        {of_area("carry-in")});
    if (!sets_up_inflator()) return;
    power.add("power", 1);
    power.add("lay-cord", job_.cord_m);
    Task set_up = power.task(Phase::load_in, 1);
    set_up.at_inflator = true;
    add("power", "Set up the inflator", std::move(set_up), {of_area("unpack")});
  }

  void last() {
    std::vector<std::string> built, dressed;
    for (const Task& task : labour_.tasks)
      if (task.area == job_.area->id) {
        if (task.phase == Phase::build || task.phase == Phase::secure) built.push_back(task.id);
        if (task.phase == Phase::build) dressed.push_back(task.id);
      }
    if (built.empty()) built = dressed = {of_area("unpack")};
    Effort coiling(house_), checking(house_), tidying(house_);
    // Before the event: over a cord that stays, guests trip.
    if (sets_up_inflator()) coiling.add("take-up-cord", job_.cord_m);
    add("take-up-cord", "Take up the cord", coiling.task(Phase::check, 1), dressed);
    tidying.add("tidy", 1);
    built.push_back(of_area("take-up-cord"));
    add("tidy", "Clear up", tidying.task(Phase::check, 4), built);
    built.push_back(of_area("tidy"));
    checking.add("last-check", static_cast<double>(job_.pieces.size()));
    Task check = checking.task(Phase::check, 2);
    check.parts = std::ssize(job_.pieces);
    add("check", "Last check", check, built);
  }

  void strike() {
    std::vector<std::string> packed;
    for (const Task& task : labour_.tasks)
      if (task.area == job_.area->id && task.phase == Phase::strike) packed.push_back(task.id);
    Effort sweeping(house_), emptying(house_);
    sweeping.add("sweep", 1);
    add("sweep", "Sweep up", sweeping.task(Phase::strike, 4), packed);
    if (is_emptied(house_)) emptying.add("empty-ballast", job_.ballast_kg);
    add("empty-ballast", "Empty " + print_load(job_.ballast_kg, job_.units) + " of water where allowed",
        emptying.task(Phase::strike, 2), packed);
    packed.push_back(of_area("sweep"));
    packed.push_back(of_area("empty-ballast"));
    add("carry-out", "Carry out and load", carrying(job_.out, Phase::strike), packed);
  }

 private:
  std::string of_area(const char* what) const { return job_.area->id + "/" + what; }

  void add(const char* what, std::string text, Task task, const std::vector<std::string>& after) {
    task.area = job_.area->id;
    add_task(labour_.tasks, of_area(what), std::move(text), std::move(task), after);
  }

  bool sets_up_inflator() const {
    const Inflator* const inflator = inflator_in_use(house_);
    return !options_.prepare_clusters && inflator != nullptr && inflator->watts > 0;
  }

  Task carrying(const Trips& trips, Phase phase) const {
    Effort effort(house_);
    const auto times = static_cast<double>(trips.trips);
    effort.add("load", times);
    effort.add("set-down", times);
    effort.walk("walk-loaded", times * job_.way_m);
    effort.walk("walk-back", times * job_.way_m);
    Task task = effort.task(phase, 20);
    task.parts = trips.trips;
    return task;
  }

  Labour& labour_;
  const AreaJob& job_;
  const House& house_;
  const WorkOptions& options_;
};

VehicleLoad vehicle_load(const std::vector<AreaJob>& areas, const House& house) {
  VehicleLoad load;
  std::vector<LoadItem> brought, taken_back;
  for (const AreaJob& area : areas) {
    append(brought, area.brought);
    append(taken_back, area.taken_back);
    load.ballast_kg += area.ballast_kg;
    load.containers += area.containers;
    load.dead_weights += area.dead_weights;
  }
  load.trips = trips_with_tools(std::move(brought), house).trips;
  load.trips_back = trips_with_tools(std::move(taken_back), house).trips;
  return load;
}

void add_arrival(Labour& labour, const House& house) {
  Effort arriving(house);
  arriving.add("arrive", 1);
  add_task(labour.tasks, "arrive", "Park, find the contact, see the place", arriving.task(Phase::load_in, 1), {});
}

void add_check_out(Labour& labour, const House& house) {
  Effort leaving(house);
  leaving.add("check-out", 1);
  std::vector<std::string> struck;
  for (const Task& task : labour.tasks)
    if (task.phase == Phase::strike) struck.push_back(task.id);
  add_task(labour.tasks, "check-out", "Hand the place over", leaving.task(Phase::strike, 1), struck);
}

void note_what_is_taken(Labour& labour, const std::vector<AreaJob>& areas, const House& house,
                        const WorkOptions& options, Units units) {
  const auto say = [&](Weight weight, const char* code, const std::string& area, const std::string& piece,
                       const char* key, std::string text, std::string remedy) {
    labour.findings.push_back({weight, code, area, piece, key, std::move(text), std::move(remedy)});
  };
  double bulk_l = 0;
  for (const AreaJob& job : areas) {
    const double limit_kg = rate_of(house, "carry-mass");
    bulk_l += job.in.bulk_l;
    if (!job.area->site.vehicle_m)
      say(Weight::note, "vehicle-distance-unknown", job.area->id, {}, "vehicle-m",
          "How far it is from the vehicle is not known; " + print_length(job.way_m, lengths_in(units)) + " is taken.",
          "Measure it at the visit.");
    if (job.in.heaviest_kg > limit_kg)
      say(Weight::warning, "heavy-item", job.area->id, {}, "carry-mass",
          "One thing to carry in weighs " + print_load(job.in.heaviest_kg, units) + ", and one person carries " +
              print_load(limit_kg, units) + ".",
          "Bring a trolley or a second person, or smaller containers and plates.");
    for (const PieceJob& piece : job.pieces)
      if (piece.piece == nullptr)
        say(Weight::note, "counted-as-last", job.area->id, piece.placed->id, "",
            "Its type is not available: only the balloons and clusters of its last build have their time, its frame "
            "has none.",
            "");
  }
  if (inflator_in_use(house) == nullptr)
    say(Weight::note, "no-inflator", {}, {}, "inflator",
        "The house has no inflator; a hand pump of 0.7 litres a second is taken.", "Add yours to the house.");
  if (const double room_l = rate_of(house, "vehicle-bulk"); options.prepare_clusters && bulk_l > room_l)
    say(Weight::warning, "vehicle-full", {}, {}, "vehicle-bulk",
        "The made clusters fill " + print_air(bulk_l, lengths_in(units)) + ", and the vehicle has room for " +
            print_air(room_l, lengths_in(units)) + ".",
        "Make some of them at the venue, or drive twice.");
}

}  // namespace

Labour tasks_of(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                const WorkOptions& options) {
  const std::vector<AreaPower> power = power_of(event, air_of(event, count, house), house);
  std::vector<AreaJob> areas;
  for (const auto& area : event.areas)
    if (auto pieces = pieces_of(*area, built, count, event.units); !pieces.empty()) {
      areas.push_back(area_job(*area, std::move(pieces), house, options, event.units));
      const auto fed = std::ranges::find(power, area->id, &AreaPower::area);
      if (fed != power.end() && has_cord(*fed)) areas.back().cord_m = area->site.outlet_m.value_or(0);
    }
  Labour labour;
  if (areas.empty()) return labour;
  const VehicleLoad load = vehicle_load(areas, house);
  Labour on_site;
  add_arrival(on_site, house);
  for (const AreaJob& area : areas) {
    AreaTasks tasks(on_site, area, house, options);
    tasks.load_in();
    for (const PieceJob& piece : area.pieces) add_building(on_site, piece, house, options);
    tasks.last();
  }
  for (const AreaJob& area : areas) {
    for (const PieceJob& piece : area.pieces) add_striking(on_site, piece, house);
    AreaTasks(on_site, area, house, options).strike();
  }
  add_check_out(on_site, house);
  // What is made the day before comes first, then the road, then the rest as it was put together.
  const auto made_before =
      std::ranges::stable_partition(on_site.tasks, [](const Task& task) { return task.phase == Phase::day_before; });
  labour.tasks.assign(on_site.tasks.begin(), made_before.begin());
  labour.findings = std::move(on_site.findings);
  add_leaving(labour, count, load, house, event.units);
  add_travel(labour, event, false, house);
  labour.tasks.insert(labour.tasks.end(), made_before.begin(), made_before.end());
  add_travel(labour, event, true, house);
  add_put_away(labour, load, house);
  note_what_is_taken(labour, areas, house, options, event.units);
  return labour;
}

SecondsByRate seconds_by_rate(const std::vector<Task>& tasks) {
  SecondsByRate sums;
  for (const Task& task : tasks)
    for (const auto& [rate, seconds] : task.seconds_by_rate) sums[rate] += seconds;
  return sums;
}

}  // namespace quadrille
