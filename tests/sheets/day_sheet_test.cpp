// The day sheet: its list and its chart are the plan, and nothing is out of its place.
#include "studio/sheets/day_sheet.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <set>

#include "studio/labour/day_words.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paint/output.hpp"
#include "studio/sheets/day_rows.hpp"
#include "studio/sheets/distance.hpp"
#include "tests/paint/picture.hpp"
#include "tests/sheets/site_sheets.hpp"

using namespace quadrille;

namespace {

std::vector<std::string> texts_on(const std::vector<Page>& pages) {
  std::vector<std::string> texts;
  for (const Page& page : pages)
    for (const Mark& mark : page.marks)
      if (const auto* text = std::get_if<TextMark>(&mark.shape)) texts.push_back(text->text);
  return texts;
}

/// Seconds of a label of the axis, "09:15" or "0:05"; nothing for other text.
std::optional<double> clock_seconds(const std::string& text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string::npos || colon == 0 || text.size() != colon + 3) return {};
  for (std::size_t i = 0; i < text.size(); ++i)
    if (i != colon && (text[i] < '0' || text[i] > '9')) return {};
  return std::stod(text.substr(0, colon)) * 3600 + std::stod(text.substr(colon + 1)) * 60;
}

struct ReadBar {
  double seconds;
  bool critical;
};

/// The chart's bars as a reader takes them off the paper: seconds by the labels of the axis over them, person by the
/// row's number at the left.
std::map<int, std::vector<ReadBar>> bars_on(const std::vector<Page>& pages) {
  std::map<int, std::vector<ReadBar>> bars;
  for (const Page& page : pages) {
    std::map<double, std::vector<std::pair<double, double>>> axes;  // by y: x and seconds
    std::vector<std::pair<double, int>> people;                     // middle of the row, person
    for (const Mark& mark : page.marks)
      if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
        if (text->style.across == Across::centre && text->style.face == Face::regular)
          if (const auto seconds = clock_seconds(text->text))
            axes[text->box.y].push_back({text->box.middle().x, *seconds});
        if (text->box.x == page.margin && text->style.face == Face::bold && text->text.size() <= 2)
          people.push_back({text->box.middle().y, std::stoi(text->text)});
      }
    for (const Mark& mark : page.marks) {
      const auto* path = std::get_if<PathMark>(&mark.shape);
      if (mark.part != Part::drawing || path == nullptr || path->fill.empty() || path->stroke.empty()) continue;
      const Rect bar = bounds(mark);
      const auto after = axes.lower_bound(bar.y);
      REQUIRE(after != axes.begin());
      // A short last strip has one label: its scale is that of the strip above.
      auto axis = std::prev(after);
      while (axis->second.size() < 2 && axis != axes.begin()) --axis;
      const auto& labels = axis->second;
      REQUIRE(labels.size() >= 2);
      double step = labels[1].second - labels[0].second;
      if (step < 0) step += 86'400;  // past midnight
      const double per_mm = step / (labels[1].first - labels[0].first);
      const auto row = std::ranges::min_element(
          people, {}, [&](const auto& person) { return std::abs(person.first - bar.middle().y); });
      REQUIRE(row != people.end());
      CHECK(std::abs(row->first - bar.middle().y) < 1);
      bars[row->second].push_back({bar.width * per_mm, path->fill[0].red < 0.5});
    }
  }
  return bars;
}

}  // namespace

TEST_CASE("nothing on a day sheet leaves its place, is cut short, or is smaller than 7.5 pt") {
  check_everywhere(day_cases(), day_sheet, false);
}

/// What the list says of a row, in its order; what is empty is not printed.
std::vector<std::string> printed(const DayRowWords& words) {
  std::vector<std::string> texts;
  for (const std::string& text :
       {words.numbers, words.start, words.end, words.people, words.what, words.where, words.slack})
    if (!text.empty()) texts.push_back(text);
  return texts;
}

