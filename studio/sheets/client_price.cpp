#include "studio/sheets/client_price.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>

#include "studio/build_sheet/build_rows.hpp"
#include "studio/model/calendar.hpp"
#include "studio/model/money.hpp"
#include "studio/paint/text.hpp"
#include "studio/paper/page_frame.hpp"
#include "studio/paper/table_rows.hpp"

namespace quadrille {
namespace {

constexpr double share_room = 14;

/// As it was told, but for how long the work takes: an amount and its hours would tell a rate.
std::string text_of(const QuoteLine& line) {
  if (line.kind == QuoteLineKind::set_up) return "Set-up";
  if (line.kind == QuoteLineKind::strike) return "Taking down";
  return line.text;
}

/// The columns of one quote.
struct PriceTable {
  const Quote& quote;
  double width, price_room;
  bool taxed;

  std::string money(Minor amount) const { return print_figure(amount, quote.currency); }
  Row row(const std::string& text, const std::string& share, const std::string& price, Face face) const {
    std::vector<RowCell> cells{{text, 0, Across::left, face}};
    if (taxed) cells.push_back({share, share_room, Across::right, face});
    cells.push_back({price, price_room, Across::right, face});
    return cells_row(cells, width);
  }
  std::vector<RowCell> captions() const {
    std::vector<RowCell> cells{{quote.prices_with_tax && taxed ? "Prices with tax" : "", 0}};
    if (taxed) cells.push_back({"Tax", share_room, Across::right});
    cells.push_back({minor_digits(quote.currency) ? quote.currency : "Price", price_room, Across::right});
    return cells;
  }
};

PriceTable table_of(const Quote& quote, double width) {
  double widest = text_width(quote.currency, table_bold);
  for (const Minor amount : {quote.net_minor, quote.tax_minor, quote.total_minor, quote.deposit_minor})
    widest = std::max(widest, text_width(print_figure(amount, quote.currency), table_bold));
  for (const QuoteLine& line : quote.lines)
    widest = std::max(widest, text_width(print_figure(line.total_minor(), quote.currency), table_bold));
  const bool taxed = std::ranges::any_of(quote.lines, [](const QuoteLine& line) { return line.tax_minor != 0; });
  return {quote, width, std::min(widest + 1, width * 0.45), taxed};
}

void add_sums(Block& block, const PriceTable& table) {
  const Quote& quote = table.quote;
  const auto add = [&](const char* text, Minor amount, Face face) {
    block.rows.push_back(table.row(text, "", table.money(amount), face));
    block.rows.back().with_before = true;
  };
  block.rows.push_back(rule(Part::key, 0.4, 1.4));
  block.rows.back().with_before = true;
  if (table.taxed && !quote.prices_with_tax) add("Without tax", quote.net_minor, Face::regular);
  if (table.taxed && !quote.prices_with_tax) add("Tax", quote.tax_minor, Face::regular);
  add("Total", quote.total_minor, Face::bold);
  if (table.taxed && quote.prices_with_tax) add("of which tax", quote.tax_minor, Face::regular);
  if (quote.deposit_minor == 0) return;
  add("Deposit", quote.deposit_minor, Face::bold);
  add("Balance", quote.balance_minor, Face::regular);
}

bool is_shown(const Event& event, std::string_view id) {
  const PlacedPiece* piece = find_piece(event, id);
  return piece != nullptr && !piece->hidden;
}

/// Names of what is drawn and not quoted, joined by semicolons, since names have commas.
std::string drawn_alone(const Event& event, const Quote& quote) {
  std::string names;
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces) {
      if (piece->hidden || std::ranges::find(quote.lines, piece->id, &QuoteLine::piece) != quote.lines.end()) continue;
      names += (names.empty() ? "" : "; ") + (piece->name.empty() ? std::string("Unnamed piece") : piece->name);
    }
  return names;
}

std::string quoted_alone(const Event& event, const Quote& quote) {
  std::string names;
  for (const QuoteLine& line : quote.lines)
    if (line.kind == QuoteLineKind::piece && !is_shown(event, line.piece))
      names += (names.empty() ? "" : "; ") + (line.text.empty() ? std::string("Unnamed piece") : line.text);
  return names;
}

}  // namespace

std::vector<Block> price_blocks(const Event& event, double width) {
  if (!event.issued) return {};
  const IssuedQuote& issued = *event.issued;
  const PriceTable table = table_of(issued.quote, width);
  const std::string heading = "Quote" + (issued.number.empty() ? "" : " " + issued.number) +
                              (issued.date.empty() ? "" : " of " + print_date(issued.date));
  Block block = table_block(heading, table.captions(), width);
  for (const QuoteLine& line : issued.quote.lines)
    block.rows.push_back(table.row(text_of(line), print_share(line.tax),
                                   table.money(issued.quote.prices_with_tax ? line.total_minor() : line.net_minor),
                                   Face::regular));
  add_sums(block, table);
  if (!issued.valid_until.empty())
    block.rows.push_back(text_row("This quote holds until " + print_date(issued.valid_until) + ".", width));
  if (const std::string names = drawn_alone(event, issued.quote); !names.empty())
    block.rows.push_back(text_row("Drawn, but not in this quote: " + names + ".", width));
  if (const std::string names = quoted_alone(event, issued.quote); !names.empty())
    block.rows.push_back(text_row("In this quote, but no longer drawn: " + names + ".", width));
  return {std::move(block)};
}

}  // namespace quadrille
