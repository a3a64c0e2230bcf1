#include "studio/files/quote_element.hpp"

#include <optional>
#include <utility>

#include "studio/files/accepted_currency.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/model/calendar.hpp"

namespace quadrille {
namespace {

/// Whether numbers have this sum; they are amounts of money, and there may be many of them.
class Sum {
 public:
  void add(Minor amount) {
    constexpr Minor most = 4'000'000'000'000'000'000;
    if (!is_beyond_) sum_ += amount;
    is_beyond_ = is_beyond_ || sum_ > most || sum_ < -most;
  }
  bool is(Minor amount) const { return !is_beyond_ && sum_ == amount; }
  std::string text() const { return is_beyond_ ? "more than can be reckoned with" : std::to_string(sum_); }

 private:
  Minor sum_ = 0;
  bool is_beyond_ = false;
};

void check_sum(ElementReader& reader, const Sum& sum, Minor written, const char* attribute, const std::string& of) {
  if (sum.is(written)) return;
  reader.report(Weight::warning, "quote-sums", reader.element(), attribute,
                std::string(attribute) + "=\"" + std::to_string(written) + "\" is not the sum of " + of +
                    ", which is " + sum.text() + "; it is kept as it is.",
                "Compare it with what the client was given, or issue the quote again.");
}

void check_sums(ElementReader& reader, const Quote& quote) {
  Sum net, tax, total, paid;
  for (const QuoteLine& line : quote.lines) {
    net.add(line.net_minor);
    tax.add(line.tax_minor);
  }
  total.add(quote.net_minor);
  total.add(quote.tax_minor);
  paid.add(quote.deposit_minor);
  paid.add(quote.balance_minor);
  check_sum(reader, net, quote.net_minor, "net-minor", "its charges without tax");
  check_sum(reader, tax, quote.tax_minor, "tax-minor", "its charges' tax");
  check_sum(reader, total, quote.total_minor, "total-minor", "net and tax");
  check_sum(reader, paid, quote.total_minor, "total-minor", "deposit and balance");
}

void check_dates(ElementReader& reader, const IssuedQuote& issued) {
  reader.check_form(is_date(issued.date), "date", issued.date, "a date such as 2027-06-19");
  reader.check_form(is_date(issued.valid_until), "valid-until", issued.valid_until, "a date such as 2027-06-19");
  if (is_date(issued.date) && is_date(issued.valid_until) && issued.valid_until < issued.date)
    reader.report(Weight::warning, "quote-dates", reader.element(), "valid-until",
                  "It is valid until " + issued.valid_until + ", which is before its date, " + issued.date + ".",
                  "Correct one of the dates, or issue the quote again.");
}

std::string nothing_known(const XmlNode&) { return {}; }

std::string read_charge(ElementReader& quote, const XmlNode& child, std::vector<QuoteLine>& lines) {
  const std::string address = "charge:" + std::to_string(lines.size() + 1);
  ElementReader reader(child, quote.reading(), quote.kept(), quote.inside(address));
  QuoteLine& line = lines.emplace_back();
  line.kind = reader.word("kind", quote_line_words, line.kind);
  line.piece = reader.text("piece");
  line.text = reader.text("text");
  line.net_minor = reader.required_whole("net-minor", amount_range);
  line.tax = reader.whole("tax-ppm", share_range).value_or(0);
  line.tax_minor = reader.whole("tax-minor", amount_range).value_or(0);
  reader.children(nothing_known);
  reader.finish();
  return address;
}

std::string read_figure(ElementReader& quote, const XmlNode& child, IssuedQuote& issued) {
  const std::string* key = child.attribute("key");
  if (key == nullptr || key->empty()) return quote.leave("It has no key;");
  const std::string address = "figure:" + *key;
  if (issued.figures.contains(*key)) return quote.leave("The figure stands twice;", address);
  ElementReader reader(child, quote.reading(), quote.kept(), quote.inside(address));
  reader.text("key");
  issued.figures.emplace(*key, reader.text("value"));
  reader.children(nothing_known);
  reader.finish();
  return address;
}

}  // namespace

IssuedQuote read_quote(const XmlNode& element, Reading& reading, std::string_view currency) {
  IssuedQuote issued;
  Quote& quote = issued.quote;
  ElementReader reader(element, reading, issued.preserved);
  issued.number = reader.text("number");
  issued.date = reader.text("date");
  issued.valid_until = reader.text("valid-until");
  check_dates(reader, issued);
  quote.currency = reader.text("currency");
  reader.check_form(is_currency(quote.currency), "currency", quote.currency, accepted_currency(quote.currency));
  if (quote.currency.empty()) quote.currency = currency;
  quote.prices_with_tax = reader.word("prices-with-tax", yes_or_no, false);
  quote.net_minor = reader.required_whole("net-minor", amount_range);
  quote.tax_minor = reader.required_whole("tax-minor", amount_range);
  quote.total_minor = reader.required_whole("total-minor", amount_range);
  quote.deposit_minor = reader.required_whole("deposit-minor", amount_range);
  quote.balance_minor = reader.required_whole("balance-minor", amount_range);
  reader.children([&](const XmlNode& child) -> std::string {
    if (child.name == "charge") return read_charge(reader, child, quote.lines);
    if (child.name == "figure") return read_figure(reader, child, issued);
    return {};
  });
  check_sums(reader, quote);
  reader.finish();
  return issued;
}

std::string quote_lines(const IssuedQuote& issued, int depth) {
  const Kept kept(issued.preserved);
  const Quote& quote = issued.quote;
  ElementWriter writer("quote", depth, kept);
  writer.text_unless_empty("number", issued.number);
  writer.text_unless_empty("date", issued.date);
  writer.text_unless_empty("valid-until", issued.valid_until);
  writer.text("currency", quote.currency);
  writer.yes("prices-with-tax", quote.prices_with_tax);
  writer.whole("net-minor", quote.net_minor);
  writer.whole("tax-minor", quote.tax_minor);
  writer.whole("total-minor", quote.total_minor);
  writer.whole("deposit-minor", quote.deposit_minor);
  writer.whole("balance-minor", quote.balance_minor);
  writer.give_up([&](std::string_view what) {  // else it would be read in the place of what was taken away
    return what.starts_with("figure:") && !issued.figures.contains(what.substr(7));
  });
  for (std::size_t i = 0; i < quote.lines.size(); ++i) {
    const QuoteLine& line = quote.lines[i];
    const std::string address = "charge:" + std::to_string(i + 1);
    ElementWriter charge("charge", depth + 1, kept, address);
    charge.word("kind", quote_line_words, line.kind, QuoteLine{}.kind);
    charge.text_unless_empty("piece", line.piece);
    charge.text_unless_empty("text", line.text);
    charge.whole("net-minor", line.net_minor);
    charge.whole("tax-ppm", line.tax);
    charge.whole("tax-minor", line.tax_minor);
    writer.child(address, charge.finish());
  }
  for (const auto& [key, value] : issued.figures) {
    const std::string address = "figure:" + key;
    ElementWriter figure("figure", depth + 1, kept, address);
    figure.text("key", key);
    figure.text("value", value);
    writer.child(address, figure.finish());
  }
  return writer.finish();
}

}  // namespace quadrille
