// A quote that was given stays as it was given; what differs since is listed.
#include "studio/quote/issue.hpp"

#include <stdexcept>

#include "studio/files/event_file.hpp"
#include "studio/model/calendar.hpp"
#include "studio/quote/changes.hpp"
#include "studio/quote/quote_findings.hpp"
#include "tests/quote/small_job.hpp"

namespace quadrille {
namespace {

Event issued_of(const SmallJob& job) {
  const QuotedEvent quoted = job.quoted();
  return issue(job.event, quoted, job.house, figures_of(job.input(), quoted), "2027-14", "2027-02-10");
}

QuoteChanges changes_since(const Event& issued, const SmallJob& job) {
  const QuotedEvent now = job.quoted();
  return quote_changes(*issued.issued, now.quote, figures_of(job.input(), now));
}

TEST_CASE("an issued quote is frozen with its date, validity and figures, and survives the file") {
  const SmallJob job;
  const Event event = issued_of(job);
  REQUIRE(event.issued);
  CHECK(event.issued->number == "2027-14");
  CHECK(event.issued->valid_until == "2027-03-12");  // February of 2027 has 28 days: 18 to its end, 12 of March
  CHECK(event.issued->figures.at("wage-per-hour") == "25.00 USD");
  CHECK(event.issued->figures.at("markup-balloons") == "150 %");
  CHECK(event.issued->figures.at("travel") == "15.0 km one way");
  CHECK(event.issued->quote == job.quoted().quote);
  const auto read = read_event(write_event(event), "event");
  REQUIRE_MESSAGE(read, read.error);
  CHECK(read->event.issued == event.issued);
  CHECK(read->findings.empty());
  CHECK_THROWS_AS(issue(job.event, job.quoted(), job.house, {}, "", "tomorrow"), std::invalid_argument);
}

TEST_CASE("what differs since is listed line by line, and nothing is applied") {
  SmallJob job;
  const Event event = issued_of(job);
  CHECK(changes_since(event, job).empty());
  job.event.terms.travel_m = 25'000;  // 50 km × 1.20 + 35.00 = 95.00 instead of 71.00
  job.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 9'900; });
  const QuoteChanges changes = changes_since(event, job);
  REQUIRE(changes.lines.size() == 2);
  CHECK(changes.lines[0].was->piece == "p2");
  CHECK(changes.lines[0].is->net_minor == 9'900);
  CHECK(changes.lines[1].was->net_minor == 7'100);
  CHECK(changes.lines[1].is->net_minor == 9'500);
  CHECK(changes.sums_differ);
  REQUIRE(changes.figures.size() == 2);
  CHECK(changes.figures[0].key == "cost");
  CHECK(changes.figures[1] == FigureChange{"travel", "15.0 km one way", "25.0 km one way"});
  CHECK(event.issued->quote.lines[2].net_minor == 7'100);
  CHECK(find_in(issued_findings(*event.issued, job.quoted().quote, changes, ""), "quote-changed"));
}

TEST_CASE("lines that came or went stand alone on their side") {
  SmallJob job;
  const Event event = issued_of(job);
  job.supplies.kits.clear();
  job.supplies.rental_minor = 250;
  job.event.terms.discount = 100'000;
  const QuoteChanges changes = changes_since(event, job);
  REQUIRE(changes.lines.size() == 2);
  CHECK(changes.lines[0].was->text == "Rental: Gate kit");
  CHECK_FALSE(changes.lines[0].is);
  CHECK_FALSE(changes.lines[1].was);
  CHECK(changes.lines[1].is->kind == QuoteLineKind::discount);
}

TEST_CASE("figures that move no line are a note") {
  SmallJob job;
  const Event event = issued_of(job);
  job.house.pricing.minimum = 100;
  const QuoteChanges changes = changes_since(event, job);
  CHECK(changes.lines.empty());
  const Findings findings = issued_findings(*event.issued, job.quoted().quote, changes, "");
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].code == "quote-figures-changed");
  CHECK(findings[0].weight == Weight::note);
}

TEST_CASE("a quote holds on its last day and not on the next") {
  const SmallJob job;
  const Event event = issued_of(job);
  CHECK_FALSE(is_expired(*event.issued, "2027-03-12"));
  CHECK(is_expired(*event.issued, "2027-03-13"));
  CHECK_FALSE(is_expired(*event.issued, ""));
  CHECK(find_in(issued_findings(*event.issued, event.issued->quote, {}, "2027-03-13"), "quote-expired"));
}

TEST_CASE("what lacks a price may not be issued") {
  SmallJob job;
  CHECK(may_be_issued(job.quoted()));
  job.palettes.clear();
  CHECK_FALSE(may_be_issued(job.quoted()));
  job.count = {};
  CHECK_FALSE(may_be_issued(job.quoted()));
}

TEST_CASE("days are counted through months and leap years") {
  // The Gregorian calendar: 2028 has a 29 February, 2100 has none.
  CHECK(days_after("2028-02-28", 1) == "2028-02-29");
  CHECK(days_after("2100-02-28", 1) == "2100-03-01");
  CHECK(days_after("2027-12-31", 365) == "2028-12-30");
  CHECK(days_after("2027-06-19", 0) == "2027-06-19");
  CHECK(days_after("2027-06-19", -3) == "2027-06-19");
  CHECK(days_after("2027-06-19", 9'000'000'000'000'000'000) == "9999-12-31");
  CHECK(days_after("2027-02-29", 1).empty());
}

}  // namespace
}  // namespace quadrille
