#include "studio/command/quote_text.hpp"

#include <algorithm>
#include <ostream>
#include <utility>

#include "studio/command/reckon.hpp"
#include "studio/command/table.hpp"
#include "studio/files/words.hpp"
#include "studio/model/finding_words.hpp"
#include "studio/quote/quote_words.hpp"

namespace quadrille {
namespace {

constexpr Align left = Align::left, right = Align::right;

void print_quote(const Quote& quote, std::ostream& out) {
  const auto money = [&](Minor amount) { return print_figure(amount, quote.currency); };
  // Columns that hold nothing are left out.
  const bool taxed = std::ranges::any_of(quote.lines, [](const QuoteLine& line) { return line.tax != 0; });
  std::vector<std::vector<std::string>> rows;
  const auto add = [&](const std::string& text, const std::string& net, const std::string& share,
                       const std::string& tax, Minor total) {
    if (taxed)
      rows.push_back({text, net, share, tax, money(total)});
    else
      rows.push_back({text, money(total)});
  };
  for (const QuoteLine& line : quote.lines)
    add(line.text, money(line.net_minor), print_share(line.tax), money(line.tax_minor), line.total_minor());
  add("Total", money(quote.net_minor), "", money(quote.tax_minor), quote.total_minor);
  if (quote.deposit_minor != 0) {
    add("Deposit", "", "", "", quote.deposit_minor);
    add("Balance", "", "", "", quote.balance_minor);
  }
  rows = with_folded(rows, 0, 50);
  out << (taxed ? print_table({"what", "without tax", "rate", "tax", "with tax"}, rows,
                              {left, right, right, right, right})
                : print_table({"what", "price"}, rows, {left, right}));
}

void print_pieces(const QuotedEvent& quoted, const Event& event, std::ostream& out) {
  const auto money = [&](Minor amount) { return print_figure(amount, event.currency); };
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < quoted.prices.size(); ++i) {
    const PieceCost& cost = quoted.costs.pieces[i];
    const PiecePrice& price = quoted.prices[i];
    const PlacedPiece* const placed = find_piece(event, price.piece);
    rows.push_back({placed == nullptr || placed->name.empty() ? price.piece : placed->name, key_of(price.source),
                    price.source == PriceSource::none ? "none" : money(price.net_minor), money(cost.balloons_minor),
                    money(cost.supplies_minor), print_duration(cost.work_s), money(cost.labour_minor),
                    cost.unknown.empty() ? "" : "and more"});
  }
  out << print_table({"piece", "by", "price", "balloons", "supplies", "work", "at wage", ""}, with_folded(rows, 0, 30),
                     {left, left, right, right, right, right, right, left});
}

void print_earnings(const QuotedEvent& quoted, std::ostream& out) {
  const Earnings& earnings = quoted.earnings;
  const auto money = [&](Minor amount) { return print_figure(amount, quoted.quote.currency); };
  out << "  costs " << money(earnings.cost_minor()) << ": balloons " << money(earnings.balloons_minor) << ", supplies "
      << money(earnings.supplies_minor) << ", labour " << money(earnings.labour_minor) << ", the road "
      << money(earnings.travel_minor) << (quoted.costs.unknown.empty() ? "" : ", and what has no price") << '\n';
  if (quoted.costs.hardware_minor > 0)
    out << "  besides, frames, bases and fittings for " << money(quoted.costs.hardware_minor)
        << " are still to be bought, to be used again\n";
  out << "  leaves " << money(earnings.margin_minor) << " of " << money(quoted.quote.net_minor) << " without tax\n"
      << "  earns " << money(earnings.per_hour_site_minor) << " an hour of each person on site ("
      << print_duration(earnings.site_s) << " in all),\n        " << money(earnings.per_hour_all_minor)
      << " with packing and the road (" << print_duration(earnings.all_s) << ")\n"
      << "  two and a half times materials and labour would be " << money(earnings.rule_of_thumb_minor)
      << " (common practice)\n";
}

void print_changes(const IssuedQuote& issued, const QuoteChanges& changes, std::ostream& out) {
  const std::string& currency = issued.quote.currency;
  out << '\n' << print_issued(issued) << '\n';
  if (changes.empty()) {
    out << "  nothing has changed since.\n";
    return;
  }
  std::vector<std::vector<std::string>> rows;
  for (const LineChange& change : changes.lines)
    rows.push_back({change.is ? change.is->text : change.was->text,
                    change.was ? print_figure(change.was->total_minor(), currency) : "",
                    change.is ? print_figure(change.is->total_minor(), currency) : ""});
  for (const FigureChange& change : changes.figures) rows.push_back({change.key, change.was, change.is});
  if (!rows.empty()) out << print_table({"since then", "was", "would be"}, rows, {left, right, right});
}

}  // namespace

