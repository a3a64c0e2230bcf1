// Events for the labour tests, built by the piece types themselves through the plugin boundary.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "studio/labour/day_plan.hpp"
#include "studio/takeoff/count.hpp"
#include "tests/places.hpp"

namespace quadrille {

inline PlacedPiece placed_piece(std::string id, std::string type, ValueMap values = {}) {
  PlacedPiece piece;
  piece.id = std::move(id);
  piece.name = "Piece " + piece.id;
  piece.type = std::move(type);
  piece.values = std::move(values);
  return piece;
}

inline Value number_of(Kind kind, double number) { return Value::of_number(kind, number); }

/// An arch of 33 quads on a bent rod, as long as it has to be for them.
inline PlacedPiece arch_of_33_quads() {
  return placed_piece("p1", "arch",
                      {{"rod-length", number_of(Kind::length, 6.6)}, {"clusters", number_of(Kind::count, 33)}});
}

inline Event event_of(std::vector<PlacedPiece> pieces, Surroundings surroundings = Surroundings::indoors) {
  Area area;
  area.id = "a1";
  area.name = "Hall";
  area.site.surroundings = surroundings;
  area.site.ground = surroundings == Surroundings::indoors ? Ground::wood_floor : Ground::grass;
  area.site.vehicle_m = 40;
  area.site.outlet_m = 10;
  for (PlacedPiece& piece : pieces) area.pieces.emplace_back(std::move(piece));
  Event event;
  event.title = "Job";
  event.date = "2027-06-19";
  event.load_in_from = "07:30";
  event.ready_by = "11:00";
  event.strike_from = "17:00";
  event.terms.travel_m = 15'000;
  event.areas.emplace_back(std::move(area));
  return event;
}

/// An event with all that its labour is reckoned from.
struct Job {
  Event event;
  BuiltEvent built;
  EventCount count;
  House house;

  explicit Job(Event of, House with = standard_house()) : event(std::move(of)), house(std::move(with)) {
    static const PieceTypes types = find_piece_types({{build_place("pieces")}, std::nullopt, false});
    EventBuilder builder(types);
    built = builder.build(event);
    for (const auto& [id, piece] : built) REQUIRE_MESSAGE(piece->status == Status::ok, id, " was not built");
    count = count_event(event, built, {});
  }

  Labour labour(const WorkOptions& options = {}) const { return tasks_of(event, built, count, house, options); }
  DayPlan plan(const PlanOptions& options = {}) const { return plan_event(event, built, count, house, options); }
};

inline const Task* find_task(const std::vector<Task>& tasks, std::string_view id) {
  const auto found = std::ranges::find(tasks, id, &Task::id);
  return found == tasks.end() ? nullptr : &*found;
}

inline const Task& task_of(const std::vector<Task>& tasks, std::string_view id) {
  const Task* task = find_task(tasks, id);
  REQUIRE_MESSAGE(task != nullptr, "no task ", std::string(id));
  return *task;
}

inline const PlannedTask& planned_of(const DayPlan& plan, std::string_view id) {
  const auto found = std::ranges::find(plan.tasks, id, [](const PlannedTask& planned) { return planned.task.id; });
  REQUIRE_MESSAGE(found != plan.tasks.end(), "not planned: ", std::string(id));
  return *found;
}

/// A copy, so that it outlives the plan it is of.
inline std::optional<Finding> find_finding(const Findings& findings, std::string_view code) {
  const auto found = std::ranges::find(findings, code, &Finding::code);
  return found == findings.end() ? std::nullopt : std::optional(*found);
}

}  // namespace quadrille
