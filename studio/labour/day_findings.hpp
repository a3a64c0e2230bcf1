// What the plan of a day has to say.
#pragma once

#include "studio/labour/day_plan.hpp"

namespace quadrille {

/// For the times as the event gives them.
Findings findings_of_times(const DayTimes& times);

/// "too-few-people": tasks that want more than the crew.
Findings findings_of_crew(const std::vector<Task>& tasks, int crew);

/// "spare-time-short": `left_s` of the `wanted_s` seconds that are to be kept free before it must be ready.
Finding finding_of_spare_time(std::int64_t left_s, std::int64_t wanted_s);

/// "day-too-short": `build` are the tasks between load-in and ready, for which there are `time_s` seconds.
Finding finding_of_short_day(const std::vector<Task>& build, std::int64_t length_s, std::int64_t time_s, int crew,
                             int inflators);

}  // namespace quadrille
