#include "studio/command/quote_json.hpp"

#include "studio/command/count_json.hpp"
#include "studio/files/words.hpp"

namespace quadrille {
namespace {

Json json_of(const QuoteLine& line) {
  return {{"kind", word_of(quote_line_words, line.kind)},
          {"piece", line.piece},
          {"text", line.text},
          {"net_minor", line.net_minor},
          {"tax_ppm", line.tax},
          {"tax_minor", line.tax_minor},
          {"total_minor", line.total_minor()}};
}

void add(Json& json, const Quote& quote) {
  json["currency"] = quote.currency;
  json["prices_with_tax"] = quote.prices_with_tax;
  json["lines"] = Json::array();
  for (const QuoteLine& line : quote.lines) json["lines"].push_back(json_of(line));
  json["net_minor"] = quote.net_minor;
  json["tax_minor"] = quote.tax_minor;
  json["total_minor"] = quote.total_minor;
  json["deposit_minor"] = quote.deposit_minor;
  json["balance_minor"] = quote.balance_minor;
}

Json json_of(const Earnings& earnings) {
  return {{"balloons_minor", earnings.balloons_minor},
          {"supplies_minor", earnings.supplies_minor},
          {"labour_minor", earnings.labour_minor},
          {"travel_minor", earnings.travel_minor},
          {"cost_minor", earnings.cost_minor()},
          {"margin_minor", earnings.margin_minor},
          {"site_s", earnings.site_s},
          {"all_s", earnings.all_s},
          {"per_hour_site_minor", earnings.per_hour_site_minor},
          {"per_hour_all_minor", earnings.per_hour_all_minor},
          {"rule_of_thumb_minor", earnings.rule_of_thumb_minor}};
}

Json json_of_pieces(const QuotedEvent& quoted) {
  Json list = Json::array();
  for (std::size_t i = 0; i < quoted.prices.size(); ++i) {
    const PiecePrice& price = quoted.prices[i];
    const PieceCost& cost = quoted.costs.pieces[i];
    list.push_back({{"id", price.piece},
                    {"price_from", key_of(price.source)},
                    {"repertoire", price.repertoire},
                    {"net_minor", price.net_minor},
                    {"balloons_minor", cost.balloons_minor},
                    {"supplies_minor", cost.supplies_minor},
                    {"labour_minor", cost.labour_minor},
                    {"work_s", cost.work_s},
                    {"unknown", cost.unknown}});
  }
  return list;
}

Json json_of(const QuoteChanges& changes) {
  Json json{{"lines", Json::array()}, {"figures", Json::array()}, {"sums_differ", changes.sums_differ}};
  for (const LineChange& change : changes.lines)
    json["lines"].push_back({{"was", change.was ? json_of(*change.was) : Json(nullptr)},
                             {"is", change.is ? json_of(*change.is) : Json(nullptr)}});
  for (const FigureChange& change : changes.figures)
    json["figures"].push_back({{"key", change.key}, {"was", change.was}, {"is", change.is}});
  return json;
}

Json json_of(const IssuedQuote& issued, const std::optional<QuoteChanges>& changes, const std::string& as_of) {
  Json json{{"number", issued.number}, {"date", issued.date}, {"valid_until", issued.valid_until}};
  json["expired"] = as_of.empty() ? Json(nullptr) : Json(is_expired(issued, as_of));
  add(json, issued.quote);
  json["figures"] = issued.figures.empty() ? Json::object() : Json(issued.figures);
  json["changes"] = changes ? json_of(*changes) : Json(nullptr);
  return json;
}

}  // namespace

Json json_of(const QuotedEvent& quoted, const PreparedEvent& prepared, const std::optional<QuoteChanges>& changes,
             const std::string& as_of) {
  Json json = Json::object();
  add(json, quoted.quote);
  json["earnings"] = json_of(quoted.earnings);
  json["pieces"] = json_of_pieces(quoted);
  json["set_up_s"] = quoted.costs.set_up_s;
  json["strike_s"] = quoted.costs.strike_s;
  json["hardware_minor"] = quoted.costs.hardware_minor;
  json["unknown"] = quoted.costs.unknown;
  const auto& issued = prepared.opened.event.issued;
  json["issued"] = issued ? json_of(*issued, changes, as_of) : Json(nullptr);
  json["house"] = json_of(prepared.house);
  return json;
}

}  // namespace quadrille
