// The lists of the day sheet, each as rows of `width` [mm] of a column.
#pragma once

#include <vector>

#include "studio/paper/area_layout.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// The day's times, how chart and list are read, and what is wrong with the plan.
std::vector<Block> times_blocks(const Setting& setting, double width);

/// Client, venue, the house and its people, with lines to be filled in.
std::vector<Block> contact_blocks(const Setting& setting, double width);

/// For each area the ground, the ways from vehicle and outlet, the trips, and who allowed what.
std::vector<Block> access_blocks(const Setting& setting, double width);

/// Every task with its number, times, people and place, a block for each stretch; the event between.
std::vector<Block> task_blocks(const Setting& setting, double width);

/// What the plan took for granted; last on the sheet, and not there where it is nothing.
std::vector<Block> taken_blocks(const Setting& setting, double width);

}  // namespace quadrille
