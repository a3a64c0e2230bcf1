#include "studio/quote/quote_words.hpp"

#include "studio/labour/clock.hpp"

namespace quadrille {

std::string print_issued(const IssuedQuote& issued) {
  return "Issued" + (issued.number.empty() ? "" : " as " + issued.number) +
         (issued.date.empty() ? "" : " on " + issued.date) +
         (issued.valid_until.empty() ? "" : ", valid until " + issued.valid_until) + ": " +
         print_money(issued.quote.total_minor, issued.quote.currency);
}

std::vector<EarningsLine> earnings_lines(const QuotedEvent& quoted) {
  const Earnings& earnings = quoted.earnings;
  const auto money = [&](Minor amount) { return print_figure(amount, quoted.quote.currency); };
  std::vector<EarningsLine> lines{
      {"Balloons", money(earnings.balloons_minor)},
      {"Supplies that are used up", money(earnings.supplies_minor)},
      {"Labour", money(earnings.labour_minor)},
      {"The road", money(earnings.travel_minor)},
      {quoted.costs.unknown.empty() ? "Costs" : "Costs, without what has no price", money(earnings.cost_minor()), true},
      {"Left of the price without tax", money(earnings.margin_minor), true},
      {"Time on site, of all people", print_duration(earnings.site_s)},
      {"Earned in an hour on site", money(earnings.per_hour_site_minor), true},
      {"Time with home and the road", print_duration(earnings.all_s)},
      {"Earned in an hour of all", money(earnings.per_hour_all_minor), true},
      {"2½ × materials and labour (common practice)", money(earnings.rule_of_thumb_minor)}};
  if (quoted.costs.hardware_minor > 0)
    lines.push_back(
        {"Frames, bases and fittings still to be bought, no cost of this job", money(quoted.costs.hardware_minor)});
  return lines;
}

std::string source_in_words(PriceSource source) {
  switch (source) {
    case PriceSource::own:
      return "its own price";
    case PriceSource::repertoire:
      return "repertoire";
    case PriceSource::cost_plus:
      return "costs with mark-ups";
    case PriceSource::none:
      break;
  }
  return "no price";
}

}  // namespace quadrille