TEST_CASE("the list has every task of the plan, in its order, with number, times, people, place and slack") {
  for (const HardCase& hard : day_cases()) {
    if (hard.name == "200 letters" || hard.name == "other scripts") continue;
    CAPTURE(hard.name);
    const ReckonedJob reckoned(hard.job);
    const auto texts = texts_on(day_sheet(reckoned.input(), in_metres()));
    std::size_t at = 0;
    std::set<std::size_t> told;
    for (const DayRow& row : day_rows(reckoned.plan, hard.job.event)) {
      for (const std::size_t task : row.tasks) CHECK(told.insert(task).second);
      const DayRowWords words = words_of(row, reckoned.plan, hard.job.event);
      const PlannedTask& planned = reckoned.plan.tasks[row.tasks.front()];
      if (row.tasks.size() == 1) {
        // The day stands over the row; what ends within the minute has no end.
        const auto clock = [](const Moment& moment) {
          return moment.clock.empty() ? print_moment(moment) : moment.clock;
        };
        CHECK(words.numbers == std::to_string(row.tasks.front() + 1));
        CHECK(words.start == clock(planned.start));
        const std::string end = planned.end.day == planned.start.day ? clock(planned.end) : print_moment(planned.end);
        CHECK(words.end == (end == words.start ? "" : end));
        CHECK(words.people == print_people(planned));
        CHECK(words.where == short_place_in(planned, hard.job.event));
        CHECK(words.slack == print_slack(planned));
      }
      CHECK(words.what.starts_with(planned.task.text));
      const std::vector<std::string> wanted = printed(words);
      const auto found =
          std::search(texts.begin() + static_cast<std::ptrdiff_t>(at), texts.end(), wanted.begin(), wanted.end());
      CHECK_MESSAGE(found != texts.end(), planned.task.id);
      if (found != texts.end()) at = static_cast<std::size_t>(found - texts.begin());
    }
    CHECK(told.size() == reckoned.plan.tasks.size());
  }
}

/// A task at a piece from one minute to another.
PlannedTask task_at(const std::string& piece, const std::string& text, int from_min, int to_min, int person,
                    std::int64_t slack_s) {
  PlannedTask planned;
  planned.task.id = piece + "/" + text, planned.task.piece = piece, planned.task.text = text, planned.task.area = "a1";
  const auto moment = [](int minutes) {
    const std::string rest = std::to_string(minutes % 60);
    return Moment{minutes * 60, "10:" + std::string(rest.size() == 1 ? "0" : "") + rest, 0};
  };
  planned.start = moment(from_min), planned.end = moment(to_min);
  planned.people = {person}, planned.slack_s = slack_s, planned.critical = slack_s == 0;
  return planned;
}

TEST_CASE(
    "a hall of alike columns had a row for each: the same work of the same people has one, with all its numbers") {
  const Event event = columns(4).event;  // "Aisle 1" to "Aisle 4" are c1 to c4
  DayPlan plan;
  plan.tasks = {task_at("c1", "Raise the frame", 0, 2, 1, 600), task_at("c2", "Raise the frame", 0, 2, 2, 540),
                task_at("c1", "Make 9 clusters", 1, 9, 3, 0), task_at("c3", "Raise the frame", 2, 5, 1, 900),
                task_at("c4", "Raise the frame", 20, 22, 1, 900)};
  const std::vector<DayRow> rows = day_rows(plan, event);
  REQUIRE(rows.size() == 4);
  const DayRowWords first = words_of(rows[0], plan, event);
  CHECK(first.numbers == "1, 4");
  CHECK(first.start == "10:00");
  CHECK(first.end == "10:05");
  CHECK(first.people == "1");
  CHECK(first.where == "Aisle 1 and 3, each");
  CHECK(first.slack == "10 min");  // the least of them
  CHECK_FALSE(first.critical);
  // Of other people, and a quarter of an hour later, are other rows: nobody is in two places at once.
  CHECK(words_of(rows[1], plan, event).numbers == "2");
  CHECK(words_of(rows[3], plan, event).numbers == "5");
}

TEST_CASE("read off the paper, the chart's bars are everybody's hours, critical and not") {
  for (const HardCase& hard : day_cases()) {
    if (hard.name == "fifty arches" || hard.name == "garden arch" || hard.name == "plain" ||
        hard.name == "30 columns") {
      CAPTURE(hard.name);
      const ReckonedJob reckoned(hard.job);
      std::map<int, double> critical, other, drawn_critical, drawn_other;
      for (const PlannedTask& planned : reckoned.plan.tasks)
        for (const int person : planned.people)
          (planned.critical ? critical : other)[person] += static_cast<double>(planned.seconds());
      for (const auto& [person, bars] : bars_on(day_sheet(reckoned.input(), in_metres())))
        for (const ReadBar& bar : bars) (bar.critical ? drawn_critical : drawn_other)[person] += bar.seconds;
      for (int person = 1; person <= reckoned.plan.crew; ++person) {
        CAPTURE(person);
        CHECK(drawn_critical[person] == doctest::Approx(critical[person]).epsilon(0.002));
        CHECK(drawn_other[person] == doctest::Approx(other[person]).epsilon(0.002));
      }
    }
  }
}

