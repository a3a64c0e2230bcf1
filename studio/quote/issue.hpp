// Issuing a quote: it is frozen in the event, with the figures it was made from.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "studio/model/event.hpp"
#include "studio/model/house.hpp"
#include "studio/quote/quote_event.hpp"

namespace quadrille {

using QuoteFigures = std::map<std::string, std::string, std::less<>>;

/// The figures that a quote of this event is made from, in words, by key: "wage-per-hour" → "25.00 USD",
/// "markup-balloons" → "150 %", "travel" → "14 km", "crew", "discount", "balloons", "set-up", "strike"…
QuoteFigures figures_of(const QuoteInput& input, const QuotedEvent& quoted);

/// The event with the quote frozen in it, as of `date` (ISO 8601) and valid for the house's days from then; one that
/// was issued before is replaced, what is not understood in its place is kept. `number` is the decorator's own and may
/// be empty. The caller has asked may_be_issued; throws std::invalid_argument for a date that is none.
Event issue(Event event, const QuotedEvent& quoted, const House& house, QuoteFigures figures, std::string number,
            std::string date);

}  // namespace quadrille
