#include "studio/labour/day_plan.hpp"

#include <algorithm>
#include <numeric>
#include <stdexcept>
#include <utility>

#include "studio/labour/day_findings.hpp"
#include "studio/labour/schedule.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {
namespace {

/// Where a stretch begins, or only on which day.
struct Begin {
  std::int64_t second = 0;
  bool has_clock = false;
  int day = 0;  ///< where it has none
};

Moment moment_of(const Begin& begin, std::int64_t after_s) {
  const std::int64_t second = begin.second + after_s;
  if (!begin.has_clock) return {second, {}, begin.day};
  return {second, clock_of(second), day_of(second)};
}

std::vector<Task> tasks_of_phases(const std::vector<Task>& tasks, std::initializer_list<Phase> phases) {
  std::vector<Task> chosen;
  std::ranges::copy_if(tasks, std::back_inserter(chosen),
                       [&](const Task& task) { return std::ranges::count(phases, task.phase) > 0; });
  return chosen;
}

std::vector<Task> building(const std::vector<Task>& tasks) {
  return tasks_of_phases(tasks, {Phase::load_in, Phase::build, Phase::secure, Phase::check});
}

/// Puts stretches into a plan, one behind the other.
class Planning {
 public:
  Planning(DayPlan& plan, int inflators) : plan_(plan), inflators_(inflators) {}

  void work(DayStretch& stretch, const std::vector<Task>& tasks, const Begin& begin) {
    const Schedule found = schedule(tasks, plan_.crew, inflators_);
    for (const Slot& slot : found.slots)
      add(stretch, {tasks[slot.task], moment_of(begin, slot.start_s), moment_of(begin, slot.end_s), slot.people,
                    slot.slack_s == 0, slot.slack_s});
    stretch.critical_path_s = critical_path_s(tasks, plan_.crew);
    stretch.serial_s = serial_s(tasks);
    close(stretch, found.length_s, begin);
  }

  /// The one task in which everybody sits in the vehicle.
  void drive(DayStretch& stretch, const std::vector<Task>& tasks, const char* id, Begin begin) {
    const auto task = std::ranges::find(tasks, id, &Task::id);
    if (task == tasks.end()) return;
    const std::int64_t length = seconds_of(*task, 1);
    std::vector<int> everybody(static_cast<std::size_t>(plan_.crew));
    std::iota(everybody.begin(), everybody.end(), 1);
    add(stretch, {*task, moment_of(begin, 0), moment_of(begin, length), std::move(everybody), true, 0});
    stretch.critical_path_s = stretch.serial_s = length;
    close(stretch, length, begin);
  }

 private:
  void add(DayStretch& stretch, PlannedTask planned) {
    const std::int64_t work = planned.work_s();
    stretch.work_s += work;
    plan_.work_s_by_phase[planned.task.phase] += work;
    if (!planned.task.piece.empty()) plan_.work_s_by_piece[planned.task.piece] += work;
    plan_.tasks.push_back(std::move(planned));
  }

  static void close(DayStretch& stretch, std::int64_t length_s, const Begin& begin) {
    stretch.length_s = length_s;
    if (length_s == 0) return;
    stretch.start = moment_of(begin, 0);
    stretch.end = moment_of(begin, length_s);
  }

  DayPlan& plan_;
  int inflators_;
};

std::int64_t drive_s(const std::vector<Task>& tasks, const char* id) {
  const auto task = std::ranges::find(tasks, id, &Task::id);
  return task == tasks.end() ? 0 : seconds_of(*task, 1);
}

/// A stretch that goes on where another with a clock began, so many seconds after it; else one of its own.
Begin following(const Begin& other, std::int64_t after_s) {
  return other.has_clock ? Begin{other.second + after_s, true, 0} : Begin{0, false, 0};
}

/// When the work at the venue begins, and what that says of the time there is.
Begin begin_of_build(DayPlan& plan, const std::vector<Task>& build, const DayTimes& times, std::int64_t spare_time_s,
                     int inflators) {
  const std::int64_t length = schedule(build, plan.crew, inflators).length_s;
  if (!times.ready_by_s) return {times.load_in_from_s.value_or(0), times.load_in_from_s.has_value(), 0};
  const std::int64_t ready = *times.ready_by_s, latest = ready - spare_time_s - length;
  if (!times.load_in_from_s) return {latest, true, 0};
  const std::int64_t load_in = *times.load_in_from_s, done = load_in + length;
  if (latest >= load_in) {
    plan.spare_s = latest - load_in;
    return {latest, true, 0};
  }
  if (done <= ready) {
    plan.findings.push_back(finding_of_spare_time(ready - done, spare_time_s));
  } else {
    plan.short_s = done - ready;
    plan.findings.push_back(finding_of_short_day(build, length, ready - load_in, plan.crew, inflators));
  }
  return {load_in, true, 0};
}

}  // namespace

