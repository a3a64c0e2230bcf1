// A job's costs, its quote and what it earns, reckoned by hand; and what there is to say of it.
#include "studio/quote/quote_event.hpp"

#include "studio/quote/quote_words.hpp"
#include "tests/quote/small_job.hpp"

namespace quadrille {
namespace {

TEST_CASE("a job's costs go over its pieces without a remainder, by hand") {
  // 138 balloons in packs of 100 at 14.95 are 29.90; 100 : 32 of it are 22.6515 and 7.2485, so 22.65 and, with the
  // larger remainder, 7.25. 14.4 m of line of 7.00 for 100 m are 1.008, so 1.01; 9.6 : 4.8 of it 0.67 and 0.34.
  // Work at 25.00 an hour: 2700 s are 18.75, 600 s 4.1667, so 4.17; the joining is set-up.
  const SmallJob job;
  const JobCosts costs = costs_of(job.input());
  REQUIRE(costs.pieces.size() == 2);
  CHECK(costs.balloons_minor == 2'990);
  CHECK(costs.pieces[0].balloons_minor == 2'265);
  CHECK(costs.pieces[1].balloons_minor == 725);
  CHECK(costs.supplies_minor == 101);
  CHECK(costs.pieces[0].supplies_minor == 67);
  CHECK(costs.pieces[1].supplies_minor == 34);
  CHECK(costs.pieces[0].labour_minor == 1'875);
  CHECK(costs.pieces[1].labour_minor == 417);
  // In all 5100 + 1500 s at the venue, 1800 on the road and 600 at home are 2.5 h: 62.50. 30 km at 0.40 are 12.00.
  CHECK(costs.site_s == 6'600);
  CHECK(costs.all_s == 9'000);
  CHECK(costs.labour_minor == 6'250);
  CHECK(costs.travel_minor == 1'200);
  CHECK(costs.set_up_s == 1'800);
  CHECK(costs.strike_s == 1'500);
  CHECK(costs.unknown.empty());
}

TEST_CASE("a quote by costs, by a price of its own, and with all that goes with it, by hand") {
  SmallJob job;
  job.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 9'900; });
  const QuotedEvent quoted = job.quoted();
  // Mark-ups of 150 %: balloons 22.65 + 33.975 (33.98), line 0.67 + 1.005 (1.01), work 18.75 + 28.125 (28.13).
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::piece, "p1")->net_minor == 5'663 + 168 + 4'688);
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::piece, "p2")->net_minor == 9'900);
  CHECK(quoted.prices[0].source == PriceSource::cost_plus);
  CHECK(quoted.prices[1].source == PriceSource::own);
  // Delivery 35.00 + 30 km × 1.20; half an hour of set-up at 50.00; 25 min of strike are 20.8333.
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::delivery)->net_minor == 7'100);
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::set_up)->net_minor == 2'500);
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::set_up)->text == "Set-up, 30 min of work");
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::strike)->net_minor == 2'083);
  // Of the 12.50 of rental the kit's are 10.00.
  REQUIRE(quoted.quote.lines.size() == 7);
  CHECK(quoted.quote.lines[5].text == "Rental: Gate kit");
  CHECK(quoted.quote.lines[5].net_minor == 1'000);
  CHECK(quoted.quote.lines[6].net_minor == 250);
  CHECK(quoted.quote.net_minor == 33'352);
  CHECK(quoted.quote.total_minor == 33'352);
  CHECK(quoted.quote.deposit_minor == 16'676);
  // Costs 29.90 + 1.01 + 62.50 + 12.00 = 105.41 leave 228.11. With the 62.50 for work that is 290.61 for 6600 s on site,
  // 158.5145 an hour, and for 9000 s in all 116.244. 2.5 × (29.90 + 1.01 + 62.50) = 233.525.
  CHECK(quoted.earnings.cost_minor() == 10'541);
  CHECK(quoted.earnings.margin_minor == 22'811);
  CHECK(quoted.earnings.per_hour_site_minor == 15'851);
  CHECK(quoted.earnings.per_hour_all_minor == 11'624);
  CHECK(quoted.earnings.rule_of_thumb_minor == 23'353);
  CHECK(std::ranges::all_of(quoted.findings, [](const Finding& finding) { return finding.code == "shared-packs"; }));
}

TEST_CASE("an empty shelf and a full one give the same price: what is taken from it will be bought again") {
  SmallJob job;
  const QuotedEvent bare = job.quoted();
  job.count.bags[0].in_stock = job.count.bags[0].on_hand = 138;
  job.count.bags[0].cost_minor = 0;
  job.supplies.lines[0].on_hand = 14.4;
  CHECK(job.quoted().quote == bare.quote);
}

TEST_CASE("a piece of the repertoire has its price, where type and values are the same") {
  SmallJob job;
  RepertoirePiece known{"gate", "Gate", "arch", {{"span", Value::of_number(Kind::length, 2.7)}}, {}, 46'500, {}, {}};
  job.house.repertoire = {known};
  CHECK(job.quoted().prices[0].source == PriceSource::cost_plus);
  job.edit_piece(0, [&](PlacedPiece& piece) { piece.values = known.values; });
  const QuotedEvent quoted = job.quoted();
  CHECK(quoted.prices[0].source == PriceSource::repertoire);
  CHECK(quoted.prices[0].repertoire == "gate");
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::piece, "p1")->net_minor == 46'500);
  CHECK(quoted.prices[1].source == PriceSource::cost_plus);
  job.edit_piece(0, [](PlacedPiece& piece) { piece.price_minor = 0; });  // a gift
  CHECK(line_of_kind(job.quoted().quote, QuoteLineKind::piece, "p1")->net_minor == 0);
}

TEST_CASE("pieces made alike have one price by costs, the mean of theirs, and other pieces keep their own") {
  SmallJob job;
  job.count.pieces[1].lines[0].used = 100;  // as many as the first has
  job.count.pieces[1].supplies[0].quantity = job.count.pieces[0].supplies[0].quantity;
  const Quote apart = job.quoted().quote;  // an arch and a column
  const Minor first = apart.lines[0].net_minor, second = apart.lines[1].net_minor;
  REQUIRE(first != second);
  job.edit_piece(1, [](PlacedPiece& piece) { piece.type = "arch"; });
  const Quote alike = job.quoted().quote;
  CHECK(alike.lines[0].net_minor == (first + second + 1) / 2);
  CHECK(alike.lines[1].net_minor == alike.lines[0].net_minor);
  job.count.pieces[1].supplies[0].quantity /= 2;
  const Quote other = job.quoted().quote;
  CHECK(other.lines[0].net_minor != other.lines[1].net_minor);
}

TEST_CASE("a piece's price moved when another was changed, and nobody said why: packs that they share are named") {
  SmallJob job;
  const QuotedEvent before = job.quoted();
  const auto note = find_in(before.findings, "shared-packs");
  REQUIRE(note);
  CHECK(note->weight == Weight::note);
  CHECK(note->text.find("Fern 11 in") != std::string::npos);
  // 194 balloons with 6 spares are two packs of 100 as 132 are: the first piece pays 100 parts in 194 of them, not in 132.
  job.count.pieces[1].lines[0].used = 94, job.count.bags[0].used = 194;
  CHECK(job.quoted().prices[0].net_minor < before.prices[0].net_minor);
  job.edit_piece(0, [](PlacedPiece& piece) { piece.price_minor = 30'000; });
  job.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 12'000; });
  CHECK_FALSE(find_in(job.quoted().findings, "shared-packs"));
  SmallJob apart;
  apart.count.pieces[1].lines[0].colour.colour = "rose", apart.count.pieces[1].lines[0].colour_name = "Rose";
  CHECK_FALSE(find_in(apart.quoted().findings, "shared-packs"));
}

TEST_CASE("prices with tax hold it, costs with mark-ups do not") {
  SmallJob job;
  job.house.pricing.prices_with_tax = true;
  job.house.pricing.tax_pieces = 200'000;
  job.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 12'000; });
  const Quote quote = job.quoted().quote;
  // 120.00 hold 20.00. 105.19 by costs get 21.038 on top.
  CHECK(line_of_kind(quote, QuoteLineKind::piece, "p2")->net_minor == 10'000);
  CHECK(line_of_kind(quote, QuoteLineKind::piece, "p1")->net_minor == 10'519);
  CHECK(line_of_kind(quote, QuoteLineKind::piece, "p1")->tax_minor == 2'104);
  CHECK(quote.prices_with_tax);
}

TEST_CASE("a size without a price is a problem, never a price of nothing") {
  SmallJob job;
  job.palettes[0].colours[0].packs.clear();
  const QuotedEvent quoted = job.quoted();
  const auto finding = find_in(quoted.findings, "price-incomplete");
  REQUIRE(finding);
  CHECK(finding->weight == Weight::problem);
  CHECK(finding->piece == "p1");
  CHECK(finding->text.find("Fern 11 in") != std::string::npos);
  // With prices of their own the pieces stand, and the costs are said to be too low.
  for (const std::size_t piece : {0, 1})
    job.edit_piece(piece, [](PlacedPiece& placed) { placed.price_minor = 20'000; });
  const Findings findings = job.quoted().findings;
  CHECK_FALSE(find_in(findings, "price-incomplete"));
  REQUIRE(find_in(findings, "cost-incomplete"));
  CHECK(find_in(findings, "cost-incomplete")->weight == Weight::warning);
}

TEST_CASE("a supply without an entry in the house makes the price incomplete, water does not") {
  SmallJob job;
  std::erase_if(job.house.supplies, [](const SupplyStock& stock) { return stock.key == "cluster-line"; });
  CHECK(find_in(job.quoted().findings, "price-incomplete"));
  job.supplies.lines[0].key = "ballast-water";
  CHECK_FALSE(find_in(job.quoted().findings, "price-incomplete"));
}

TEST_CASE("prices in another currency are not taken as the event's") {
  SmallJob palette;
  palette.palettes[0].currency = "EUR";
  CHECK(find_in(palette.quoted().findings, "price-incomplete"));
  SmallJob house;
  house.house.currency = "EUR";
  house.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 9'900; });
  const QuotedEvent quoted = house.quoted();
  REQUIRE(find_in(quoted.findings, "quote-currency"));
  REQUIRE(quoted.quote.lines.size() == 1);  // nothing of the house's
  CHECK(quoted.quote.total_minor == 9'900);
  CHECK(quoted.quote.deposit_minor == 0);
}

TEST_CASE("prices too low, a way not known and hardware still to be bought are told") {
  SmallJob job;
  job.edit_piece(0, [](PlacedPiece& piece) { piece.price_minor = 100; });
  job.edit_piece(1, [](PlacedPiece& piece) { piece.price_minor = 100; });
  job.event.terms.travel_m.reset();
  job.supplies.lines.push_back(job.supplies.lines[0]);
  job.supplies.lines[1].key = "rod-pvc";
  job.supplies.lines[1].reused = true;
  job.supplies.lines[1].cost_minor = 2'500;
  const QuotedEvent quoted = job.quoted();
  for (const char* code : {"piece-below-cost", "below-minimum", "delivery-distance-unknown", "hardware-to-buy"}) {
    CAPTURE(code);
    CHECK(find_in(quoted.findings, code));
  }
  CHECK(earnings_lines(quoted).back().what.starts_with("Frames, bases and fittings still to be bought"));
  CHECK(earnings_lines(quoted).back().figure == "25.00");
  CHECK_FALSE(find_in(quoted.findings, "below-cost"));
  CHECK(quoted.earnings.supplies_minor == 101);  // the rods are no cost of this job
  CHECK(line_of_kind(quoted.quote, QuoteLineKind::delivery)->net_minor == 3'500);
  job.event.terms.discount = 500'000;
  CHECK(find_in(job.quoted().findings, "below-cost"));
}

TEST_CASE("amounts beyond what is reckoned with are a problem, not a wrong sum") {
  SmallJob job;
  for (const std::size_t piece : {0, 1})
    job.edit_piece(piece, [](PlacedPiece& placed) { placed.price_minor = highest_amount; });
  const QuotedEvent quoted = job.quoted();
  CHECK(quoted.quote.lines.empty());
  REQUIRE(quoted.findings.size() == 1);
  CHECK(quoted.findings[0].code == "amount-too-large");
}

TEST_CASE("a day of more hours than money is multiplied by ended the program: it is a problem") {
  // 1e9 s of all people are reckoned with: 3900 s of them are the road, the strike and home. At 25.00 an hour they are
  // 2500 × 1e9 ÷ 3600 = 694,444,444.4 cents.
  SmallJob job;
  job.plan.build.length_s = 1'000'000'000 - 3'900;
  const QuotedEvent longest = job.quoted();
  CHECK(longest.costs.labour_minor == 694'444'444);
  CHECK_FALSE(find_in(longest.findings, "day-too-long"));
  job.plan.build.length_s += 1;
  const QuotedEvent quoted = job.quoted();
  CHECK(quoted.quote.lines.empty());
  REQUIRE(quoted.findings.size() == 1);
  CHECK(quoted.findings[0].code == "day-too-long");
  CHECK(quoted.findings[0].weight == Weight::problem);
  CHECK(quoted.findings[0].text.find("277777 hours") != std::string::npos);  // 1e9 ÷ 3600, rounded down
}

TEST_CASE("where there is no piece nothing is quoted, not even delivery") {
  SmallJob job;
  job.count = {};
  const QuotedEvent quoted = job.quoted();
  CHECK(quoted.quote.lines.empty());
  CHECK(find_in(quoted.findings, "nothing-to-quote"));
}

}  // namespace
}  // namespace quadrille
