#include "studio/model/event_edits.hpp"

#include <algorithm>
#include <utility>

namespace quadrille {

EventFacts facts_of(const Event& event) {
  return {event.title, event.client, event.venue, event.date, event.load_in_from, event.ready_by, event.strike_from};
}

Event with_facts(Event event, EventFacts facts) {
  event.title = std::move(facts.title);
  event.client = std::move(facts.client);
  event.venue = std::move(facts.venue);
  event.date = std::move(facts.date);
  event.load_in_from = std::move(facts.load_in_from);
  event.ready_by = std::move(facts.ready_by);
  event.strike_from = std::move(facts.strike_from);
  return event;
}

Event with_terms(Event event, const JobTerms& terms) {
  event.terms = terms;
  return event;
}

Event with_units(Event event, Units units) {
  event.units = units;
  return event;
}

Event with_currency(Event event, std::string currency) {
  event.currency = std::move(currency);
  return event;
}

Event with_palette(Event event, std::string_view key) {
  if (std::ranges::find(event.palettes, key) == event.palettes.end()) event.palettes.emplace_back(key);
  return event;
}

Event without_palette(Event event, std::string_view key) {
  std::erase(event.palettes, key);
  return event;
}

Event with_assumption(Event event, std::string_view key, double value) {
  event.assumptions.insert_or_assign(std::string(key), value);
  return event;
}

Event without_assumption(Event event, std::string_view key) {
  if (const auto found = event.assumptions.find(key); found != event.assumptions.end()) event.assumptions.erase(found);
  return event;
}

}  // namespace quadrille
