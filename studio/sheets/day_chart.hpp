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

/// The number of a task in a box as its bar has it, `width` wide, its left top corner at `x`, `y` [mm on the page].
void add_task_number(Marks& marks, double x, double y, double width, std::size_t number, bool critical);

/// Height of that box [mm].
inline constexpr double task_number_height = 4.6;

}  // namespace quadrille
