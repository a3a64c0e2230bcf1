// The plan of a day in words, the same at the terminal and on paper.
#pragma once

#include <string>
#include <string_view>

#include "studio/labour/day_plan.hpp"
#include "studio/model/event.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// "07:30"; "00:15+1" on the day after; "0:05" from the beginning of its stretch where no clock is known.
std::string print_moment(const Moment& moment);

/// "1, 2", "1-6": three and more in a row as the first and the last.
std::string print_people(const PlannedTask& planned);

/// How much longer it may take, in whole minutes that are surely there: "none" where it is critical or has less than
/// one, else "12 min", "1 h 05 min".
std::string print_slack(const PlannedTask& planned);

/// "Gate, Gate arch"; empty where it is of the whole job.
std::string place_in(const PlannedTask& planned, const Event& event);

/// The same, without the area where the piece's name alone says which it is.
std::string short_place_in(const PlannedTask& planned, const Event& event);

/// "Crew of 2; at the venue from 07:30, done at 10:05, to be ready by 10:30. You could begin up to 1 h 05 min earlier."
std::string plan_in_words(const DayPlan& plan, const Event& event);

/// "Work at the venue, of all people: 5 h 44 min, 5 h 56 min with waiting; with home and the road 7 h 02 min, 7 h 20
/// min with waiting."
std::string work_in_words(const DayPlan& plan);

/// Whose pace the times are.
std::string pace_in_words(const House& house);

/// What stands over the tasks of a stretch: "At the venue".
std::string_view name_of_stretch(Phase phase);

}  // namespace quadrille
