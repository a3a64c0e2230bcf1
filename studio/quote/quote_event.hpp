// The quote of an event: a line for each piece, delivery, set-up, strike, rental, discount; and what it earns.
#pragma once

#include <string>
#include <vector>

#include "studio/model/finding.hpp"
#include "studio/quote/costs.hpp"

namespace quadrille {

/// Where a piece's price comes from.
enum class PriceSource { own, repertoire, cost_plus, none };

/// "own", "repertoire", "cost-plus", "none".
const char* key_of(PriceSource source);

struct PiecePrice {
  std::string piece;  ///< id
  PriceSource source = PriceSource::none;
  std::string repertoire;  ///< key, where it is the repertoire's
  Minor net_minor = 0;     ///< of its line, before the discount
};

struct QuotedEvent {
  Quote quote;
  Earnings earnings;
  JobCosts costs;
  std::vector<PiecePrice> prices;  ///< one for each of costs.pieces
  Findings findings;               ///< see quote_findings.hpp
};

/// The quote, with what it earns and what there is to say of it.
///
/// A piece's price is its own, else that of the repertoire's first piece with a price and the same type and values,
/// else its costs with the house's mark-ups, the same for all pieces of one type that are made of the same balloons and
/// supplies. It is for the balloons and the work of dressing; frames and their rental, load-in, securing and the strike
/// are lines of their own, whatever its price is. Where the house tells prices with tax in them, the decorator's prices
/// and charges hold it, while costs with mark-ups never do: tax comes on top of those. Delivery is the base and the way
/// there and back. Lines that come to nothing are left out, except pieces'. Nothing is quoted where there is no piece;
/// where the house reckons in another currency than the event only pieces with a price of their own are. Where an
/// amount is beyond highest_amount, or the plan beyond longest_plan_s, the quote is empty, and a problem says so.
QuotedEvent quote_event(const QuoteInput& input);

/// What a quote earns over the costs: see Earnings. Throws std::overflow_error beyond highest_amount.
Earnings earnings_of(const Quote& quote, const JobCosts& costs);

}  // namespace quadrille
