#include "studio/quote/quote_event.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "studio/labour/clock.hpp"
#include "studio/quote/charges.hpp"
#include "studio/quote/quote_findings.hpp"

namespace quadrille {
namespace {

const RepertoirePiece* in_repertoire(const House& house, const PlacedPiece& placed) {
  const auto found = std::ranges::find_if(house.repertoire, [&](const RepertoirePiece& piece) {
    return piece.price_minor && piece.type == placed.type && piece.values == placed.values;
  });
  return found == house.repertoire.end() ? nullptr : &*found;
}

/// Of one type, made of the same balloons and supplies, however they are turned.
bool are_alike(const PlacedPiece& a, const PieceCount& counted_a, const PlacedPiece& b, const PieceCount& counted_b) {
  const auto same = [](const BalloonLine& x, const BalloonLine& y) {
    return x.nominal_in == y.nominal_in && x.inflated_m == y.inflated_m && x.colour == y.colour && x.used == y.used;
  };
  const auto same_supply = [](const SupplyLine& x, const SupplyLine& y) {
    return x.key == y.key && std::abs(x.quantity - y.quantity) < 1e-6;  // left and right differ by rounding
  };
  return a.type == b.type && std::ranges::equal(counted_a.lines, counted_b.lines, same) &&
         std::ranges::equal(counted_a.supplies, counted_b.supplies, same_supply);
}

class Quoting {
 public:
  Quoting(const QuoteInput& input, QuotedEvent& quoted)
      : in_(input),
        pricing_(input.house.pricing),
        knows_prices_(input.house.currency == input.event.currency),
        quoted_(quoted) {}

  void make() {
    quoted_.costs = costs_of(in_);
    for (const PieceCount& counted : in_.count.pieces) piece(counted);
    if (knows_prices_ && !in_.count.pieces.empty()) job();
    quoted_.quote = quote_of(charges_, terms());
    for (const QuoteLine& line : quoted_.quote.lines)
      for (PiecePrice& price : quoted_.prices)
        if (line.kind == QuoteLineKind::piece && line.piece == price.piece) price.net_minor = line.net_minor;
    quoted_.earnings = earnings_of(quoted_.quote, quoted_.costs);
  }

 private:
  Minor with_markup(Minor cost, PartsPerMillion markup) const { return added(cost, share_of(cost, markup)); }

  Minor by_costs(const PieceCost& cost) const {
    return added(with_markup(cost.balloons_minor, pricing_.markup_balloons),
                 added(with_markup(cost.supplies_minor, pricing_.markup_supplies),
                       with_markup(cost.labour_minor, pricing_.markup_labour)));
  }

  /// The mean of all pieces made as this one, rounded up: how a pack and the hours fall on each of them is no matter for
  /// the client, who would see two prices for one thing.
  Minor cost_plus(const PlacedPiece& placed, const PieceCount& its) const {
    Minor sum = 0, alike = 0;
    for (std::size_t i = 0; i < in_.count.pieces.size(); ++i) {
      const PieceCount& counted = in_.count.pieces[i];
      const PlacedPiece* const other = find_piece(in_.event, counted.id);
      if (other == nullptr || counted.not_built || !are_alike(*other, counted, placed, its)) continue;
      sum = added(sum, by_costs(quoted_.costs.pieces[i]));
      ++alike;
    }
    return (sum + alike - 1) / alike;
  }

  void piece(const PieceCount& counted) {
    const PlacedPiece* const placed = find_piece(in_.event, counted.id);
    PiecePrice& price = quoted_.prices.emplace_back();
    price.piece = counted.id;
    if (placed == nullptr) return;
    Charge charge{
        QuoteLineKind::piece,    counted.id, placed->name.empty() ? placed->id : placed->name, 0, pricing_.tax_pieces,
        pricing_.prices_with_tax};
    if (placed->price_minor) {
      price.source = PriceSource::own;
      charge.price_minor = *placed->price_minor;
    } else if (!knows_prices_) {
      return;
    } else if (const RepertoirePiece* known = in_repertoire(in_.house, *placed)) {
      price.source = PriceSource::repertoire;
      price.repertoire = known->key;
      charge.price_minor = *known->price_minor;
    } else if (counted.not_built) {
      return;
    } else {
      price.source = PriceSource::cost_plus;
      charge.price_minor = cost_plus(*placed, counted);
      charge.holds_tax = false;
    }
    charges_.push_back(std::move(charge));
  }

