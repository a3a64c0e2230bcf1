// quadrille draw: an event's sheet as PDF, SVG or PNG.
#include <algorithm>
#include <map>
#include <optional>
#include <ostream>

#include "studio/command/prepare.hpp"
#include "studio/command/reckon.hpp"
#include "studio/command/verbs.hpp"
#include "studio/command/write_output.hpp"
#include "studio/drawing/backdrop_findings.hpp"
#include "studio/sheets/sheet_kinds.hpp"

namespace quadrille {
namespace {

/// Borrows its arguments.
SheetInput input_of(const PreparedEvent& prepared, const EventOrder& order, const DayPlan& plan) {
  SheetInput input{prepared.opened.event, prepared.built, order.count, prepared.palettes.palettes};
  input.house = &prepared.house.house;
  input.supplies = &order.supplies, input.air = &order.air, input.power = &order.power;
  input.plan = &plan;
  return input;
}

}  // namespace

Exit draw(const DrawRequest& request, const Console& console) {
  const auto format = format_of(request.out);
  if (!format) {
    console.err << sentence_about_ending(request.out) << '\n';
    return Exit::usage;
  }
  auto prepared = prepare(request.event, console, request.house);
  if (!prepared) {
    console.err << prepared.error << '\n';
    return Exit::bad_input;
  }
  // All that is reckoned says its figures in the event's units, so those that are asked for become them.
  if (request.units) prepared.value->opened.event.units = *request.units;
  const Event& event = prepared->opened.event;
  if (event.areas.empty()) {
    console.err << request.event.string() << ": the event has no area, so there is nothing to draw; it needs at least "
                << "one area with a piece.\n";
    return Exit::bad_input;
  }
  if (request.area)
    if (const auto area = find_area(event, *request.area); !area) {
      console.err << area.error << '\n';
      return Exit::usage;
    }
  static const std::map<std::string, Paper> papers{
      {"a4", Paper::a4}, {"letter", Paper::letter}, {"a3", Paper::a3}, {"tabloid", Paper::tabloid}};
  const std::optional<Paper> paper = request.paper.empty() ? std::nullopt : std::optional(papers.at(request.paper));
  const SheetKind& kind = *find_sheet_kind(request.sheet);
  const EventOrder order = order_of(*prepared);
  const DayPlan plan = plan_of(*prepared, order.count);
  const SheetOptions options{paper, request.units, request.area, request.letters};
  const auto pages = pages_of(kind, input_of(*prepared, order, plan), options);
  const Exit written = write_drawing(pages, request.out, *format, {event.title, event.date}, request.event, console);
  append(prepared.value->findings, check_backdrops(event));
  const Exit reported = report(*prepared, console.err);
  return written == Exit::done ? reported : written;
}

}  // namespace quadrille
