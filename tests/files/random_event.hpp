// Random events that a file can hold, with hostile texts and numbers.
#pragma once

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

inline rc::Gen<std::string> any_text() {
  const auto piece =
      rc::gen::element<std::string>("a", "Z", " ", "  ", "\n", "\t", "\r", "\r\n", "<", ">", "&", "&amp;", "\"", "'",
                                    "é", "ß", "日", "🎈", "]]>", "<!--", "-->", "1,5", "=", "/", "\u00a0", "\u2028");
  return rc::gen::map(rc::gen::container<std::vector<std::string>>(piece), [](const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts) text += part;
    return text;
  });
}

/// Any number of [least, most]: ordinary ones, ones with all 53 bits, and the ends.
inline rc::Gen<double> any_number(double least, double most) {
  return rc::gen::map(rc::gen::pair(rc::gen::inRange(0, 6), rc::gen::arbitrary<std::uint64_t>()),
                      [=](const std::pair<int, std::uint64_t>& seed) {
                        const double share = static_cast<double>(seed.second >> 11) * 0x1p-53;
                        if (seed.first == 0) return least;
                        if (seed.first == 1) return most;
                        if (seed.first == 2) return std::clamp(std::round(share * 1000) / 100, least, most);
                        if (seed.first == 3) return std::clamp(share * 1e-300, least, most);
                        return least + share * (most - least);
                      });
}
inline double number(double least, double most) { return *any_number(least, most); }
inline double size() { return number(0, 100'000); }
inline double place() { return number(-100'000, 100'000); }
inline std::optional<double> maybe(double least, double most) {
  return *rc::gen::arbitrary<bool>() ? std::optional(number(least, most)) : std::nullopt;
}
template <class T>
T whole(T least, T most) {
  return *rc::gen::inRange<T>(least, most);
}

inline Value any_value() {
  const auto kind = static_cast<Kind>(whole(1, 14));
  if (is_text(kind)) return Value::of_text(kind, *any_text());
  if (kind == Kind::flag) return Value::of_number(kind, whole(0, 2));
  if (kind == Kind::slots) return Value::of_number(kind, whole(0, 27));
  if (is_whole(kind)) return Value::of_number(kind, whole(0, 1'000'000'001));
  if (is_number(kind))
    return Value::of_number(
        kind, kind == Kind::length || kind == Kind::angle || kind == Kind::ratio ? place() : number(0, 1000));
  std::vector<double> list;
  for (int row = whole(0, 4); row > 0; --row)
    for (int column = 0; column < 3; ++column) list.push_back(kind == Kind::path ? place() : number(0, 1000));
  return Value::of_list(kind, std::move(list));
}

inline LastBuilt any_last_built() {
  LastBuilt last{size(), size(), size(), whole<std::int64_t>(0, 1'000'000'001), {}};
  for (int row = whole(0, 3); row > 0; --row)
    last.counts.push_back(
        {number(0, 1000), size(), static_cast<std::uint32_t>(whole(0, 26)), whole<std::int64_t>(0, 1'000'000'001)});
  return last;
}

inline SecuringLine any_line() {
  SecuringLine line;
  line.tie = *any_text();
  line.anchor = static_cast<AnchorKind>(whole(0, 3));
  if (line.anchor == AnchorKind::structure) {
    line.structure = *any_text();
    line.height_m = size();
  } else {
    line.x_m = place();
    line.y_m = place();
  }
  if (line.anchor == AnchorKind::dead_weight) line.mass_kg = size();
  line.cord = *any_text();
  return line;
}

inline PlacedPiece any_piece(std::string id) {
  PlacedPiece piece;
  piece.id = std::move(id);
  piece.name = *any_text();
  piece.type = "t" + *any_text();
  piece.x_m = place();
  piece.y_m = place();
  for (int i = whole(0, 5); i > 0; --i) piece.values.insert_or_assign("k" + *any_text(), any_value());
  for (int i = whole(0, 4); i > 0; --i) piece.colours.push_back({*any_text(), *any_text()});
  for (int i = whole(0, 3); i > 0; --i) piece.lines.push_back(any_line());
  piece.locked = *rc::gen::arbitrary<bool>();
  piece.hidden = *rc::gen::arbitrary<bool>();
  if (*rc::gen::arbitrary<bool>()) piece.price_minor = whole<std::int64_t>(0, 999'999'999'999'999);
  piece.note = *any_text();
  if (*rc::gen::arbitrary<bool>()) piece.last_built = any_last_built();
  return piece;
}

inline Backdrop any_backdrop() {
  Backdrop backdrop;
  const bool png = *rc::gen::arbitrary<bool>();
  backdrop.picture = StoredPicture{(png ? "\x89PNG\r\n\x1A\n" : "\xFF\xD8\xFF") + *rc::gen::arbitrary<std::string>(),
                                   png ? PictureMedia::png : PictureMedia::jpeg, whole(1, 16'001), whole(1, 16'001)};
  backdrop.x_m = place();
  backdrop.z_m = place();
  backdrop.metres_per_pixel = number(1e-9, 1000);
  backdrop.fade = number(0, 1);
  backdrop.locked = *rc::gen::arbitrary<bool>();
  backdrop.hidden = *rc::gen::arbitrary<bool>();
  return backdrop;
}

inline Area any_area(const std::string& id) {
  Area area;
  area.id = id;
  area.name = *any_text();
  area.wall_width_m = maybe(0, 100'000);
  area.wall_height_m = maybe(0, 100'000);
  Site& site = area.site;
  site.surroundings = static_cast<Surroundings>(whole(0, 2));
  site.ground = static_cast<Ground>(whole(0, 9));
  site.gust_m_s = maybe(0, 150);
  site.inflating_celsius = maybe(-90, 70);
  site.event_celsius = maybe(-90, 70);
  site.altitude_m = maybe(-500, 9000);
  site.inflating_altitude_m = maybe(-500, 9000);
  site.outlet_m = maybe(0, 100'000);
  site.vehicle_m = maybe(0, 100'000);
  if (whole(0, 3) == 0) area.backdrop = any_backdrop();
  for (int i = whole(0, 3); i > 0; --i)
    area.structures.push_back({id + "s" + std::to_string(i),
                               *any_text(),
                               static_cast<StructureKind>(whole(0, 8)),
                               place(),
                               place(),
                               size(),
                               *any_text(),
                               {},
                               maybe(0, 100'000),
                               maybe(0, 100'000)});
  for (int i = whole(0, 3); i > 0; --i)
    area.walkways.push_back({id + "w" + std::to_string(i), *any_text(), place(), place(), size(), size(), {}});
  for (int i = whole(0, 3); i > 0; --i) area.pieces.emplace_back(any_piece(id + "\"p<&" + std::to_string(i)));
  return area;
}

/// With sums that are those of its lines, so that reading it back has nothing to say.
inline IssuedQuote any_issued_quote() {
  IssuedQuote issued;
  issued.number = *any_text();
  issued.date = *rc::gen::element<std::string>("", "2028-02-29");
  issued.valid_until = *rc::gen::element<std::string>("", "2028-03-30");
  Quote& quote = issued.quote;
  quote.currency = *rc::gen::element<std::string>("USD", "JPY", "KWD");
  quote.prices_with_tax = *rc::gen::arbitrary<bool>();
  for (int i = whole(0, 5); i > 0; --i)
    quote.lines.push_back({static_cast<QuoteLineKind>(whole(0, 6)), *any_text(), *any_text(),
                           whole<Minor>(-100'000'000'000'000, 100'000'000'000'000),
                           whole<PartsPerMillion>(0, 10'000'001), whole<Minor>(-50'000'000, 50'000'000)});
  for (const QuoteLine& line : quote.lines) {
    quote.net_minor += line.net_minor;
    quote.tax_minor += line.tax_minor;
  }
  quote.total_minor = quote.net_minor + quote.tax_minor;
  quote.deposit_minor = whole<Minor>(-1000, 1'000'000);
  quote.balance_minor = quote.total_minor - quote.deposit_minor;
  for (int i = whole(0, 4); i > 0; --i) issued.figures.insert_or_assign("k" + *any_text(), *any_text());
  return issued;
}

/// A day that is one, or none: the schema wants no other.
inline Event any_event() {
  Event event;
  event.title = *any_text();
  event.client = *any_text();
  event.venue = *any_text();
  const bool dated = *rc::gen::arbitrary<bool>();
  if (dated) event.date = "2028-02-29";
  if (dated) event.ready_by = "23:59";
  event.units = static_cast<Units>(whole(0, 2));
  event.currency = *rc::gen::element<std::string>("USD", "EUR", "JPY");
  event.terms.travel_m = maybe(0, 20'000'000);
  if (*rc::gen::arbitrary<bool>()) event.terms.crew = whole(1, 21);
  event.terms.discount = whole<PartsPerMillion>(0, 3) * 500'000;
  if (*rc::gen::arbitrary<bool>()) event.issued = any_issued_quote();
  for (int i = whole(0, 3); i > 0; --i) event.palettes.push_back("p" + std::to_string(i) + *any_text());
  for (int i = whole(0, 3); i > 0; --i) event.assumptions.insert_or_assign("k" + *any_text(), place());
  for (int i = whole(0, 3); i > 0; --i) event.ticked.insert("k" + *any_text());
  for (int i = whole(0, 3); i > 0; --i) event.areas.emplace_back(any_area("a" + std::to_string(i)));
  return event;
}

}  // namespace quadrille
