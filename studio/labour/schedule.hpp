// A schedule: who does which task when, with so many people, so that all is done as early as can be found.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "studio/labour/task.hpp"

namespace quadrille {

struct Slot {
  std::size_t task = 0;  ///< its place in the list of tasks
  std::int64_t start_s = 0, end_s = 0;
  std::vector<int> people;   ///< from 1, rising
  int inflator = 0;          ///< from 1; 0 = none
  std::int64_t slack_s = 0;  ///< how much later it may end, with all that hangs on it, without the whole ending later
  bool operator==(const Slot&) const = default;
};

struct Schedule {
  std::vector<Slot> slots;  ///< one for each task, by start, then in the order of the tasks
  std::int64_t length_s = 0;
};

/// Schedules `tasks` from second 0 on with `crew` people (1 to 20) and `inflators` (1 or more). A task begins when
/// those it names in `after` have ended; names of tasks that are not in the list count as ended. A task is done by the
/// same people from its beginning to its end, nobody does two at once, and it never has fewer than it wants unless the
/// crew is smaller. An inflator that is used in one area goes to another when no task that has not begun wants it in
/// the first, or where nobody could go on otherwise. The best of several rules of list scheduling is taken, each tried
/// with every crew up to `crew`: so one more person never makes it longer, and it is never longer than the work of one
/// person in a row. The best found, not provably the best there is. Throws std::invalid_argument for a circle of tasks
/// that wait for each other, for an id that stands twice, and for a crew or inflators outside their range.
Schedule schedule(std::span<const Task> tasks, int crew, int inflators = 1);

/// The lengths of the schedules of crews of 1, 2, … `largest` people, as schedule() finds them; never rising.
std::vector<std::int64_t> lengths_by_crew(std::span<const Task> tasks, int largest, int inflators = 1);

/// The longest chain of tasks that wait for each other, each done by as many of `crew` as help: no schedule is shorter.
std::int64_t critical_path_s(std::span<const Task> tasks, int crew);

/// All tasks in a row, done by one person.
std::int64_t serial_s(std::span<const Task> tasks);

inline constexpr int largest_crew = 20;

}  // namespace quadrille
