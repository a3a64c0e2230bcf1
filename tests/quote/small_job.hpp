// A small job in plain values, so that its money can be reckoned by hand.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "studio/quote/quote_event.hpp"

namespace quadrille {

inline PlannedTask planned(std::string id, std::string piece, Phase phase, std::int64_t seconds) {
  PlannedTask planned;
  planned.task.id = std::move(id);
  planned.task.piece = std::move(piece);
  planned.task.phase = phase;
  planned.task.work_s = static_cast<double>(seconds);
  planned.end.second = seconds;
  planned.people = {1};
  return planned;
}

/// Two pieces of one colour, 15 km away: 132 balloons with 6 spares, a line, hired frames, and one person's work.
struct SmallJob {
  Event event;
  EventCount count;
  SuppliesOrder supplies;
  DayPlan plan;
  std::vector<Palette> palettes;
  House house = standard_house();

  SmallJob() {
    Area area;
    area.id = "a1";
    area.name = "Lawn";
    for (const char* id : {"p1", "p2"}) {
      PlacedPiece piece;
      piece.id = id;
      piece.name = id == std::string("p1") ? "Gate arch" : "Column";
      piece.type = id == std::string("p1") ? "arch" : "column";
      area.pieces.emplace_back(std::move(piece));
    }
    event.areas.emplace_back(std::move(area));
    event.terms.travel_m = 15'000;
    palettes = {{"garden", "Garden", "USD", {{"fern", "Fern", 60, 120, 60, Finish::matte, {{11, 100, 1'495}}}}}};
    add_piece("p1", "Gate arch", 100, 9.6);
    add_piece("p2", "Column", 32, 4.8);
    count.total_balloons = 132;
    BalloonBag& bag = count.bags.emplace_back();
    bag.nominal_in = 11;
    bag.colour = {"garden", "fern"};
    bag.colour_name = "Fern";
    bag.used = 132;
    bag.spares = 6;
    SupplyOrder& line = supplies.lines.emplace_back();
    line.key = "cluster-line";
    line.name = "Line, clusters to the frame";
    line.unit = "m";
    line.needed = 14.4;
    line.pack = 100;
    supplies.kits.push_back({"gate", "Gate kit", 1, 1'000, ""});
    supplies.rental_minor = 1'250;
    plan.crew = 1;
    plan.tasks = {planned("p1/inflate", "p1", Phase::build, 1'800),  planned("p1/mount", "p1", Phase::build, 900),
                  planned("p1/join", "p1", Phase::build, 300),       planned("p2/inflate", "p2", Phase::build, 600),
                  planned("a1/carry-in", "", Phase::load_in, 1'200), planned("a1/check", "", Phase::check, 300),
                  planned("a1/sweep", "", Phase::strike, 1'500),     planned("travel", "", Phase::travel, 900)};
    plan.tasks[2].task.of_frame = true;
    plan.build.length_s = 5'100;
    plan.strike.length_s = 1'500;
    plan.there.length_s = plan.back.length_s = 900;
    plan.before.length_s = 600;
  }

  template <class Change>
  void edit_piece(std::size_t number, Change change) {
    event.areas[0].edit([&](Area& area) { area.pieces[number].edit(change); });
  }
  QuoteInput input() const { return {event, count, supplies, plan, palettes, house}; }
  QuotedEvent quoted() const { return quote_event(input()); }

 private:
  void add_piece(const char* id, const char* name, std::int64_t balloons, double line_m) {
    PieceCount& piece = count.pieces.emplace_back();
    piece.id = id;
    piece.name = name;
    piece.area = "a1";
    piece.balloons = balloons;
    BalloonLine& line = piece.lines.emplace_back();
    line.nominal_in = 11;
    line.colour = {"garden", "fern"};
    line.colour_name = "Fern";
    line.used = balloons;
    piece.supplies.push_back({"cluster-line", "Line, clusters to the frame", "m", line_m});
  }
};

inline std::optional<Finding> find_in(const Findings& findings, std::string_view code) {
  const auto found = std::ranges::find(findings, code, &Finding::code);
  return found == findings.end() ? std::nullopt : std::optional(*found);
}

inline std::optional<QuoteLine> line_of_kind(const Quote& quote, QuoteLineKind kind, std::string_view piece = {}) {
  const auto found = std::ranges::find_if(
      quote.lines, [&](const QuoteLine& line) { return line.kind == kind && line.piece == piece; });
  return found == quote.lines.end() ? std::nullopt : std::optional(*found);
}

}  // namespace quadrille
