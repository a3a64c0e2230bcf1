// quadrille plan: the day's tasks with their people and the clock; as text, JSON or table files.
#include <algorithm>
#include <ostream>
#include <string_view>

#include "studio/command/count_json.hpp"
#include "studio/command/list_table.hpp"
#include "studio/command/reckon.hpp"
#include "studio/command/table.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/labour/day_words.hpp"

namespace quadrille {
namespace {

Json json_of(const Moment& moment) {
  return {{"clock", moment.clock.empty() ? Json(nullptr) : Json(moment.clock)},
          {"day", moment.day},
          {"second_s", moment.second}};
}

Json json_of(const DayStretch& stretch) {
  return {{"start", stretch.start ? json_of(*stretch.start) : Json(nullptr)},
          {"end", stretch.end ? json_of(*stretch.end) : Json(nullptr)},
          {"length_s", stretch.length_s},
          {"work_s", stretch.work_s},
          {"critical_path_s", stretch.critical_path_s},
          {"serial_s", stretch.serial_s}};
}

Json json_of(const PlannedTask& planned) {
  return {{"id", planned.task.id},
          {"text", planned.task.text},
          {"area", planned.task.area},
          {"piece", planned.task.piece},
          {"phase", key_of(planned.task.phase)},
          {"start", json_of(planned.start)},
          {"end", json_of(planned.end)},
          {"seconds_s", planned.seconds()},
          {"work_s", planned.work_s()},
          {"people", planned.people},
          {"after", planned.task.after},
          {"critical", planned.critical},
          {"slack_s", planned.slack_s},
          {"can_be_before", planned.task.can_be_before}};
}

Json json_of(const DayPlan& plan, const PreparedEvent& prepared) {
  const Event& event = prepared.opened.event;
  Json json{{"date", event.date},
            {"load_in_from", event.load_in_from},
            {"ready_by", event.ready_by},
            {"strike_from", event.strike_from},
            {"crew", plan.crew}};
  json["tasks"] = Json::array();
  for (const PlannedTask& planned : plan.tasks) json["tasks"].push_back(json_of(planned));
  json["stretches"] = {{"before", json_of(plan.before)}, {"there", json_of(plan.there)},
                       {"build", json_of(plan.build)},   {"strike", json_of(plan.strike)},
                       {"back", json_of(plan.back)},     {"after", json_of(plan.after)}};
  json["work_s_by_phase"] = Json::object();
  for (const auto& [phase, seconds] : plan.work_s_by_phase)
    json["work_s_by_phase"][std::string(key_of(phase))] = seconds;
  json["work_s_by_piece"] = plan.work_s_by_piece.empty() ? Json::object() : Json(plan.work_s_by_piece);
  json["short_s"] = plan.short_s;
  json["spare_s"] = plan.spare_s;
  json["site_work_s"] = plan.site_work_s();
  json["all_work_s"] = plan.all_work_s();
  json["site_presence_s"] = plan.site_presence_s();
  json["all_presence_s"] = plan.all_presence_s();
  json["house"] = json_of(prepared.house);
  return json;
}

void print_text(const DayPlan& plan, const PreparedEvent& prepared, std::ostream& out) {
  const Event& event = prepared.opened.event;
  for (const std::string& line : folded(plan_in_words(plan, event), 96)) out << line << '\n';
  if (plan.tasks.empty()) return;
  for (std::size_t i = 0; i < plan.tasks.size();) {
    const std::string_view name = name_of_stretch(plan.tasks[i].task.phase);
    std::vector<std::vector<std::string>> rows;
    const std::int64_t begin = plan.tasks[i].start.second;
    std::int64_t end = begin;
    for (; i < plan.tasks.size() && name_of_stretch(plan.tasks[i].task.phase) == name; ++i) {
      const PlannedTask& planned = plan.tasks[i];
      end = std::max(end, planned.end.second);
      rows.push_back({print_moment(planned.start), print_moment(planned.end), print_people(planned), planned.task.text,
                      short_place_in(planned, event), print_slack(planned)});
    }
    out << '\n'
        << name << ", " << print_duration(end - begin) << '\n'
        << print_table({"from", "to", "who", "what", "where", "slack"}, with_folded(with_folded(rows, 3, 40), 4, 20),
                       {Align::right, Align::right, Align::left, Align::left, Align::left, Align::right});
  }
  out << "\nSlack: how much longer it may take without anything ending later.\n";
  for (const std::string& line : folded(work_in_words(plan), 96)) out << line << '\n';
  for (const std::string& line : folded(pace_in_words(prepared.house.house), 96)) out << line << '\n';
  out << print_house(prepared.house) << '\n';
}

std::vector<ListTable> tables_of(const DayPlan& plan, const Event& event) {
  ListTable tasks{
      "task",
      "Day plan",
      {"phase", "from", "to", "day", "people", "what", "where", "key", "seconds_s", "work_s", "slack_s", "critical"},
      {}};
  for (const PlannedTask& planned : plan.tasks)
    tasks.rows.push_back({text_cell(std::string(key_of(planned.task.phase))), text_cell(planned.start.clock),
                          text_cell(planned.end.clock), whole_cell(planned.start.day), text_cell(print_people(planned)),
                          text_cell(planned.task.text), text_cell(place_in(planned, event)), text_cell(planned.task.id),
                          whole_cell(planned.seconds()), whole_cell(planned.work_s()), whole_cell(planned.slack_s),
                          text_cell(planned.critical ? "yes" : "no")});
  return {tasks};
}

}  // namespace

Exit plan(const PlanRequest& request, const Console& console) {
  if (!may_write(request.tables, request.event, console)) return Exit::usage;
  auto prepared = prepare(request.event, console, request.house);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  PreparedEvent& event = *prepared.value;
  const EventOrder order = order_of(event);
  PlanOptions options;
  options.work.prepare_clusters = request.prepare;
  options.crew = request.crew;
  const DayPlan day = plan_of(event, order.count, options);
  append(event.findings, day.findings);
  Exit written = Exit::done;
  if (request.json)
    console.out << printed(json_of(day, event));
  else if (request.tables.csv || request.tables.xlsx)
    written = write_tables(tables_of(day, event.opened.event), request.tables, console);
  else
    print_text(day, event, console.out);
  const Exit reported = report(event, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
