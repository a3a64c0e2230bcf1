// A quote in words, the same at the terminal and in the window.
#pragma once

#include <string>
#include <vector>

#include "studio/quote/quote_event.hpp"

namespace quadrille {

/// "Issued as Q-17 on 2027-05-02, valid until 2027-06-01: 465.00 USD"; what is not known is left out.
std::string print_issued(const IssuedQuote& issued);

/// A line of what the job costs and earns: for the decorator alone.
struct EarningsLine {
  std::string what;    ///< "Labour"
  std::string figure;  ///< "62.50", "1 h 50 min"
  bool sum = false;    ///< of the lines above it, or made from them
};

/// Costs and their sum, what the quote leaves, hours and what one of them earns, the rule of thumb; and what has to be
/// bought besides, where there is such.
std::vector<EarningsLine> earnings_lines(const QuotedEvent& quoted);

/// Where a piece's price comes from: "its own price", "repertoire", "costs with mark-ups", "no price".
std::string source_in_words(PriceSource source);

}  // namespace quadrille
