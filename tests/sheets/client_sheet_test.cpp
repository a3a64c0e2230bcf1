// The client sheet says what was agreed, and nothing of what the decorator keeps to himself.
#include "studio/sheets/client_sheet.hpp"

#include <doctest/doctest.h>

#include "studio/paint/output.hpp"
#include "studio/standing/level_words.hpp"
#include "studio/takeoff/colour_totals.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/page_checks.hpp"
#include "tests/sheets/site_sheets.hpp"

using namespace quadrille;

namespace {

/// Lines of 400.00 and 50.00 at 10 % and 60.00 untaxed: 510.00 + 45.00 = 555.00; the half of it is 277.50.
IssuedQuote quote_of(const std::string& piece) {
  IssuedQuote issued;
  issued.number = "M-12", issued.date = "2027-05-01", issued.valid_until = "2027-05-31";
  issued.quote.currency = "USD";
  issued.quote.lines = {{QuoteLineKind::piece, piece, "Welcome arch", 40000, 100000, 4000},
                        {QuoteLineKind::rental, "", "Rental: frame", 5000, 100000, 500},
                        {QuoteLineKind::set_up, "", "Set-up, 2 h 17 min of work", 6000, 0, 0}};
  issued.quote.net_minor = 51000, issued.quote.tax_minor = 4500, issued.quote.total_minor = 55500;
  issued.quote.deposit_minor = 27750, issued.quote.balance_minor = 27750;
  issued.figures = {
      {"wage-per-hour", "23.17 USD"},  {"charge-per-hour", "53.91 USD"}, {"markup-balloons", "147 %"},
      {"markup-supplies", "118.5 %"},  {"cost", "211.93 USD"},           {"travel-cost-per-km", "0.43 USD"},
      {"delivery-per-km", "1.27 USD"}, {"deposit-above", "311.00 USD"},  {"minimum", "251.00 USD"},
      {"set-up", "2 h 17 min"},        {"strike", "1 h 43 min"},         {"travel", "14.6 km one way"},
      {"markup-labour", "139 %"}};
  return issued;
}

sample::Job quoted_arch() {
  sample::Job job = sample::one_arch();
  job.event.issued = quote_of("p1");
  return job;
}

std::vector<Page> client(const sample::Job& job, const SheetOptions& options = {}, const House* house = nullptr) {
  const EventCount count = job.count();
  return client_sheet({job.event, job.built, count, job.palettes, house}, options);
}

std::string pdf_text_of(const std::vector<Page>& pages) {
  const Folder folder;
  return pdf_text(folder, *to_pdf(pages, {"Party", "2027-06-19"}));
}

}  // namespace

TEST_CASE("an issued quote stands on the client sheet to the cent, with deposit and validity") {
  const std::string text = pdf_text_of(client(quoted_arch()));
  for (const char* told : {"Quote M-12 of 1 May 2027", "Welcome arch", "400.00", "Rental: frame", "50.00", "60.00",
                           "510.00", "45.00", "555.00", "277.50", "Deposit", "10 %", "holds until 31 May 2027"}) {
    CAPTURE(told);
    CHECK(has(text, told));
  }
}

TEST_CASE("prices that were told with tax are printed with tax") {
  sample::Job job = quoted_arch();
  job.event.issued->quote.prices_with_tax = true;
  const std::string text = all_text(client(job));
  for (const char* told : {"440.00", "55.00", "60.00", "555.00", "of which tax", "45.00"}) CHECK(has(text, told));
  CHECK_FALSE(has(text, "400.00"));
  CHECK_FALSE(has(text, "Without tax"));
}

TEST_CASE("nothing of the house's costs, rates, mark-ups and hours is on the client sheet") {
  const sample::Job job = quoted_arch();
  House house = standard_house("USD");
  house.name = "Paper Moon", house.contact = "Paper Moon\n4 Quarry Row";
  house.pricing.wage_per_hour = 2317, house.pricing.charge_per_hour = 5391;
  const std::string text = pdf_text_of(client(job, {}, &house));
  for (const auto& [key, value] : job.event.issued->figures) {
    CAPTURE(key);
    CHECK_FALSE(has(text, value.substr(0, value.find(' ') == std::string::npos ? value.size() : value.rfind(' '))));
  }
  for (const char* word : {"margin", "cost", "wage", "hour", "mark-up", " earn"}) {
    CAPTURE(word);
    CHECK_FALSE(has(text, word));
  }
  CHECK(has(text, "Paper Moon"));
  CHECK(has(text, "4 Quarry Row"));
}

