#include "studio/labour/day_findings.hpp"

#include <algorithm>
#include <utility>

#include "studio/labour/schedule.hpp"

namespace quadrille {
namespace {

Finding of_event(Weight weight, const char* code, const char* key, std::string text, std::string remedy) {
  return {weight, code, {}, {}, key, std::move(text), std::move(remedy)};
}

std::string people(int number) { return number == 1 ? "one person" : std::to_string(number) + " people"; }

/// "3 people do it in 48 min.", or how far even the largest crew gets.
std::string what_people_help(const std::vector<Task>& build, std::int64_t time_s, int crew, int inflators) {
  const auto lengths = lengths_by_crew(build, largest_crew, inflators);
  const std::int64_t quickest = lengths.back();
  for (int more = crew + 1; more <= largest_crew; ++more)
    if (const std::int64_t length = lengths[static_cast<std::size_t>(more) - 1]; length <= time_s)
      return "With " + people(more) + " it takes " + print_duration(length) + ".";
  return "No number of people does it in that time: the quickest is " + print_duration(quickest) + ".";
}

}  // namespace

Findings findings_of_times(const DayTimes& times) {
  Findings findings;
  if (!times.ready_by_s)
    findings.push_back(of_event(Weight::note, "no-ready-by", "ready-by",
                                "When it must be ready is not set, so the day is not planned back from it.",
                                "Set \"ready by\"."));
  if (!times.strike_from_s)
    findings.push_back(of_event(Weight::note, "no-strike-from", "strike-from",
                                "When the strike may begin is not set, so it has no clock.", "Set \"strike from\"."));
  if (times.load_in_from_s.value_or(0) < 0)
    findings.push_back(of_event(Weight::note, "load-in-day-before", "load-in-from",
                                "The load-in at " + clock_of(*times.load_in_from_s) +
                                    " is later than what it must be ready for, so it is taken to be the day before.",
                                ""));
  if (times.strike_from_s.value_or(0) >= seconds_of_day)
    findings.push_back(of_event(Weight::note, "strike-day-after", "strike-from",
                                "The strike at " + clock_of(*times.strike_from_s) +
                                    " is earlier than what comes before it, so it is taken to be the day after.",
                                ""));
  return findings;
}

Findings findings_of_crew(const std::vector<Task>& tasks, int crew) {
  Findings findings;
  for (const Task& task : tasks) {
    if (task.crew_least <= crew) continue;
    const auto more = static_cast<std::int64_t>(task.work_s * (task.alone_factor - 1) + 0.5);
    findings.push_back({Weight::warning, "too-few-people", task.area, task.piece, "crew",
                        "\"" + task.text + "\" wants " + people(task.crew_least) + " and " +
                            (crew == 1 ? "one is" : std::to_string(crew) + " are") + " there" +
                            (task.reason.empty() ? std::string() : ": " + task.reason) +
                            (more > 0 ? "; " + print_duration(more) + " more work is reckoned with." : "."),
                        "Have somebody to lend a hand then."});
  }
  return findings;
}

Finding finding_of_spare_time(std::int64_t left_s, std::int64_t wanted_s) {
  return of_event(Weight::warning, "spare-time-short", "ready-by",
                  "Of the " + print_duration(wanted_s) + " that are kept free before it must be ready, " +
                      (left_s < 60 ? std::string("nothing is") : print_duration(left_s / 60 * 60) + " are") + " left.",
                  "Load in earlier, or come with more people.");
}

Finding finding_of_short_day(const std::vector<Task>& build, std::int64_t length_s, std::int64_t time_s, int crew,
                             int inflators) {
  const std::string there_is = time_s > 0 ? "there is " + print_duration(time_s) : std::string("there is no time");
  return of_event(Weight::problem, "day-too-short", "ready-by",
                  "From the load-in until it must be ready " + there_is + ", and with " + people(crew) + " it takes " +
                      print_duration(length_s) + ": " + print_duration(length_s - time_s) + " are missing.",
                  what_people_help(build, time_s, crew, inflators));
}

}  // namespace quadrille
