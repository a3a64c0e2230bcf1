#include "studio/quote/charges.hpp"

#include <algorithm>
#include <stdexcept>
#include <utility>
#include <vector>

namespace quadrille {
namespace {

QuoteLine line_of(const Charge& charge) {
  QuoteLine line{charge.kind, charge.piece, charge.text, charge.price_minor, charge.tax, 0};
  if (charge.holds_tax) {
    line.tax_minor = tax_within(charge.price_minor, charge.tax);
    line.net_minor = charge.price_minor - line.tax_minor;
  } else {
    line.tax_minor = share_of(charge.price_minor, charge.tax);
  }
  return line;
}

/// What the lines of each rate of tax come to, as the quote is told.
std::vector<std::pair<PartsPerMillion, Minor>> sums_by_tax(const std::vector<QuoteLine>& lines, bool with_tax) {
  std::vector<std::pair<PartsPerMillion, Minor>> sums;
  for (const QuoteLine& line : lines) {
    auto sum = std::ranges::find(sums, line.tax, &std::pair<PartsPerMillion, Minor>::first);
    if (sum == sums.end()) sum = sums.insert(sum, {line.tax, 0});
    sum->second = added(sum->second, with_tax ? added(line.net_minor, line.tax_minor) : line.net_minor);
  }
  return sums;
}

std::vector<QuoteLine> discounts(const std::vector<QuoteLine>& lines, const QuoteTerms& terms) {
  std::vector<QuoteLine> off;
  if (terms.discount == 0) return off;
  const auto sums = sums_by_tax(lines, terms.prices_with_tax);
  for (const auto& [tax, sum] : sums) {
    const Minor taken = share_of(sum, terms.discount);
    if (taken == 0) continue;
    const std::string of = sums.size() == 1 ? "" : " on what is taxed at " + print_share(tax);
    off.push_back(line_of({QuoteLineKind::discount,
                           {},
                           "Discount, " + print_share(terms.discount) + of,
                           -taken,
                           tax,
                           terms.prices_with_tax}));
  }
  return off;
}

}  // namespace

Minor added(Minor a, Minor b) {
  const auto fits = [](Minor amount) { return amount <= highest_amount && amount >= -highest_amount; };
  if (!fits(a) || !fits(b) || !fits(a + b))
    throw std::overflow_error("an amount of money is beyond what is reckoned with");
  return a + b;
}

Quote quote_of(std::span<const Charge> charges, const QuoteTerms& terms) {
  const auto is_share = [](PartsPerMillion share) { return share >= 0 && share <= whole_ppm; };
  if (!is_share(terms.discount) || !is_share(terms.deposit))
    throw std::invalid_argument("a share of a quote is out of range");
  Quote quote;
  quote.currency = terms.currency;
  quote.prices_with_tax = terms.prices_with_tax;
  for (const Charge& charge : charges) quote.lines.push_back(line_of(charge));
  std::ranges::move(discounts(quote.lines, terms), std::back_inserter(quote.lines));
  for (const QuoteLine& line : quote.lines) {
    quote.net_minor = added(quote.net_minor, line.net_minor);
    quote.tax_minor = added(quote.tax_minor, line.tax_minor);
  }
  quote.total_minor = added(quote.net_minor, quote.tax_minor);
  if (quote.total_minor > std::max<Minor>(terms.deposit_above, 0))
    quote.deposit_minor = share_of(quote.total_minor, terms.deposit);
  quote.balance_minor = quote.total_minor - quote.deposit_minor;
  return quote;
}

}  // namespace quadrille
