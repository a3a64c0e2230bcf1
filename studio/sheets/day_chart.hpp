// The day as a chart: bars over time, a row for each person.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "studio/labour/day_plan.hpp"
#include "studio/model/event.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// A block `width` [mm] wide for each run of hours without a gap: at home, the road and the build, the strike and what
/// follows. Each is cut into strips of equal length, so long that most bars have room for the number that the list
/// gives them: the number of the task in `plan.tasks`, from 1. Critical tasks are dark with white figures and a thick
/// edge, others light. Load-in, "ready by" and strike stand as dashed lines with their names.
std::vector<Block> chart_blocks_of_day(const DayPlan& plan, const Event& event, double width);

/// The number of a task, or the numbers of several, in a box as its bar has it.
void add_task_number(Marks& marks, const Rect& box, const std::string& numbers, bool critical);

/// Height of that box [mm], and of one that is `width` mm wide and may want several lines.
inline constexpr double task_number_height = 4.6;
double height_of_task_number(const std::string& numbers, double width);

}  // namespace quadrille