TEST_CASE("times, distances, contacts and access stand on the sheet, as text that can be searched") {
  House house = standard_house();
  house.name = "Quarry Row Balloons", house.contact = "Quarry Row Balloons\n4 Quarry Row";
  sample::Job job = garden_arch();
  job.event.units = Units::metric;
  const ReckonedJob reckoned(job, house);
  const Folder folder;
  const auto pdf = to_pdf(day_sheet(reckoned.input(), in_metres()), {"Day", "2027-06-19"});
  REQUIRE(pdf);
  const std::string text = output_of("pdftotext -layout '" + folder.write("day.pdf", *pdf) + "' -");
  for (const char* part :
       {"19 June 2027", "08:00", "12:00", "22:00", "Ada Fenwright", "Orchard Hall", "Quarry Row Balloons, 4 Quarry Row",
        " 35 m ", " 12 m ", "outdoors, grass", "tying to it was allowed by the head gardener",
        "Drive to the venue, 21.0 km", "Work of all people", "ready by 12:00", "The event", "Person 1"})
    CHECK_MESSAGE(has(text, part), part);
  const auto carry = std::ranges::find(reckoned.plan.tasks, std::string("a1/carry-in"),
                                       [](const PlannedTask& planned) { return planned.task.id; });
  REQUIRE(carry != reckoned.plan.tasks.end());
  CHECK(has(all_text(day_sheet(reckoned.input(), in_metres())), "\n12 m\n" + std::to_string(carry->task.parts) + "\n"));
}

TEST_CASE("a day that is too short says so on top; what is taken for granted stands at the end") {
  sample::Job job = garden_arch();
  job.event.load_in_from = "11:30", job.event.terms.travel_m.reset();
  const ReckonedJob reckoned(job);
  REQUIRE(reckoned.plan.short_s > 0);
  const auto pages = day_sheet(reckoned.input(), in_metres());
  const std::string first = all_text({pages.front()}), all = all_text(pages);
  for (const Finding& finding : reckoned.plan.findings)
    CHECK(has(finding.weight == Weight::note ? all : first, sentence_of(finding, job.event) + "\n"));
}

TEST_CASE("a time that is none was told on the day sheet as if it were one") {
  sample::Job job = garden_arch();
  job.event.ready_by = "25:00";
  const ReckonedJob reckoned(job);
  const std::string text = all_text(day_sheet(reckoned.input(), in_metres()));
  CHECK_FALSE(has(text, "25:00"));
  CHECK(has(text, "Ready by not set; strike from 22:00."));
  CHECK(has(text, pace_in_words(reckoned.house) + "\n"));
}

TEST_CASE("without a plan, or with nothing to build, the day sheet says so") {
  const ReckonedJob reckoned(garden_arch());
  SheetInput input = reckoned.input();
  input.plan = nullptr, input.house = nullptr;
  CHECK(has(all_text(day_sheet(input, {})), "The day was not planned: this sheet has no tasks and no clock.\n"));
  const ReckonedJob empty(hard_cases()[4].job);
  REQUIRE(hard_cases()[4].name == "no pieces");
  CHECK(has(all_text(day_sheet(empty.input(), {})), "There is nothing to do: no piece is built.\n"));
  SheetOptions elsewhere;
  elsewhere.area = "no such area";
  CHECK(day_sheet(reckoned.input(), elsewhere).empty());
}

TEST_CASE("how to read the day stood alone on a last page: it is with the times, before the chart") {
  const ReckonedJob reckoned(garden_arch());
  const std::string text = all_text(day_sheet(reckoned.input(), in_metres()));
  const auto read = text.find("Slack is how much longer");
  REQUIRE(read != std::string::npos);
  CHECK(read < text.find("Contacts\n"));
}

TEST_CASE("ways to vehicle and outlet are told as people say them") {
  // 18 m = 59.06 ft, 40 m = 131.2 ft; 0.3 m is not none.
  CHECK(print_distance(18, Units::feet) == "59 ft");
  CHECK(print_distance(40, Units::feet) == "131 ft");
  CHECK(print_distance(18, Units::metric) == "18 m");
  CHECK(print_distance(0.3, Units::metric) == "1 m");
  CHECK(print_distance(0, Units::metric) == "0 m");
}
