#include "studio/sheets/day_rows.hpp"

#include <algorithm>

#include "studio/labour/day_words.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paper/piece_key.hpp"

namespace quadrille {
namespace {

std::string name_of(const PlannedTask& planned, const Event& event) {
  const PlacedPiece* const piece = find_piece(event, planned.task.piece);
  return piece == nullptr ? "" : piece->name;
}

/// Whether both are told in one row, where the last of the row ends at `end_s`.
bool go_together(const PlannedTask& one, const PlannedTask& other, std::int64_t end_s, const Event& event) {
  constexpr std::int64_t most_between_s = 60, most_in_all_s = 30 * 60;
  return one.task.text == other.task.text && one.task.reason == other.task.reason && one.task.area == other.task.area &&
         one.task.phase == other.task.phase && one.people == other.people && one.start.day == other.start.day &&
         one.start.clock.empty() == other.start.clock.empty() && other.start.second <= end_s + most_between_s &&
         std::max(end_s, other.end.second) - one.start.second <= most_in_all_s &&
         differ_in_number(name_of(one, event), name_of(other, event));
}

std::int64_t end_of(const DayRow& row, const DayPlan& plan) {
  std::int64_t end_s = plan.tasks[row.tasks.front()].end.second;
  for (const std::size_t task : row.tasks) end_s = std::max(end_s, plan.tasks[task].end.second);
  return end_s;
}

/// Where the day is told over the row, the clock alone.
std::string clock_of(const Moment& moment) { return moment.clock.empty() ? print_moment(moment) : moment.clock; }

}  // namespace

std::vector<DayRow> day_rows(const DayPlan& plan, const Event& event) {
  std::vector<DayRow> rows;
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const auto row = std::ranges::find_if(rows.rbegin(), rows.rend(), [&](const DayRow& one) {
      return go_together(plan.tasks[one.tasks.front()], plan.tasks[i], end_of(one, plan), event);
    });
    if (row == rows.rend())
      rows.push_back({{i}});
    else
      row->tasks.push_back(i);
  }
  return rows;
}

DayRowWords words_of(const DayRow& row, const DayPlan& plan, const Event& event) {
  const PlannedTask& first = plan.tasks[row.tasks.front()];
  PlannedTask all = first;  // with the last end and the least slack
  std::vector<std::size_t> numbers;
  std::vector<std::string> names;
  for (const std::size_t task : row.tasks) {
    const PlannedTask& planned = plan.tasks[task];
    numbers.push_back(task + 1);
    names.push_back(name_of(planned, event));
    if (planned.end.second > all.end.second) all.end = planned.end;
    all.critical = all.critical || planned.critical;
    all.slack_s = std::min(all.slack_s, planned.slack_s);
  }
  DayRowWords words;
  words.numbers = print_numbers(numbers);
  words.start = clock_of(first.start);
  words.end = all.end.day == first.start.day ? clock_of(all.end) : print_moment(all.end);
  if (words.end == words.start) words.end.clear();
  words.people = print_people(all);
  words.what = first.task.text + (first.task.reason.empty() ? "" : " (" + first.task.reason + ")");
  words.where = row.tasks.size() > 1 ? print_names(names) + ", each" : short_place_in(first, event);
  words.slack = print_slack(all);
  words.critical = all.critical, words.day = first.start.day, words.has_clock = !first.start.clock.empty();
  return words;
}

}  // namespace quadrille
