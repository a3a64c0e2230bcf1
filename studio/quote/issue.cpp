#include "studio/quote/issue.hpp"

#include <stdexcept>
#include <utility>

#include "sdk/number.hpp"
#include "studio/labour/clock.hpp"
#include "studio/model/calendar.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {

QuoteFigures figures_of(const QuoteInput& input, const QuotedEvent& quoted) {
  const Pricing& pricing = input.house.pricing;
  const auto money = [&](Minor amount) { return print_money(amount, input.house.currency); };
  QuoteFigures figures{{"house", input.house.name.empty() ? "standard or without a name" : input.house.name},
                       {"wage-per-hour", money(pricing.wage_per_hour)},
                       {"charge-per-hour", money(pricing.charge_per_hour)},
                       {"markup-balloons", print_share(pricing.markup_balloons)},
                       {"markup-supplies", print_share(pricing.markup_supplies)},
                       {"markup-labour", print_share(pricing.markup_labour)},
                       {"delivery-base", money(pricing.delivery_base)},
                       {"delivery-per-km", money(pricing.delivery_per_km)},
                       {"travel-cost-per-km", money(pricing.travel_cost_per_km)},
                       {"tax-pieces", print_share(pricing.tax_pieces)},
                       {"tax-delivery", print_share(pricing.tax_delivery)},
                       {"tax-work", print_share(pricing.tax_work)},
                       {"tax-rental", print_share(pricing.tax_rental)},
                       {"deposit", print_share(pricing.deposit)},
                       {"deposit-above", money(pricing.deposit_above)},
                       {"minimum", money(pricing.minimum)}};
  figures["discount"] = print_share(input.event.terms.discount);
  figures["crew"] = std::to_string(input.plan.crew);
  figures["balloons"] = std::to_string(input.count.total_balloons);
  figures["travel"] =
      input.event.terms.travel_m ? print_fixed(*input.event.terms.travel_m / 1000, 1) + " km one way" : "not known";
  figures["set-up"] = print_duration(quoted.costs.set_up_s);
  figures["strike"] = print_duration(quoted.costs.strike_s);
  figures["cost"] = print_money(quoted.earnings.cost_minor(), input.event.currency);
  return figures;
}

Event issue(Event event, const QuotedEvent& quoted, const House& house, QuoteFigures figures, std::string number,
            std::string date) {
  if (!is_date(date)) throw std::invalid_argument("a quote is issued on a day of the calendar");
  IssuedQuote issued;
  if (event.issued) issued.preserved = std::move(event.issued->preserved);
  issued.number = std::move(number);
  issued.valid_until = days_after(date, house.pricing.valid_days);
  issued.date = std::move(date);
  issued.quote = quoted.quote;
  issued.figures = std::move(figures);
  return with_issued(std::move(event), std::move(issued));
}

}  // namespace quadrille
