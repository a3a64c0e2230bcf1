// Events with all that the sheets for the day read of them.
#pragma once

#include <utility>
#include <vector>

#include "studio/labour/day_plan.hpp"
#include "studio/standing/checklist.hpp"
#include "studio/standing/piece_standing.hpp"
#include "studio/takeoff/power.hpp"
#include "studio/takeoff/supply_order.hpp"
#include "tests/paper/page_checks.hpp"

namespace quadrille {

/// A job with what is reckoned of it; borrow its input while it lives.
struct ReckonedJob {
  sample::Job job;
  House house;
  EventCount count;
  SuppliesOrder supplies;
  AirNeed air;
  std::vector<AreaPower> power;
  DayPlan plan;
  std::vector<PieceStanding> standing;
  std::vector<ChecklistLine> checks;

  ReckonedJob(sample::Job from, House kept = standard_house(), bool stands = false)
      : job(std::move(from)), house(std::move(kept)) {
    count = count_event(job.event, job.built, job.palettes, house);
    supplies = order_supplies(count.supplies, house);
    air = air_of(job.event, count, house);
    power = power_of(job.event, air, house);
    plan = plan_event(job.event, job.built, count, house);
    if (stands) standing = stand_all(job.event, job.built);
    checks = checklist(job.event, job.built, standing);
  }
  SheetInput input() const {
    SheetInput input{job.event, job.built, count, job.palettes};
    input.house = &house, input.supplies = &supplies, input.air = &air, input.power = &power, input.plan = &plan;
    input.standing = &standing, input.checklist = &checks;
    return input;
  }
};

/// An arch with lines to a stake, a dead weight and a structure, in a garden with a walkway, a wind and an outlet.
inline sample::Job garden_arch() {
  return changed([](sample::Job& job, Area& area) {
    job.event.load_in_from = "08:00", job.event.ready_by = "12:00", job.event.strike_from = "22:00";
    job.event.terms.travel_m = 21'000;
    area.site.surroundings = Surroundings::outdoors, area.site.ground = Ground::grass;
    area.site.gust_m_s = 4, area.site.outlet_m = 12, area.site.vehicle_m = 35;
    Structure post;
    post.id = "s1", post.name = "A gate post with a long name that somebody gave it", post.x_m = 5, post.height_m = 2;
    post.allowed_by = "the head gardener";
    area.structures.push_back(post);
    Walkway way;
    way.id = "w1", way.name = "Way in", way.x_m = 1.4, way.y_m = -3, way.width_m = 1.2, way.depth_m = 6;
    area.walkways.push_back(way);
    secure_first(job, area);
  });
}

/// The hard cases, and what makes sheets for the day long: many pieces, long names, lines everywhere.
inline std::vector<HardCase> day_cases() {
  std::vector<HardCase> cases = hard_cases();
  cases.push_back({"garden arch", garden_arch()});
  sample::Job many = garden_arch();
  Area garden = *many.event.areas[0];
  for (int i = 0; i < 24; ++i) {
    PlacedPiece piece = *garden.pieces[0];
    piece.id = numbered("many", i), piece.x_m = 3.2 * i, piece.name = std::string(60, static_cast<char>('a' + i));
    if (i % 2 == 1) piece.name = "Aisle arch with a very long name that goes on and on, number " + std::to_string(i);
    many.built[piece.id] = many.built["p1"];
    garden.pieces.push_back(piece);
  }
  many.event.areas[0] = garden;
  Area hall = garden;
  hall.id = "a2", hall.name = "Hall", hall.site = {}, hall.walkways.clear();
  for (auto& piece : hall.pieces) piece.edit([](PlacedPiece& p) { p.id += "-in", p.lines.clear(); });
  for (const auto& piece : hall.pieces) many.built[piece->id] = many.built["p1"];
  many.event.areas.push_back(hall);
  many.event.terms.crew = 5;
  cases.push_back({"fifty arches", many});
  return cases;
}

inline std::size_t times_in(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

inline void check_everywhere(const std::vector<HardCase>& cases,
                             std::vector<Page> (*pages_of)(const SheetInput&, const SheetOptions&), bool stands) {
  for (const HardCase& hard : cases) {
    const ReckonedJob reckoned(hard.job, standard_house(), stands);
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid})
      for (Units units : {Units::feet, Units::metric}) {
        CAPTURE(hard.name);
        CAPTURE(static_cast<int>(paper));
        CAPTURE(static_cast<int>(units));
        SheetOptions options;
        options.paper = paper, options.units = units;
        const std::vector<Page> pages = pages_of(reckoned.input(), options);
        REQUIRE_FALSE(pages.empty());
        for (const Page& page : pages) {
          check_page(page);
          for (const Mark& mark : page.marks)
            if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
              CHECK(text->style.size_pt >= 7.5);
              if (hard.name != "200 letters")
                CHECK_MESSAGE(!(mark.part == Part::key && set_text(*text).shortened), text->text);
            }
        }
      }
  }
}

}  // namespace quadrille
