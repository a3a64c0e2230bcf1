// One task of a job as a value: what is done, how much work it is, how many can share it, and what it waits for.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille {

/// Where in the job a task lies. `day_before` and `put_away` are at home, `travel` is there and back, the others are at
/// the venue: `load_in` to `check` before the event, `strike` after it.
enum class Phase { day_before, travel, load_in, build, secure, check, strike, put_away };

/// "day-before", "travel", "load-in", "build", "secure", "check", "strike", "put-away".
std::string_view key_of(Phase phase);
/// "The day before", "Travel", "Load-in", …
std::string_view name_of(Phase phase);

/// Seconds by the key of the rate that they come from.
using SecondsByRate = std::map<std::string, double, std::less<>>;

struct Task {
  std::string id;    ///< unique in the job: "p1/inflate", "a1/power", "load-vehicle"
  std::string area;  ///< id, or empty: of the whole job
  std::string piece;
  std::string text;    ///< "Inflate and tie 132 balloons"
  std::string reason;  ///< why it wants so many people; empty where anybody can do it alone
  Phase phase = Phase::build;
  double work_s = 0;        ///< seconds of one person, shared by those who do it; 0 or more
  double fixed_s = 0;       ///< seconds besides that no helper shortens: the inflator's air, the drive; 0 or more
  std::int64_t parts = 0;   ///< work_s goes in so many equal parts, of which each is one person's: trips; 0 = any share
  int crew_least = 1;       ///< people it wants at least; a smaller crew does it all the same, with more work
  int crew_most = 1;        ///< more people do not help; at least crew_least
  double alone_factor = 1;  ///< work_s grows by it where fewer than crew_least do it; 1 or more
  /// Needs an inflator, which no other task has meanwhile, and which stays in the task's area until nothing there needs
  /// one any more. (At home all areas are one place.)
  bool at_inflator = false;
  bool can_be_before = false;      ///< could as well be done the day before
  bool of_frame = false;           ///< puts up the piece's frame, before it is dressed
  std::vector<std::string> after;  ///< ids of tasks that have ended when it begins
  /// What work_s and fixed_s are made of. Of "air-medium" and the like, the air's own time, the seconds stand a second
  /// time in those of "inflate-medium", as one would take them with a watch.
  SecondsByRate seconds_by_rate;
  bool operator==(const Task&) const = default;
};

/// How long the task lasts with so many people, 1 or more, in whole seconds, rounded up. More than crew_most are as
/// crew_most.
std::int64_t seconds_of(const Task& task, int people);

/// Seconds that so many people, 1 or more, work while they are at it, in whole seconds, rounded up: never more than
/// they are there, and less where some stand idle during the others' last trip.
std::int64_t work_of(const Task& task, int people);

/// How many of a crew, 1 or more, it wants at least and can use at most.
int least_of(const Task& task, int crew);
int most_of(const Task& task, int crew);

}  // namespace quadrille