  void add(QuoteLineKind kind, std::string text, Minor amount, PartsPerMillion tax) {
    if (amount != 0) charges_.push_back({kind, {}, std::move(text), amount, tax, pricing_.prices_with_tax});
  }

  void hours(QuoteLineKind kind, const std::string& what, std::int64_t seconds) {
    add(kind, what + ", " + print_duration(seconds) + " of work", scaled(pricing_.charge_per_hour, seconds, 3600),
        pricing_.tax_work);
  }

  void job() {
    add(QuoteLineKind::delivery, "Delivery",
        added(pricing_.delivery_base, scaled(pricing_.delivery_per_km, metres_there_and_back(in_.event), 1000)),
        pricing_.tax_delivery);
    hours(QuoteLineKind::set_up, "Set-up", quoted_.costs.set_up_s);
    hours(QuoteLineKind::strike, "Strike", quoted_.costs.strike_s);
    Minor loose = in_.supplies.rental_minor;
    for (const KitOrder& kit : in_.supplies.kits) {
      add(QuoteLineKind::rental, "Rental: " + (kit.kits == 1 ? "" : std::to_string(kit.kits) + " × ") + kit.name,
          kit.rental_minor, pricing_.tax_rental);
      loose -= kit.rental_minor;
    }
    add(QuoteLineKind::rental, "Rental: frames, bases and fittings", loose, pricing_.tax_rental);
  }

  QuoteTerms terms() const {
    if (!knows_prices_) return {in_.event.currency, pricing_.prices_with_tax, in_.event.terms.discount, 0, 0};
    return {in_.event.currency, pricing_.prices_with_tax, in_.event.terms.discount, pricing_.deposit,
            pricing_.deposit_above};
  }

  const QuoteInput& in_;
  const Pricing& pricing_;
  const bool knows_prices_;
  QuotedEvent& quoted_;
  std::vector<Charge> charges_;
};

bool is_too_long(const DayPlan& plan) { return std::max(plan.all_presence_s(), plan.all_work_s()) > longest_plan_s; }

Finding finding_of_long_day(const DayPlan& plan) {
  return {Weight::problem,
          "day-too-long",
          {},
          {},
          {},
          "The work and the road come to " + std::to_string(plan.all_presence_s() / 3600) +
              " hours of all people, more than can be reckoned with, so there is no quote.",
          "Look for a distance in the event, or a rate in the house, that cannot be meant."};
}

}  // namespace

const char* key_of(PriceSource source) {
  constexpr const char* keys[] = {"own", "repertoire", "cost-plus", "none"};
  return keys[static_cast<std::size_t>(source)];
}

QuotedEvent quote_event(const QuoteInput& input) {
  QuotedEvent quoted;
  if (is_too_long(input.plan)) {
    quoted.quote.currency = input.event.currency;
    quoted.findings = {finding_of_long_day(input.plan)};
    return quoted;
  }
  try {
    Quoting(input, quoted).make();
    quoted.findings = quote_findings(input, quoted);
  } catch (const std::overflow_error&) {
    quoted = {};
    quoted.quote.currency = input.event.currency;
    quoted.findings = {{Weight::problem,
                        "amount-too-large",
                        {},
                        {},
                        {},
                        "The prices come to more than can be reckoned with, so there is no quote.",
                        "Look for a price in the event or the house that cannot be meant."}};
  }
  return quoted;
}

Earnings earnings_of(const Quote& quote, const JobCosts& costs) {
  Earnings earnings;
  earnings.balloons_minor = costs.balloons_minor;
  earnings.supplies_minor = costs.supplies_minor;
  earnings.labour_minor = costs.labour_minor;
  earnings.travel_minor = costs.travel_minor;
  const Minor direct = added(added(costs.balloons_minor, costs.supplies_minor), costs.labour_minor);
  earnings.margin_minor = added(quote.net_minor, -added(direct, costs.travel_minor));
  earnings.site_s = costs.site_s;
  earnings.all_s = costs.all_s;
  const Minor for_work = added(earnings.margin_minor, costs.labour_minor);
  if (costs.site_s > 0) earnings.per_hour_site_minor = scaled(for_work, 3600, costs.site_s);
  if (costs.all_s > 0) earnings.per_hour_all_minor = scaled(for_work, 3600, costs.all_s);
  earnings.rule_of_thumb_minor = scaled(direct, 5, 2);
  return earnings;
}

}  // namespace quadrille
