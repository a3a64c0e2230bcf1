// Seconds of work put together from rates, and each kept by its rate.
#pragma once

#include <string>
#include <string_view>

#include "studio/labour/task.hpp"
#include "studio/model/house.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {

class Effort {
 public:
  explicit Effort(const House& house) : house_(house) {}

  /// `times` units at the rate's seconds for one; none where times is 0 or less.
  void add(std::string_view rate, double times) { add_seconds(rate, rate_of(house_, rate) * times); }
  /// A way of `metres`, at a rate in metres a second.
  void walk(std::string_view rate, double metres) { add_seconds(rate, metres / rate_of(house_, rate)); }
  void add_seconds(std::string_view rate, double seconds) {
    if (!(seconds > 0)) return;
    seconds_ += seconds;
    by_rate_[std::string(rate)] += seconds;
  }

  double seconds() const { return seconds_; }

  /// A task that is this much work. Ids and text are left to fill in.
  Task task(Phase phase, int crew_most) const {
    Task task;
    task.phase = phase;
    task.work_s = seconds_;
    task.crew_most = crew_most;
    task.seconds_by_rate = by_rate_;
    return task;
  }

 private:
  const House& house_;
  double seconds_ = 0;
  SecondsByRate by_rate_;
};

}  // namespace quadrille
