// The day's plan: every task with its people and its clock, back from "ready by" and on from "strike from".
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "studio/labour/clock.hpp"
#include "studio/labour/tasks.hpp"

namespace quadrille {

/// A moment of the plan.
struct Moment {
  /// From midnight at the beginning of the event's day; where the clock is not known, from the beginning of that
  /// stretch of work.
  std::int64_t second = 0;
  std::string clock;  ///< "07:30", local time; empty where it is not known
  int day = 0;        ///< -1 the day before the event's, 1 the day after
  bool operator==(const Moment&) const = default;
};

struct PlannedTask {
  Task task;
  Moment start, end;
  std::vector<int> people;   ///< from 1, rising; on the road everybody
  bool critical = false;     ///< where it takes longer, all that follows ends later
  std::int64_t slack_s = 0;  ///< how much longer it may take without that; 0 where critical
  std::int64_t seconds() const { return end.second - start.second; }
  /// Of all its people, without who waits for the others: see work_of().
  std::int64_t work_s() const { return work_of(task, static_cast<int>(people.size())); }
};

/// A stretch of work without a gap, in which a crew works from its start to its end.
struct DayStretch {
  std::optional<Moment> start, end;  ///< nothing where there is nothing to do
  std::int64_t length_s = 0;
  std::int64_t work_s = 0;           ///< of all people, without waiting
  std::int64_t critical_path_s = 0;  ///< no crew of any size is quicker than this chain of tasks
  std::int64_t serial_s = 0;         ///< one person alone
};

struct DayPlan {
  int crew = 1;
  std::vector<PlannedTask> tasks;  ///< by phase of the day and start
  /// At home before, on the road, at the venue before and after the event, on the road, at home after.
  DayStretch before, there, build, strike, back, after;
  std::map<Phase, std::int64_t> work_s_by_phase;                     ///< seconds of all people, without waiting
  std::map<std::string, std::int64_t, std::less<>> work_s_by_piece;  ///< the same, by id of the piece
  std::int64_t short_s = 0;  ///< how much longer it takes than there is time from load-in to ready; 0 where it fits
  std::int64_t spare_s = 0;  ///< how much before it begins it could: from load-in on; 0 where no load-in is set
  Findings findings;         ///< of the tasks, then of the plan

  /// Seconds that all people together work at the venue, without waiting; and with home and the road.
  std::int64_t site_work_s() const { return build.work_s + strike.work_s; }
  std::int64_t all_work_s() const { return site_work_s() + before.work_s + there.work_s + back.work_s + after.work_s; }
  /// Seconds that they are there, waiting with the rest: the whole crew from the beginning of each stretch to its end.
  std::int64_t site_presence_s() const { return crew * (build.length_s + strike.length_s); }
  std::int64_t all_presence_s() const {
    return site_presence_s() + crew * (before.length_s + there.length_s + back.length_s + after.length_s);
  }
};

struct PlanOptions {
  WorkOptions work;
  std::optional<int> crew;  ///< else the event's, else the house's; drawn into 1 to 20
  int inflators = 1;        ///< that are brought, 1 or more
};

/// Plans `labour` for a crew of 1 to 20 (others throw std::invalid_argument).
///
/// The work before the event ends at "ready by", less the rate "spare-time", and so begins as late as it can; where
/// that would be before "load-in from", it begins then, and takes of the spare time what it needs. Where it ends after
/// "ready by" all the same, `short_s` says by how much. The drive is before it. Without "ready by" the work begins at
/// "load-in from". The strike begins at "strike from"; it follows no clock where that is not set, and neither do the
/// way back and what is put away at home. What is done at home the day before has no clock; its day is -1. Each stretch
/// without a clock counts from its own beginning. People are numbered; who worked at a piece goes on with it where that
/// costs nothing.
///
/// Findings: "day-too-short" (problem, with how much is missing and the smallest crew that fits), "spare-time-short",
/// "too-few-people" (warnings), "no-ready-by", "no-strike-from", "load-in-day-before", "strike-day-after" (notes).
DayPlan plan_day(const Labour& labour, const DayTimes& times, int crew, const House& house, int inflators = 1);

/// The same for an event as it is: its tasks, its times, its crew. Where the day is too short the finding says besides
/// how far made clusters and one more inflator would help.
DayPlan plan_event(const Event& event, const BuiltEvent& built, const EventCount& count, const House& house,
                   const PlanOptions& options = {});

/// The crew that plan_event takes.
int crew_of(const Event& event, const House& house, const PlanOptions& options = {});

}  // namespace quadrille
