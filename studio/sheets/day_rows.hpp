// The rows of the day's list: tasks of the plan, those that are alike together.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "studio/labour/day_plan.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// The same work of the same people at pieces whose names differ in their number alone, one after the other.
struct DayRow {
  std::vector<std::size_t> tasks;  ///< in plan.tasks, rising; at least one
};

/// Every task in one row, in the order of each row's first. Between the tasks of a row is less than a minute in which none
/// of them is done; all begin on the same day, and take half an hour at most together.
std::vector<DayRow> day_rows(const DayPlan& plan, const Event& event);

/// What a row says.
struct DayRowWords {
  std::string numbers;  ///< "12", "33–36, 38"
  std::string start;    ///< the clock, or the time since the stretch began
  std::string end;      ///< likewise; empty where it is within the same minute
  std::string people, what, where, slack;
  bool critical = false;  ///< one of its tasks is
  int day = 0;            ///< on which it begins, as Moment::day
  bool has_clock = false;
};
DayRowWords words_of(const DayRow& row, const DayPlan& plan, const Event& event);

}  // namespace quadrille
