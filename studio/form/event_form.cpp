#include "studio/form/event_form.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "studio/model/calendar.hpp"
#include "studio/model/event_edits.hpp"
#include "studio/model/money.hpp"

namespace quadrille {
namespace {

constexpr FactRule travel{"travel", "Way to the venue",
                          "Terms",  FactKind::way,
                          0,        5'000'000,
                          true,     "By road from your house, one way. Empty: not known, and no travel is charged."};
constexpr FactRule crew{"crew", "People", "Terms", FactKind::count,
                        1,      20,       true,    "Who work on the job. Empty: as many as in your house."};
constexpr FactRule discount{
    "discount", "Discount", "Terms", FactKind::share,
    0,          whole_ppm,  true,    "Off the net of every line of the quote, such as 5 or 7.5. Empty: none."};

/// A text of the event's facts.
struct FactText {
  const char *key, *label, *group;
  FactKind kind;
  std::string EventFacts::*text;
  const char* help;
};

constexpr FactText fact_texts[] = {
    {"title", "Title", "The job", FactKind::text, &EventFacts::title, "At the head of every sheet."},
    {"client", "Client", "The job", FactKind::text, &EventFacts::client, "Whom the quote goes to."},
    {"venue", "Venue", "The job", FactKind::text, &EventFacts::venue, "Its name and address."},
    {"date", "Date", "The day", FactKind::date, &EventFacts::date, "The day of the event, such as 19 June 2027."},
    {"load-in-from", "Load-in from", "The day", FactKind::time, &EventFacts::load_in_from,
     "The earliest that you are let in, such as 7:30. The day plan begins no sooner."},
    {"ready-by", "Ready by", "The day", FactKind::time, &EventFacts::ready_by,
     "When all must stand, such as 11:00. The day plan counts back from it."},
    {"strike-from", "Strike from", "The day", FactKind::time, &EventFacts::strike_from,
     "When you may begin to take it down, such as 10 pm."},
};

/// As it stands in the field.
std::string shown_text(const FactText& fact, const EventFacts& facts) {
  return fact.kind == FactKind::date ? print_date(facts.*fact.text) : facts.*fact.text;
}

Result<std::string> read_text(const FactText& fact, std::string_view text, Units units) {
  if (fact.kind == FactKind::date) return read_day(fact.label, text, units);
  if (fact.kind == FactKind::time) return read_clock(fact.label, text);
  return Result<std::string>::good(std::string(trimmed_text(text)));
}

Result<Event> with_currency_typed(const Event& event, std::string_view text) {
  std::string code(trimmed_text(text));
  for (char& c : code)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  if (!minor_digits(code))
    return Result<Event>::bad("Currency cannot be " + quoted(text) +
                              ": a code of ISO 4217 such as USD, EUR or GBP would be accepted.");
  return Result<Event>::good(with_currency(event, std::move(code)));
}

}  // namespace

bool uses_palette(const Event& event, std::string_view key) {
  for (const auto& area : event.areas)
    for (const auto& piece : area->pieces)
      if (std::ranges::find(piece->colours, key, &ColourReference::palette) != piece->colours.end()) return true;
  return false;
}

FactFields event_fields(const Event& event) {
  const EventFacts facts = facts_of(event);
  FactFields fields;
  for (const FactText& fact : fact_texts)
    fields.push_back({fact.key, fact.label, fact.group, fact.kind, "", fact.help, "", shown_text(fact, facts)});
  fields.push_back({"currency", "Currency", "Terms", FactKind::text, "",
                    "A code of three letters. Amounts that were typed stay as they are: nothing is converted.", "",
                    event.currency});
  fields.push_back(amount_field(travel, event.terms.travel_m, event.units));
  std::optional<double> people;
  if (event.terms.crew) people = static_cast<double>(*event.terms.crew);
  fields.push_back(amount_field(crew, people, event.units));
  std::optional<double> off;
  if (event.terms.discount != 0) off = static_cast<double>(event.terms.discount);
  fields.push_back(amount_field(discount, off, event.units));
  return fields;
}

Result<Event> with_event_field(const Event& event, std::string_view key, std::string_view text) {
  for (const FactText& fact : fact_texts) {
    if (key != fact.key) continue;
    EventFacts facts = facts_of(event);
    if (trimmed_text(text) == shown_text(fact, facts)) return Result<Event>::good(event);
    const auto read = read_text(fact, text, event.units);
    if (!read) return Result<Event>::bad(read.error);
    facts.*fact.text = *read;
    return Result<Event>::good(with_facts(event, std::move(facts)));
  }
  if (key == "currency") return with_currency_typed(event, text);
  JobTerms terms = event.terms;
  const auto number = [&](const FactRule& rule, std::optional<double> now, auto set) {
    const auto read = read_amount(rule, text, now, event.units);
    if (!read) return Result<Event>::bad(read.error);
    set(*read);
    return Result<Event>::good(with_terms(event, terms));
  };
  if (key == travel.key)
    return number(travel, terms.travel_m, [&](std::optional<double> way) { terms.travel_m = way; });
  if (key == crew.key) {
    const std::optional<double> now = terms.crew ? std::optional(static_cast<double>(*terms.crew)) : std::nullopt;
    return number(crew, now, [&](std::optional<double> people) {
      terms.crew = people ? std::optional(static_cast<std::int64_t>(std::lround(*people))) : std::nullopt;
    });
  }
  if (key == discount.key) {
    const auto ppm = static_cast<double>(terms.discount);
    return number(discount, terms.discount == 0 ? std::nullopt : std::optional(ppm), [&](std::optional<double> off) {
      terms.discount = off ? static_cast<PartsPerMillion>(std::llround(*off)) : 0;
    });
  }
  return Result<Event>::good(event);
}

}  // namespace quadrille
