// What there is to say of a quote: prices that are missing, and prices that are too low.
#pragma once

#include "studio/model/finding.hpp"
#include "studio/quote/quote_event.hpp"

namespace quadrille {

/// Problems: "quote-currency" (the house reckons in another currency than the event), "price-missing" (a piece without
/// any price), "price-incomplete" (its price is by costs, of which some are not known). Warnings: "cost-incomplete"
/// (the price stands, but not all costs are known, so that it earns less than is said), "piece-below-cost",
/// "below-cost", "below-minimum", "delivery-distance-unknown". Notes: "hardware-to-buy", "nothing-to-quote",
/// "shared-packs" (a price by costs moves when another piece is changed).
Findings quote_findings(const QuoteInput& input, const QuotedEvent& event);

/// True where a finding of weight problem says that the quote is not what the client should be told.
bool may_be_issued(const QuotedEvent& event);

}  // namespace quadrille
