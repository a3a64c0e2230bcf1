#include "studio/quote/changes.hpp"

#include <algorithm>
#include <functional>
#include <tuple>
#include <utility>

#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

using Same = std::function<bool(const QuoteLine&, const QuoteLine&)>;

/// For each line of `was` its line in `is`, or none.
std::vector<std::optional<std::size_t>> partners(const std::vector<QuoteLine>& was, const std::vector<QuoteLine>& is) {
  const auto alike = [](const QuoteLine& a, const QuoteLine& b) { return a.kind == b.kind && a.piece == b.piece; };
  const std::vector<Same> rules{
      [&](const QuoteLine& a, const QuoteLine& b) { return alike(a, b) && a.text == b.text && a.tax == b.tax; },
      [&](const QuoteLine& a, const QuoteLine& b) { return alike(a, b) && (a.text == b.text || a.tax == b.tax); },
      alike};
  std::vector<std::optional<std::size_t>> found(was.size());
  std::vector<bool> taken(is.size(), false);
  for (const Same& same : rules)
    for (std::size_t i = 0; i < was.size(); ++i)
      for (std::size_t k = 0; k < is.size() && !found[i]; ++k) {
        if (taken[k] || !same(was[i], is[k])) continue;
        found[i] = k;
        taken[k] = true;
      }
  return found;
}

std::vector<LineChange> line_changes(const std::vector<QuoteLine>& was, const std::vector<QuoteLine>& is) {
  std::vector<LineChange> changes;
  const auto found = partners(was, is);
  for (std::size_t i = 0; i < was.size(); ++i)
    if (!found[i])
      changes.push_back({was[i], std::nullopt});
    else if (was[i] != is[*found[i]])
      changes.push_back({was[i], is[*found[i]]});
  for (std::size_t k = 0; k < is.size(); ++k)
    if (std::ranges::find(found, std::optional(k)) == found.end()) changes.push_back({std::nullopt, is[k]});
  return changes;
}

std::vector<FigureChange> figure_changes(const QuoteFigures& was, const QuoteFigures& is) {
  std::vector<FigureChange> changes;
  for (const auto& [key, value] : was) {
    const auto now = is.find(key);
    if (now == is.end())
      changes.push_back({key, value, {}});
    else if (now->second != value)
      changes.push_back({key, value, now->second});
  }
  for (const auto& [key, value] : is)
    if (!was.contains(key)) changes.push_back({key, {}, value});
  return changes;
}

}  // namespace

QuoteChanges quote_changes(const IssuedQuote& issued, const Quote& now, const QuoteFigures& figures) {
  QuoteChanges changes{line_changes(issued.quote.lines, now.lines), figure_changes(issued.figures, figures), false};
  const auto sums = [](const Quote& quote) {
    return std::tuple(std::string_view(quote.currency), quote.net_minor, quote.tax_minor, quote.total_minor,
                      quote.deposit_minor, quote.balance_minor);
  };
  changes.sums_differ = sums(issued.quote) != sums(now);
  return changes;
}

bool is_expired(const IssuedQuote& issued, std::string_view as_of) {
  // Dates of this form are in order as texts are.
  return is_date(as_of) && is_date(issued.valid_until) && issued.valid_until < as_of;
}

Findings issued_findings(const IssuedQuote& issued, const Quote& now, const QuoteChanges& changes,
                         std::string_view as_of) {
  Findings findings;
  const std::string which = issued.number.empty() ? "The quote" : "The quote " + issued.number;
  const std::string of = issued.date.empty() ? "" : " of " + issued.date;
  const auto say = [&](Weight weight, const char* code, std::string text, std::string remedy) {
    findings.push_back({weight, code, {}, {}, {}, std::move(text), std::move(remedy)});
  };
  if (is_expired(issued, as_of))
    say(Weight::warning, "quote-expired", which + of + " was valid until " + issued.valid_until + ".",
        "Issue it again, or tell the client that it still holds.");
  if (changes.sums_differ || !changes.lines.empty())
    say(Weight::warning, "quote-changed",
        which + of + " was for " + print_money(issued.quote.total_minor, issued.quote.currency) +
            ", and now it would be " + print_money(now.total_minor, now.currency) +
            "; what the client was given is kept.",
        "Look at the differences; issue it again to replace it.");
  else if (!changes.figures.empty())
    say(Weight::note, "quote-figures-changed", which + of + " stands line by line, but is made from other figures now.",
        "");
  return findings;
}

}  // namespace quadrille
