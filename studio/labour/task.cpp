#include "studio/labour/task.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {

std::string_view key_of(Phase phase) {
  constexpr std::string_view keys[] = {"day-before", "travel", "load-in", "build",
                                       "secure",     "check",  "strike",  "put-away"};
  return keys[static_cast<std::size_t>(phase)];
}

std::string_view name_of(Phase phase) {
  constexpr std::string_view names[] = {"The day before", "Travel", "Load-in", "Build",
                                        "Secure",         "Check",  "Strike",  "Back home"};
  return names[static_cast<std::size_t>(phase)];
}

int least_of(const Task& task, int crew) { return std::clamp(task.crew_least, 1, crew); }

int most_of(const Task& task, int crew) { return std::clamp(std::max(task.crew_most, task.crew_least), 1, crew); }

namespace {

/// A microsecond of rounding must not cost a second.
std::int64_t whole_seconds(double seconds) { return static_cast<std::int64_t>(std::ceil(seconds - 1e-6)); }

double factor_for(const Task& task, int people) { return people < task.crew_least ? task.alone_factor : 1; }

}  // namespace

std::int64_t seconds_of(const Task& task, int people) {
  const int hands = most_of(task, std::max(people, 1));
  double each = task.work_s / hands;
  if (task.parts > 0) {
    const std::int64_t rounds = (task.parts + hands - 1) / hands;
    each = task.work_s / static_cast<double>(task.parts) * static_cast<double>(rounds);
  }
  return whole_seconds(each * factor_for(task, hands) + task.fixed_s);
}

std::int64_t work_of(const Task& task, int people) {
  return whole_seconds(task.work_s * factor_for(task, people) + task.fixed_s * people);
}

}  // namespace quadrille
