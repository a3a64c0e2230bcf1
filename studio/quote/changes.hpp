// How a quote as it would be made now differs from the one that the client was given. Nothing is ever applied.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "studio/model/finding.hpp"
#include "studio/quote/issue.hpp"

namespace quadrille {

/// A line that differs; nothing on the side where there is none.
struct LineChange {
  std::optional<QuoteLine> was, is;
  bool operator==(const LineChange&) const = default;
};

/// A figure that differs, in words; empty on the side where there is none.
struct FigureChange {
  std::string key, was, is;
  bool operator==(const FigureChange&) const = default;
};

struct QuoteChanges {
  std::vector<LineChange> lines;  ///< in the order of the issued quote, then what is new
  std::vector<FigureChange> figures;
  bool sums_differ = false;  ///< net, tax, total, deposit or balance
  bool empty() const { return lines.empty() && figures.empty() && !sums_differ; }
};

/// Lines belong together by kind and piece; of several of one kind those with the same tax and text first.
QuoteChanges quote_changes(const IssuedQuote& issued, const Quote& now, const QuoteFigures& figures);

/// What there is to say of a quote that was issued: "quote-expired" (warning: `as_of`, an ISO 8601 date, is after its
/// validity; not told where `as_of` is empty or no date), "quote-changed" (warning: the client was told another total
/// or other lines), "quote-figures-changed" (note: the lines are the same, made from other figures).
Findings issued_findings(const IssuedQuote& issued, const Quote& now, const QuoteChanges& changes,
                         std::string_view as_of);

/// True where the quote no longer holds on the day; false where one of the dates is not known.
bool is_expired(const IssuedQuote& issued, std::string_view as_of);

}  // namespace quadrille