void print_text(const QuotedEvent& quoted, const PreparedEvent& prepared, const std::optional<QuoteChanges>& changes,
                std::ostream& out) {
  const Event& event = prepared.opened.event;
  out << "Quote" << (event.title.empty() ? "" : " for " + event.title) << ", in " << quoted.quote.currency << '\n';
  if (quoted.quote.lines.empty())
    out << "  nothing is quoted.\n";
  else
    print_quote(quoted.quote, out);
  out << "\nFor you alone\n";
  print_earnings(quoted, out);
  if (!quoted.prices.empty()) {
    out << '\n';
    print_pieces(quoted, event, out);
  }
  if (event.issued && changes) print_changes(*event.issued, *changes, out);
  out << '\n' << print_house(prepared.house) << '\n';
}

std::vector<ListTable> tables_of(const QuotedEvent& quoted) {
  const Quote& quote = quoted.quote;
  const std::string& currency = quote.currency;
  const auto money = [&](Minor amount) { return money_cell(amount, currency); };
  ListTable lines{"line", "Quote", {"kind", "piece", "text", "net", "tax_percent", "tax", "total", "currency"}, {}};
  for (const QuoteLine& line : quote.lines)
    lines.rows.push_back({text_cell(word_of(quote_line_words, line.kind)), text_cell(line.piece), text_cell(line.text),
                          money(line.net_minor), share_cell(line.tax), money(line.tax_minor), money(line.total_minor()),
                          text_cell(currency)});
  ListTable sums{"sum", "Sums", {"text", "total", "currency"}, {}};
  const Earnings& earnings = quoted.earnings;
  const std::vector<std::pair<const char*, Minor>> amounts{{"net", quote.net_minor},
                                                           {"tax", quote.tax_minor},
                                                           {"total", quote.total_minor},
                                                           {"deposit", quote.deposit_minor},
                                                           {"balance", quote.balance_minor},
                                                           {"cost of balloons", earnings.balloons_minor},
                                                           {"cost of supplies", earnings.supplies_minor},
                                                           {"cost of labour", earnings.labour_minor},
                                                           {"cost of the road", earnings.travel_minor},
                                                           {"margin", earnings.margin_minor},
                                                           {"earned per hour on site", earnings.per_hour_site_minor},
                                                           {"earned per hour in all", earnings.per_hour_all_minor},
                                                           {"rule of thumb", earnings.rule_of_thumb_minor}};
  for (const auto& [name, amount] : amounts) sums.rows.push_back({text_cell(name), money(amount), text_cell(currency)});
  ListTable pieces{
      "piece", "Pieces", {"piece", "price_from", "net", "balloons", "supplies", "labour", "work_s", "currency"}, {}};
  for (std::size_t i = 0; i < quoted.prices.size(); ++i) {
    const PieceCost& cost = quoted.costs.pieces[i];
    const PiecePrice& price = quoted.prices[i];
    pieces.rows.push_back({text_cell(price.piece), text_cell(key_of(price.source)),
                           price.source == PriceSource::none ? Cell{} : money(price.net_minor),
                           money(cost.balloons_minor), money(cost.supplies_minor), money(cost.labour_minor),
                           whole_cell(cost.work_s), text_cell(currency)});
  }
  return {lines, sums, pieces};
}

}  // namespace quadrille