TEST_CASE("without an issued quote no amount is on the client sheet") {
  const std::string text = all_text(client(sample::one_arch()));
  for (const char* word : {"USD", "Quote", "Deposit", "Total"}) CHECK_FALSE(has(text, word));
  CHECK(has(text, "As drawn here."));
}

TEST_CASE("a piece that was drawn after the quote is named, and so is one that is gone") {
  // The client would take for included what stands in the picture.
  sample::Job job = quoted_arch();
  job.event.issued->quote.lines[0].piece = "gone", job.event.issued->quote.lines[0].text = "Ribbon wall";
  const std::string text = all_text(client(job));
  CHECK(has(text, "Drawn, but not in this quote: Welcome arch."));
  CHECK(has(text, "In this quote, but no longer drawn: Ribbon wall."));
  const std::string right = all_text(client(quoted_arch()));
  CHECK_FALSE(has(right, "not in this quote"));
  CHECK_FALSE(has(right, "no longer drawn"));
}

TEST_CASE("balloons per piece, by colour and in all are those of the count") {
  sample::Job job = quoted_arch();
  const EventCount count = job.count();
  // 19 quads in a spiral of two slots: 38 of each colour, 76 in all (by hand).
  const auto totals = colour_totals(count);
  REQUIRE(totals.size() == 2);
  CHECK(totals[0].used == 38);
  CHECK(totals[1].used == 38);
  const std::string text = all_text(client(job));
  CHECK(has(text, "All balloons\n76\n"));
  CHECK(has(text, "Rosewood\n38\n"));
  CHECK(has(text, "Chalk\n38\n"));
}

TEST_CASE("a time that is none was asked of the client") {
  const std::string text = all_text(client(changed([](sample::Job& j, Area&) {
    j.event.load_in_from = "7 am", j.event.ready_by = "25:00", j.event.strike_from = "17:00";
  })));
  CHECK(has(text, "The time from which we may come in"));
  CHECK_FALSE(has(text, "25:00"));
  CHECK(has(text, "Access again from 17:00"));
}

TEST_CASE("the client is asked for what the event needs, and for what it does not say yet") {
  sample::Job job = changed([](sample::Job& j, Area& area) {
    j.event.load_in_from = "07:30", j.event.strike_from = "17:00";
    area.site.surroundings = Surroundings::outdoors, area.site.outlet_m = 18, area.site.vehicle_m = 40;
    Structure post;
    post.id = "s1", post.name = "Gate post", post.kind = StructureKind::post, post.height_m = 2;
    Structure tree = post;
    tree.id = "s2", tree.name = "Old oak", tree.allowed_by = "the grower";
    Structure fence = post;
    fence.id = "s3", fence.name = "Fence";
    Structure wall = tree;
    wall.id = "s4", wall.name = "Garden wall";  // may be tied to, and nothing is
    area.structures = {post, tree, fence, wall};
    area.pieces[0].edit([](PlacedPiece& p) {
      SecuringLine line;
      line.tie = "side-1", line.anchor = AnchorKind::structure, line.structure = "s1", line.height_m = 1.5;
      SecuringLine stake;
      stake.tie = "side-2", stake.x_m = 2;
      SecuringLine to_tree = line;
      to_tree.structure = "s2";
      p.lines = {line, stake, to_tree};
    });
  });
  std::string text = all_text(client(job, in_metres()));
  for (const char* asked : {"from 07:30 on 19 June 2027", "from 17:00 to take down", "vehicle within 40 m",
                            "outlet that we may use within 18 m", "tie on to: Gate post. We need it",
                            "tie on to: Old oak (allowed by the grower)", "drive stakes"}) {
    CAPTURE(asked);
    CHECK(has(text, asked));
  }
  CHECK_FALSE(has(text, "tie on to: Fence"));
  CHECK_FALSE(has(text, "Garden wall"));
  // 18 m = 59.06 ft, 40 m = 131.2 ft
  text = all_text(client(job));
  CHECK(has(text, "vehicle within 131 ft"));
  CHECK(has(text, "within 59 ft"));
  text = all_text(client(sample::one_arch()));
  CHECK(has(text, "come in on 19 June 2027: still to be agreed"));
  CHECK(has(text, "outlet that we may use; how far is it?"));
  CHECK_FALSE(has(text, "stakes into"));
}

