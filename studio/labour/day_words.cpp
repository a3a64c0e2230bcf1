#include "studio/labour/day_words.hpp"

#include <algorithm>

#include "studio/model/finding_words.hpp"
#include "studio/model/rates.hpp"

namespace quadrille {

std::string print_moment(const Moment& moment) {
  if (moment.clock.empty()) {
    const std::int64_t minutes = moment.second / 60;
    const std::string rest = std::to_string(minutes % 60);
    return std::to_string(minutes / 60) + (rest.size() == 1 ? ":0" : ":") + rest;
  }
  return moment.clock + (moment.day == 0 ? "" : (moment.day > 0 ? "+" : "") + std::to_string(moment.day));
}

std::string print_people(const PlannedTask& planned) {
  const std::vector<int>& people = planned.people;
  std::string text;
  for (std::size_t i = 0; i < people.size();) {
    std::size_t last = i;
    while (last + 1 < people.size() && people[last + 1] == people[last] + 1) ++last;
    if (last < i + 2) last = i;
    text += (text.empty() ? "" : ", ") + std::to_string(people[i]);
    if (last > i) text += "-" + std::to_string(people[last]);
    i = last + 1;
  }
  return text;
}

std::string print_slack(const PlannedTask& planned) {
  return planned.critical || planned.slack_s < 60 ? "none" : print_duration(planned.slack_s / 60 * 60);
}

std::string place_in(const PlannedTask& planned, const Event& event) {
  return place_of({Weight::note, {}, planned.task.area, planned.task.piece, {}, {}, {}}, event);
}

std::string short_place_in(const PlannedTask& planned, const Event& event) {
  const PlacedPiece* const piece = find_piece(event, planned.task.piece);
  if (piece == nullptr || piece->name.empty()) return place_in(planned, event);
  int namesakes = 0;
  for (const auto& area : event.areas)
    for (const auto& other : area->pieces) namesakes += other->name == piece->name ? 1 : 0;
  return namesakes == 1 ? piece->name : place_in(planned, event);
}

std::string plan_in_words(const DayPlan& plan, const Event& event) {
  if (plan.tasks.empty()) return "There is nothing to do: no piece is built.";
  std::string text = "Crew of " + std::to_string(plan.crew);
  if (plan.build.start && plan.build.end && !plan.build.start->clock.empty())
    text += "; at the venue from " + print_moment(*plan.build.start) + ", done at " + print_moment(*plan.build.end);
  if (const std::string ready_by = known_time(event.ready_by); !ready_by.empty())
    text += ", to be ready by " + ready_by;
  text += ".";
  if (plan.spare_s >= 60) text += " You could begin up to " + print_duration(plan.spare_s / 60 * 60) + " earlier.";
  return text;
}

std::string pace_in_words(const House& house) {
  const bool has_own =
      std::ranges::any_of(house.rates, [](const auto& rate) { return find_rate(rate.first) != nullptr; });
  return has_own
             ? "Times are by the house's own rates, and where it has none by the standard ones, which are those of a "
               "practised hand."
             : "Times are by the standard rates, which are those of a practised hand.";
}

std::string work_in_words(const DayPlan& plan) {
  const auto both = [](std::int64_t work_s, std::int64_t presence_s) {
    return print_duration(work_s) +
           (presence_s == work_s ? std::string() : ", " + print_duration(presence_s) + " with waiting");
  };
  return "Work at the venue, of all people: " + both(plan.site_work_s(), plan.site_presence_s()) +
         "; with home and the road " + both(plan.all_work_s(), plan.all_presence_s()) + ".";
}

std::string_view name_of_stretch(Phase phase) {
  switch (phase) {
    case Phase::day_before:
      return "The day before";
    case Phase::travel:
      return "On the road";
    case Phase::strike:
      return "Strike";
    case Phase::put_away:
      return "At home";
    case Phase::load_in:
    case Phase::build:
    case Phase::secure:
    case Phase::check:
      break;
  }
  return "At the venue";
}

}  // namespace quadrille
