// From charges to a quote: discount, tax by line, sums, deposit. Whole minor units throughout.
#pragma once

#include <span>
#include <string>

#include "studio/model/quote.hpp"

namespace quadrille {

/// Something to be asked for, before discount and tax.
struct Charge {
  QuoteLineKind kind = QuoteLineKind::piece;
  std::string piece;  ///< id, of a piece's
  std::string text;   ///< for the client
  Minor price_minor = 0;
  PartsPerMillion tax = 0;  ///< 0 to 1e9
  bool holds_tax = false;   ///< the price is told with its tax in it
  bool operator==(const Charge&) const = default;
};

/// What holds for the quote as a whole.
struct QuoteTerms {
  std::string currency = "USD";
  bool prices_with_tax = false;
  PartsPerMillion discount = 0;  ///< off every charge, 0 to 1,000,000
  PartsPerMillion deposit = 0;   ///< of the total, 0 to 1,000,000
  Minor deposit_above = 0;       ///< no deposit is asked for a total of this or less
};

/// The sum of two amounts; throws std::overflow_error beyond highest_amount.
Minor added(Minor a, Minor b);

/// A line for each charge, then the discount: a line of its own for each rate of tax among the charges, in the order in
/// which they come, so that what is taken off is taxed as what it is taken off from. It goes by the prices without tax,
/// or with tax where the quote is told so. Each line's tax is rounded for itself (see `scaled`); sums are the lines'.
/// Throws std::invalid_argument for shares outside their range, std::overflow_error beyond highest_amount.
Quote quote_of(std::span<const Charge> charges, const QuoteTerms& terms);

}  // namespace quadrille