TEST_CASE("the cautions are those of the place: wind and release outdoors alone") {
  const std::string inside = all_text(client(sample::one_arch()));
  CHECK(has(inside, "Children under eight"));
  CHECK(has(inside, "Latex"));
  CHECK_FALSE(has(inside, "Beaufort"));
  const auto outside = changed([](sample::Job&, Area& area) { area.site.surroundings = Surroundings::outdoors; });
  // The printed top of force 5 is 24 mph or 38 km/h (beaufort.csv); the smaller is taken: 38 / 1.609344 = 23.6 mph, and
  // whole miles are rounded down.
  CHECK(has(all_text(client(outside)), "Nothing is left up above 23 mph (Beaufort 5)."));
  CHECK(has(all_text(client(outside, in_metres())), "Nothing is left up above 38 km/h (Beaufort 5)."));
}

TEST_CASE("the client read of Beaufort 5 alone: the sheet tells when the weakest piece comes down, and who decides") {
  const ReckonedJob reckoned(garden_arch(), standard_house(), true);
  const PieceStanding& answer = reckoned.standing.front();
  REQUIRE_FALSE(answer.fails_at_rest);
  const std::string text = all_text(client_sheet(reckoned.input(), in_metres()));
  CHECK(has(text, "Welcome arch is taken down at gusts of " + short_level_words(answer.take_down_m_s, Units::metric)));
  CHECK(has(text, planning_aid));
}

TEST_CASE("ballast was filled at home, and the client asked for a tap: now for a place to empty it") {
  const std::string text = all_text(client_sheet(ReckonedJob(garden_arch()).input(), in_metres()));
  // 10 kg on each of two feet.
  CHECK(has(text, "where we may empty our ballast when we take down: 20 l of water, which we bring with us."));
  CHECK_FALSE(has(text, "from a tap"));
  House sand = standard_house();
  sand.ballast_fill = BallastFill::sand;
  CHECK_FALSE(has(all_text(client_sheet(ReckonedJob(garden_arch(), sand).input(), in_metres())), "empty our ballast"));
}

TEST_CASE("with one area only what is of that area is on the client sheet") {
  SheetOptions options;
  options.area = "Garden entrance";
  const std::string text = all_text(client(quoted_arch(), options));
  CHECK_FALSE(has(text, "555.00"));
  CHECK_FALSE(has(text, "All balloons"));
  CHECK(has(text, "Welcome arch"));
  options.area = "nowhere";
  CHECK(client(quoted_arch(), options).empty());
}

TEST_CASE("client sheets of hard cases keep inside their page, on all papers, with a long quote") {
  for (HardCase& hard : hard_cases())
    for (Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
      CAPTURE(hard.name);
      CAPTURE(static_cast<int>(paper));
      IssuedQuote issued = quote_of("p1");
      for (int i = 0; i < 30; ++i)
        issued.quote.lines.push_back({QuoteLineKind::piece, "x",
                                      numbered("A piece with a name that goes on and on ", i), 123456789000 + i, 82500,
                                      10185185093});
      hard.job.event.issued = issued;
      SheetOptions options;
      options.paper = paper;
      for (const Page& page : client(hard.job, options)) check_page(page);
    }
}

TEST_CASE("a hall full of columns took a page of rows: those alike share one, others do not") {
  CHECK(has(all_text(client(columns(5))), "\nAisle 1 to 5\n5 × "));
  const auto other =
      columns(5, [](sample::Job& job, PlacedPiece&) { job.built["c3"] = sample::built(sample::column(1.5, 0.2)); });
  const std::string text = all_text(client(other));
  CHECK(has(text, "\nAisle 1 and 2\n2 × "));
  CHECK(has(text, "\nAisle 3\n"));
  CHECK(has(text, "\nAisle 4 and 5\n2 × "));
}
