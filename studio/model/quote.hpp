// A quote as a value: what the client is asked, line by line, and what the decorator alone sees behind it.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "studio/model/money.hpp"
#include "studio/model/preserved.hpp"

namespace quadrille {

enum class QuoteLineKind { piece, delivery, set_up, strike, rental, discount };

struct QuoteLine {
  QuoteLineKind kind = QuoteLineKind::piece;
  std::string piece;    ///< id, of a piece's line
  std::string text;     ///< for the client
  Minor net_minor = 0;  ///< without tax; a discount's is negative
  PartsPerMillion tax = 0;
  Minor tax_minor = 0;  ///< of this line, rounded for itself
  Minor total_minor() const { return net_minor + tax_minor; }
  bool operator==(const QuoteLine&) const = default;
};

/// What the client is asked. The sums are those of the lines, to the minor unit.
struct Quote {
  std::string currency = "USD";
  std::vector<QuoteLine> lines;
  Minor net_minor = 0, tax_minor = 0, total_minor = 0;
  Minor deposit_minor = 0, balance_minor = 0;  ///< sum to the total
  bool prices_with_tax = false;                ///< lines are shown with their tax in them
  bool operator==(const Quote&) const = default;
};

/// What the quote earns; for the decorator alone, never on a sheet for the client.
struct Earnings {
  Minor balloons_minor = 0, supplies_minor = 0, labour_minor = 0, travel_minor = 0;  ///< costs
  Minor cost_minor() const { return balloons_minor + supplies_minor + labour_minor + travel_minor; }
  Minor margin_minor = 0;         ///< net of the quote less cost
  std::int64_t site_s = 0;        ///< working seconds of all people on site
  std::int64_t all_s = 0;         ///< with preparing at home and travelling
  Minor per_hour_site_minor = 0;  ///< margin and labour for one hour of one person on site
  Minor per_hour_all_minor = 0;   ///< the same for all hours
  Minor rule_of_thumb_minor = 0;  ///< 2.5 × direct costs (materials and labour): common practice, no source
  bool operator==(const Earnings&) const = default;
};

/// A quote that was given to the client: frozen, with the figures it was made from.
struct IssuedQuote {
  std::string number;             ///< the decorator's own; may be empty
  std::string date, valid_until;  ///< ISO 8601
  Quote quote;
  std::map<std::string, std::string, std::less<>> figures;  ///< key → value in words: wage, mark-ups, rates of tax…
  Preserved preserved;
  bool operator==(const IssuedQuote&) const = default;
};

}  // namespace quadrille
