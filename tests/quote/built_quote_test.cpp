// Quotes of events that the piece types build: no cost is lost between the pieces and the whole.
#include <doctest/doctest.h>

#include "studio/quote/quote_event.hpp"
#include "tests/labour/built_events.hpp"

namespace quadrille {
namespace {

Palette market() {
  Palette palette{"garden", "Garden", "USD", {}};
  for (const char* key : {"fern", "poppy", "cloud"}) {
    Colour& colour = palette.colours.emplace_back();
    colour.key = colour.name = key;
    for (const double size : {5., 9., 11., 14., 16., 18., 24., 36.}) {
      colour.packs.push_back({size, 50, static_cast<std::int64_t>(83 * size)});
      colour.packs.push_back({size, 7, static_cast<std::int64_t>(17 * size)});
    }
  }
  return palette;
}

PlacedPiece coloured(PlacedPiece piece) {
  piece.colours = {{"garden", "fern"}, {"garden", "poppy"}, {"garden", "cloud"}, {"garden", "fern"}};
  return piece;
}

TEST_CASE("the pieces' parts of balloons and supplies are the event's, to the minor unit") {
  for (const Surroundings where : {Surroundings::indoors, Surroundings::outdoors}) {
    const Job job(event_of(
        {coloured(arch_of_33_quads()), coloured(placed_piece("p2", "column")), coloured(placed_piece("p3", "garland"))},
        where));
    const std::vector palettes{market()};
    const EventCount count = count_event(job.event, job.built, palettes, job.house);
    const SuppliesOrder supplies = order_supplies(count.supplies, job.house);
    const DayPlan plan = plan_event(job.event, job.built, count, job.house);
    const QuotedEvent quoted = quote_event({job.event, count, supplies, plan, palettes, job.house});
    Minor balloons = 0, used_up = 0;
    std::int64_t work_s = quoted.costs.set_up_s + quoted.costs.strike_s;
    for (const PieceCost& piece : quoted.costs.pieces) {
      CHECK(piece.balloons_minor > 0);
      CHECK(piece.labour_minor > 0);
      balloons += piece.balloons_minor;
      used_up += piece.supplies_minor;
      work_s += piece.work_s;
    }
    CHECK(balloons == quoted.costs.balloons_minor);
    CHECK(used_up == quoted.costs.supplies_minor);
    // With an empty shelf what is bought is what the job costs.
    Minor bags = 0;
    for (const BalloonBag& bag : count.bags) bags += bag.cost_minor.value();
    CHECK(bags == quoted.costs.balloons_minor);
    // Every second of work at the venue is charged once, as a piece's or as set-up or strike.
    CHECK(work_s == plan.site_work_s());
    CHECK(quoted.costs.unknown.empty());
    for (const Finding& finding : quoted.findings) CHECK_MESSAGE(finding.weight == Weight::note, finding.text);
  }
}

TEST_CASE("what an hour earns is what the quote leaves over balloons, supplies and the road, by the plan's hours") {
  // An identity between the quote, its costs and the plan; sums by hand stand in quote_event_test.cpp.
  Job job(event_of({coloured(arch_of_33_quads())}));
  job.event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& p) { p.price_minor = 25'000; }); });
  const std::vector palettes{market()};
  const EventCount count = count_event(job.event, job.built, palettes, job.house);
  const SuppliesOrder supplies = order_supplies(count.supplies, job.house);
  const DayPlan plan = plan_event(job.event, job.built, count, job.house);
  const QuotedEvent quoted = quote_event({job.event, count, supplies, plan, palettes, job.house});
  const Earnings& earnings = quoted.earnings;
  const double left = static_cast<double>(quoted.quote.net_minor - earnings.balloons_minor - earnings.supplies_minor -
                                          earnings.travel_minor);
  const double site_h = static_cast<double>(plan.build.length_s + plan.strike.length_s) / 3600;
  CHECK(static_cast<double>(earnings.per_hour_site_minor) == doctest::Approx(left / site_h).epsilon(1e-4));
  CHECK(earnings.per_hour_all_minor < earnings.per_hour_site_minor);
  CHECK(earnings.per_hour_all_minor > 0);
  CHECK(earnings.travel_minor == 30 * 40);  // 30 km at 0.40
}

}  // namespace
}  // namespace quadrille
