#include "studio/sheets/day_blocks.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/labour/day_words.hpp"
#include "studio/model/calendar.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/paper/table_rows.hpp"
#include "studio/sheets/day_chart.hpp"
#include "studio/sheets/day_rows.hpp"
#include "studio/sheets/distance.hpp"
#include "studio/sheets/tick_row.hpp"

namespace quadrille {
namespace {

std::string name_of(const Area& area) { return area.name.empty() ? "Unnamed area" : area.name; }

std::string or_not_set(const std::string& time) {
  const std::string known = known_time(time);
  return known.empty() ? "not set" : known;
}

std::string start_of(const DayStretch& stretch) {
  return stretch.start && !stretch.start->clock.empty() ? print_moment(*stretch.start) : "not known";
}
std::string end_of(const DayStretch& stretch) {
  return stretch.end && !stretch.end->clock.empty() ? print_moment(*stretch.end) : "not known";
}

std::string in_one_line(const std::string& lines) {
  std::string text;
  for (const char c : lines) text += c == '\n' ? std::string(", ") : std::string(1, c);
  return text;
}

/// Equal cells with a caption over each.
std::vector<Row> captioned(const std::vector<std::pair<std::string, std::string>>& cells, double width) {
  std::vector<RowCell> captions, values;
  for (const auto& [caption, value] : cells) {
    captions.push_back({caption});
    values.push_back({value, 0, Across::left, Face::bold});
  }
  return {captions_row(captions, width), cells_row(values, width)};
}

/// Who it is, the name that is known or a line, and a line for the telephone.
Row contact_row(const std::string& what, const std::string& name, double width) {
  constexpr double what_room = 34, phone_room = 17;
  const double half = (width - what_room) * 0.56, name_room = half - 3;
  const double height = std::max(
      {line_height, text_height(name, table_body, name_room, 12), text_height(what, table_quiet, what_room - 2, 3)});
  return {height + 3.2, [=](Marks& marks, const Rect& at) {
            const double y = at.y + 1.6, foot = y + height + 0.6, phone = at.x + what_room + half;
            marks.push_back(text_mark(Part::key, {at.x, y, what_room - 2, height}, what, table_quiet));
            if (!name.empty())
              marks.push_back(text_mark(Part::key, {at.x + what_room, y, name_room, height}, name, table_body));
            else
              marks.push_back(line_mark(Part::key, {at.x + what_room, foot}, {phone - 3, foot}, mm_hair));
            marks.push_back(text_mark(Part::key, {phone, y + height - line_height, phone_room, line_height},
                                      "telephone", table_quiet));
            marks.push_back(line_mark(Part::key, {phone + phone_room, foot}, {at.right(), foot}, mm_hair));
          }};
}

struct TaskColumns {
  static constexpr double box = 5.5, number = 18, time = 13, people = 15, where = 38, slack = 16, air = 1.8;
  double what;
  explicit TaskColumns(double width) : what(width - box - number - 2 * time - people - where - slack - 6 * air) {}
};

Row task_row(const DayRowWords& words, double width) {
  using C = TaskColumns;
  const C columns(width);
  constexpr double usual_number = 9;  // several are wider
  const double number_width =
      std::clamp(text_width(words.numbers, type(pt_caption, ink_text, Face::bold)) + 1.6, usual_number, C::number);
  const double number_height = height_of_task_number(words.numbers, number_width);
  const double lowered = task_number_height / 2 - capital_middle(table_body);  // so that capitals and numbers are level
  const double height = std::max({number_height, lowered + text_height(words.what, table_body, columns.what, 12),
                                  lowered + text_height(words.where, table_body, C::where, 12),
                                  lowered + text_height(words.people, table_body, C::people, 12)});
  return {height + 1.4, [=](Marks& marks, const Rect& at) {
            const double y = at.y + 0.7, middle = y + task_number_height / 2;
            double x = at.x;
            add_box(marks, x + 0.2, middle - tick_box / 2, false);
            add_task_number(marks, {x += C::box, y, number_width, number_height}, words.numbers, words.critical);
            x += C::number + C::air;
            const auto cell = [&](const std::string& text, double room, const TextStyle& style) {
              if (!text.empty())
                marks.push_back(text_mark(Part::key, {x, middle - capital_middle(style), room, height}, text, style));
              x += room + C::air;
            };
            cell(words.start, C::time, table_bold);
            cell(words.end, C::time, table_body);
            cell(words.people, C::people, table_body);
            cell(words.what, columns.what, table_body);
            cell(words.where, C::where, table_quiet);
            cell(words.slack, C::slack, table_figures);
            marks.push_back(line_mark(Part::key, {at.x, at.bottom()}, {at.right(), at.bottom()}, mm_hair, ink_rule));
          }};
}

Row task_captions(double width) {
  using C = TaskColumns;
  const double what = C(width).what;
  return {4.2, [=](Marks& marks, const Rect& at) {
            double x = at.x + C::box;
            const auto cell = [&](const char* text, double room, Across across = Across::left) {
              marks.push_back(
                  text_mark(Part::key, {x, at.y, room, 3.8}, text, type(pt_caption, ink_quiet, Face::regular, across)));
              x += room + C::air;
            };
            cell("no.", C::number), cell("from", C::time), cell("to", C::time), cell("who", C::people);
            cell("what", what), cell("where", C::where), cell("slack", C::slack, Across::right);
          }};
}

Block task_block(const std::string& heading, double width) {
  Block block;
  block.gap = 6, block.may_split = true;
  const auto head = [&](const std::string& text) {
    return std::vector<Row>{heading_row(Part::key, text, width), task_captions(width), rule(Part::key, 0.2, 0)};
  };
  block.head = head(heading), block.head_again = head(heading + continued);
  return block;
}

/// The list that a task stands in: the road is told with what it leads to.
std::string name_of_list(const PlannedTask& planned) {
  const Phase phase = planned.task.phase;
  const bool back = phase == Phase::put_away || phase == Phase::strike ||
                    (phase == Phase::travel && planned.task.id == "travel-back");
  return phase == Phase::day_before ? "The day before"
         : back                     ? "The strike and the way back"
                                    : "The road and the build";
}

/// Over the tasks of another day than the event's.
std::string day_words(int day) { return day > 0 ? "After midnight" : day < 0 ? "The day before" : "The day itself"; }

Row divider_row(const std::string& text) {
  constexpr double above = 1.6;
  return {above + line_height + 0.8, [=](Marks& marks, const Rect& at) {
            marks.push_back(text_mark(Part::key, {at.x, at.y + above, at.width, line_height}, text, table_bold));
          }};
}

/// What lies between build and strike.
Block event_block(const Event& event, double width) {
  Block block = table_block("The event", {}, width);
  block.rows.push_back(text_row("Ready by " + or_not_set(event.ready_by) + "; strike from " +
                                    or_not_set(event.strike_from) +
                                    ". What stands outdoors is watched as the safety sheet says.",
                                width));
  return block;
}

std::string trips_of_task(const DayPlan& plan, const std::string& id) {
  const auto found =
      std::ranges::find_if(plan.tasks, [&](const PlannedTask& planned) { return planned.task.id == id; });
  return found == plan.tasks.end() ? "–" : std::to_string(found->task.parts);
}

constexpr const char* how_to_read =
    "Slack is how much longer a task may take without anything ending later. The same work of the same people at "
    "pieces that are alike has one row, with the numbers that the chart has. A task without an end is done within the "
    "minute. \"+1\" after a time is the day after the event's, \"-1\" the day before; times without a clock count from "
    "the beginning of their stretch.";

std::string distance(const std::optional<double>& metres, Units units) {
  return metres ? print_distance(*metres, units) : "not known";
}

/// Hours of all people, to the quarter of an hour.
std::vector<Row> work_rows(const DayPlan& plan, double width) {
  constexpr double room = 34;
  const auto hours = [](std::int64_t seconds) { return print_duration((seconds + 450) / 900 * 900); };
  const auto row = [&](const char* what, std::int64_t work_s, std::int64_t presence_s) {
    return cells_row({{what}, {hours(work_s), room}, {hours(presence_s), room}, {"", 40}}, width);
  };
  return {captions_row(
              {{"Work of all people, to the quarter of an hour"}, {"at work", room}, {"with waiting", room}, {"", 40}},
              width),
          row("At the venue", plan.site_work_s(), plan.site_presence_s()),
          row("With home and the road", plan.all_work_s(), plan.all_presence_s())};
}

}  // namespace

std::vector<Block> times_blocks(const Setting& setting, double width) {
  const Event& event = setting.input.event;
  const DayPlan* const plan = setting.input.plan;
  Block block = table_block("The day", {}, width);
  const std::string date = event.date.empty() ? "not set" : print_date(event.date);
  std::vector<std::pair<std::string, std::string>> event_times{{"Date", date},
                                                               {"Load-in from", or_not_set(event.load_in_from)},
                                                               {"Ready by", or_not_set(event.ready_by)},
                                                               {"Strike from", or_not_set(event.strike_from)}};
  if (plan != nullptr && !plan->tasks.empty())
    event_times.emplace_back("Crew", std::to_string(plan->crew) + (plan->crew == 1 ? " person" : " people"));
  for (Row& row : captioned(event_times, width)) block.rows.push_back(std::move(row));
  if (plan == nullptr) {
    block.rows.push_back(text_row("The day was not planned: this sheet has no tasks and no clock.", width));
    return {block};
  }
  if (plan->tasks.empty()) {
    block.rows.push_back(text_row("There is nothing to do: no piece is built.", width));
    return {block};
  }
  for (Row& row : captioned({{"Leave home", plan->there.start ? start_of(plan->there) : "road not known"},
                             {"Work at the venue begins", start_of(plan->build)},
                             {"It is ready", end_of(plan->build)},
                             {"Strike begins", start_of(plan->strike)},
                             {"It is struck", end_of(plan->strike)}},
                            width))
    block.rows.push_back(std::move(row));
  for (Row& row : work_rows(*plan, width)) block.rows.push_back(std::move(row));
  for (const Finding& finding : plan->findings)
    if (finding.weight != Weight::note) {
      std::string sentence(name_of(finding.weight));
      sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
      block.rows.push_back(cells_row({{sentence, 18, Across::left, Face::bold}, {sentence_of(finding, event)}}, width));
    }
  block.rows.push_back(text_row(how_to_read, width, 1.2, ink_quiet));
  return {block};
}

std::vector<Block> contact_blocks(const Setting& setting, double width) {
  const Event& event = setting.input.event;
  const House* const house = setting.input.house;
  Block block = table_block("Contacts", {}, width);
  block.rows.push_back(contact_row("Client", event.client, width));
  block.rows.push_back(contact_row("Venue", event.venue, width));
  block.rows.push_back(contact_row("Who lets us in", "", width));
  if (house != nullptr && !(house->contact.empty() && house->name.empty()))
    block.rows.push_back(contact_row("We", house->contact.empty() ? house->name : in_one_line(house->contact), width));
  if (setting.input.plan != nullptr)
    for (int person = 1; person <= setting.input.plan->crew; ++person)
      block.rows.push_back(contact_row("Person " + std::to_string(person), "", width));
  return {block};
}

std::vector<Block> access_blocks(const Setting& setting, double width) {
  const SheetInput& input = setting.input;
  Block block = table_block("Access",
                            {{"Area"},
                             {"Where", 28},
                             {"To the vehicle", 22},
                             {"To the outlet", 22},
                             {"Trips in", 14, Across::right},
                             {"Trips out", 14, Across::right}},
                            width);
  for (const auto& area : input.event.areas) {
    const Site& site = area->site;
    std::string ground = key_of(site.ground);
    std::ranges::replace(ground, '-', ' ');
    const bool outdoors = site.surroundings == Surroundings::outdoors;
    block.rows.push_back(cells_row(
        {{name_of(*area), 0, Across::left, Face::bold},
         {(outdoors ? "outdoors, " : "indoors, ") + ground, 28},
         {distance(site.vehicle_m, setting.units), 22},
         {distance(site.outlet_m, setting.units), 22},
         {input.plan != nullptr ? trips_of_task(*input.plan, area->id + "/carry-in") : "–", 14, Across::right},
         {input.plan != nullptr ? trips_of_task(*input.plan, area->id + "/carry-out") : "–", 14, Across::right}},
        width));
    for (const Structure& structure : area->structures)
      block.rows.push_back(
          text_row((structure.name.empty() ? "Unnamed structure" : structure.name) +
                       (structure.allowed_by.empty() ? ": nobody has allowed tying to it yet."
                                                     : ": tying to it was allowed by " + structure.allowed_by + "."),
                   width, 0.6, ink_quiet));
  }
  if (block.rows.empty()) block.rows.push_back(text_row("The event has no areas yet.", width));
  block.rows.push_back(
      text_row("Trips are those of one person alone, between the vehicle and the area.", width, 1.2, ink_quiet));
  return {block};
}

std::vector<Block> task_blocks(const Setting& setting, double width) {
  const Event& event = setting.input.event;
  const DayPlan& plan = *setting.input.plan;
  std::vector<Block> blocks;
  bool event_is_told = false;
  std::string last;
  int last_day = 0;
  for (const DayRow& row : day_rows(plan, event)) {
    const PlannedTask& first = plan.tasks[row.tasks.front()];
    const std::string name = name_of_list(first);
    if (name != last) {
      if (first.task.phase == Phase::strike && !event_is_told) {
        blocks.push_back(event_block(event, width));
        event_is_told = true;
      }
      blocks.push_back(task_block(name, width));
      last = name, last_day = 0;
    }
    const DayRowWords words = words_of(row, plan, event);
    if (words.has_clock && words.day != last_day) {
      blocks.back().rows.push_back(divider_row(day_words(words.day)));
      last_day = words.day;
    }
    blocks.back().rows.push_back(task_row(words, width));
  }
  if (!event_is_told) blocks.push_back(event_block(event, width));
  return blocks;
}

std::vector<Block> taken_blocks(const Setting& setting, double width) {
  Block block = table_block("What was taken for granted", {}, width);
  if (setting.input.plan != nullptr)
    for (const Finding& finding : setting.input.plan->findings)
      if (finding.weight == Weight::note)
        block.rows.push_back(text_row(sentence_of(finding, setting.input.event), width));
  if (setting.input.house != nullptr)
    block.rows.push_back(text_row(pace_in_words(*setting.input.house), width));
  else
    block.rows.push_back(text_row("The house was not read: its contact is missing here.", width));
  if (block.rows.empty()) return {};
  return {block};
}

}  // namespace quadrille
