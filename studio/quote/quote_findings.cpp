#include "studio/quote/quote_findings.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "studio/takeoff/print.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_listed = 4;

std::string list_of(const std::vector<std::string>& items) {
  std::string list;
  const std::size_t shown = items.size() <= most_listed ? items.size() : most_listed - 1;
  for (std::size_t i = 0; i < shown; ++i) list += (i == 0 ? "" : i + 1 == items.size() ? " and " : ", ") + items[i];
  if (shown < items.size()) list += " and " + std::to_string(items.size() - shown) + " more";
  return list;
}

class Saying {
 public:
  Saying(const QuoteInput& input, const QuotedEvent& event) : in_(input), quoted_(event) {}

  Findings said() && {
    if (in_.count.pieces.empty()) {
      say(Weight::note, "nothing-to-quote", {}, {}, "There is no piece, so nothing is quoted.", "Place a piece.");
      return std::move(findings_);
    }
    if (in_.house.currency != in_.event.currency)
      say(Weight::problem, "quote-currency", {}, "currency",
          "The house has its prices in " + in_.house.currency + ", and the event reckons in " + in_.event.currency +
              ": nothing is converted, so that only pieces with a price of their own are quoted.",
          "Set one of the two currencies to the other.");
    for (std::size_t i = 0; i < quoted_.prices.size(); ++i) about_piece(i);
    about_shared_packs();
    about_costs();
    about_whole();
    return std::move(findings_);
  }

 private:
  void say(Weight weight, const char* code, const PieceCount* piece, std::string key, std::string text,
           std::string remedy) {
    findings_.push_back({weight, code, piece ? piece->area : "", piece ? piece->id : "", std::move(key),
                         std::move(text), std::move(remedy)});
  }

  std::string money(Minor amount) const { return print_money(amount, in_.event.currency); }

  void about_piece(std::size_t i) {
    const PieceCount& piece = in_.count.pieces[i];
    const PiecePrice& price = quoted_.prices[i];
    const PieceCost& cost = quoted_.costs.pieces[i];
    const std::string own_price = "give the piece a price of its own";
    if (price.source == PriceSource::none) {
      if (in_.house.currency != in_.event.currency) return;  // said once
      say(Weight::problem, "price-missing", &piece, "price",
          "It has no price, since it was not built, and is not in the quote.",
          "Mend what it was refused for, or " + own_price + ".");
      return;
    }
    if (price.source == PriceSource::cost_plus && !cost.unknown.empty()) {
      for (const std::string& what : cost.unknown) said_.insert(what);
      say(Weight::problem, "price-incomplete", &piece, "price",
          "Its price of " + money(price.net_minor) + " lacks what has no price in " + in_.event.currency + ": " +
              list_of(cost.unknown) + ".",
          "Put prices into the palette or the house, or " + own_price + ".");
    }
    if (price.source != PriceSource::cost_plus && price.net_minor < cost.all_minor())
      say(Weight::warning, "piece-below-cost", &piece, "price",
          "Its price of " + money(price.net_minor) +
              " is less than its balloons, supplies and work cost: " + money(cost.all_minor()) + ".",
          "Ask more for it, or make it of less.");
  }

  /// Packs are bought for all pieces together: a piece that is added or changed may move the price by costs of others.
  void about_shared_packs() {
    std::vector<std::string> shared;
    for (const BalloonBag& bag : in_.count.bags) {
      std::size_t users = 0, by_costs = 0;
      for (std::size_t i = 0; i < quoted_.prices.size(); ++i) {
        const auto& lines = in_.count.pieces[i].lines;
        if (std::ranges::none_of(lines, [&](const BalloonLine& line) { return is_in(line, bag); })) continue;
        ++users;
        by_costs += quoted_.prices[i].source == PriceSource::cost_plus ? 1 : 0;
      }
      if (users > 1 && by_costs > 0) shared.push_back(bag.colour_name + " " + print_nominal(bag.nominal_in));
    }
    if (!shared.empty())
      say(Weight::note, "shared-packs", nullptr, {},
          "Several pieces are made from the same packs: " + list_of(shared) +
              ". Each bears its part by the balloons it uses, so whoever changes one piece may see the price of "
              "another move.",
          "Give a piece a price of its own where that is not to be.");
  }

  void about_costs() {
    std::vector<std::string> unsaid;
    for (const std::string& what : quoted_.costs.unknown)
      if (!said_.contains(what)) unsaid.push_back(what);
    if (!unsaid.empty())
      say(Weight::warning, "cost-incomplete", nullptr, {},
          "The costs lack what has no price in " + in_.event.currency +
              ", so that less is earned than is said: " + list_of(unsaid) + ".",
          "Put prices into the palette or the house.");
    const Pricing& pricing = in_.house.pricing;
    if (!in_.event.terms.travel_m && in_.house.currency == in_.event.currency &&
        (pricing.delivery_per_km > 0 || pricing.travel_cost_per_km > 0))
      say(Weight::warning, "delivery-distance-unknown", nullptr, "travel-m",
          "How far it is to the venue is not known: delivery is quoted at its base of " + money(pricing.delivery_base) +
              " alone, and the road is in no cost.",
          "Give the job its distance by road.");
    if (quoted_.costs.hardware_minor > 0)
      say(Weight::note, "hardware-to-buy", nullptr, {},
          "Frames, bases and fittings for " + money(quoted_.costs.hardware_minor) +
              " are still to be bought. They are used again, so they are no cost of this job; their rental is quoted.",
          "Say in the house what of them is on hand.");
  }

  void about_whole() {
    const Quote& quote = quoted_.quote;
    const Minor told = quote.prices_with_tax ? quote.total_minor : quote.net_minor;
    const Minor cost = quoted_.earnings.cost_minor(), minimum = in_.house.pricing.minimum;
    if (quote.net_minor < cost)
      say(Weight::warning, "below-cost", nullptr, {},
          "The quote of " + money(quote.net_minor) + " without tax is less than the job costs, " + money(cost) + ".",
          "Ask " + money(quoted_.earnings.rule_of_thumb_minor) +
              ", two and a half times materials and labour, as is common practice; or take less discount off.");
    if (in_.house.currency == in_.event.currency && told < minimum)
      say(Weight::warning, "below-minimum", nullptr, {},
          "The quote of " + money(told) + " is under the house's minimum for a job, " + money(minimum) + ".",
          "Ask the minimum, or offer more for it.");
  }

  const QuoteInput& in_;
  const QuotedEvent& quoted_;
  std::set<std::string> said_;
  Findings findings_;
};

}  // namespace

Findings quote_findings(const QuoteInput& input, const QuotedEvent& event) { return Saying(input, event).said(); }

bool may_be_issued(const QuotedEvent& event) {
  return !event.quote.lines.empty() && std::ranges::count(event.findings, Weight::problem, &Finding::weight) == 0;
}

}  // namespace quadrille