DayPlan plan_day(const Labour& labour, const DayTimes& times, int crew, const House& house, int inflators) {
  if (crew < 1 || crew > largest_crew) throw std::invalid_argument("a crew is 1 to 20 people");
  DayPlan plan;
  plan.crew = crew;
  plan.findings = labour.findings;
  if (labour.tasks.empty()) return plan;
  for (const Findings& more : {findings_of_times(times), findings_of_crew(labour.tasks, crew)})
    plan.findings.insert(plan.findings.end(), more.begin(), more.end());
  const auto at_home = tasks_of_phases(labour.tasks, {Phase::day_before});
  const auto build = building(labour.tasks);
  const auto strike = tasks_of_phases(labour.tasks, {Phase::strike});
  const auto after = tasks_of_phases(labour.tasks, {Phase::put_away});
  const auto spare_time_s = static_cast<std::int64_t>(rate_of(house, "spare-time"));

  const Begin arrival = begin_of_build(plan, build, times, spare_time_s, inflators);
  const Begin leaving = following(arrival, -drive_s(labour.tasks, "travel"));
  Planning planning(plan, inflators);
  planning.work(plan.before, at_home, {0, false, -1});
  planning.drive(plan.there, labour.tasks, "travel", leaving);
  planning.work(plan.build, build, arrival);
  // Nobody strikes before all is built, whatever the times say.
  const std::int64_t built_s = arrival.second + plan.build.length_s;
  const bool knows_strike = times.strike_from_s.has_value();
  const Begin taking_down{
      knows_strike && arrival.has_clock ? std::max(*times.strike_from_s, built_s) : times.strike_from_s.value_or(0),
      knows_strike, 0};
  planning.work(plan.strike, strike, taking_down);
  const Begin homeward = following(taking_down, plan.strike.length_s);
  planning.drive(plan.back, labour.tasks, "travel-back", homeward);
  planning.work(plan.after, after, following(homeward, plan.back.length_s));
  return plan;
}

int crew_of(const Event& event, const House& house, const PlanOptions& options) {
  const std::int64_t crew = options.crew ? *options.crew : event.terms.crew.value_or(house.crew);
  return static_cast<int>(std::clamp<std::int64_t>(crew, 1, largest_crew));
}

DayPlan plan_event(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                   const PlanOptions& options) {
  const int crew = crew_of(event, house, options), inflators = std::max(options.inflators, 1);
  const DayTimes times = times_of(event);
  DayPlan plan = plan_day(tasks_of(event, built, count, house, options.work), times, crew, house, inflators);
  if (plan.short_s == 0) return plan;
  std::string helps;
  const std::int64_t time_s = plan.build.length_s - plan.short_s;
  const auto still_too_long = [&](std::int64_t length_s) {
    return length_s > time_s ? std::string(", which is still too long") : std::string();
  };
  WorkOptions prepared = options.work;
  prepared.prepare_clusters = true;
  const Labour made_before = tasks_of(event, built, count, house, prepared);
  const std::int64_t made_s = schedule(building(made_before.tasks), crew, inflators).length_s;
  if (made_s < plan.build.length_s)
    helps += " Clusters made the day before leave " + print_duration(made_s) + " at the venue" +
             still_too_long(made_s) +
             (std::ranges::count(made_before.findings, "vehicle-full", &Finding::code) > 0
                  ? ". They are more than the vehicle has room for."
                  : ".");
  const auto as_it_is = building(tasks_of(event, built, count, house, options.work).tasks);
  if (const std::int64_t length = schedule(as_it_is, crew, inflators + 1).length_s; length < plan.build.length_s)
    helps += " With one more inflator it takes " + print_duration(length) + still_too_long(length) + ".";
  for (Finding& finding : plan.findings)
    if (finding.code == "day-too-short") finding.remedy += helps;
  return plan;
}

}  // namespace quadrille
