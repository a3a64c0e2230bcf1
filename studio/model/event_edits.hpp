// Edits of what the event says about the job as a whole.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "studio/model/event.hpp"

namespace quadrille {

/// What stands at the head of every sheet; meanings and forms as in Event.
struct EventFacts {
  std::string title, client, venue, date, load_in_from, ready_by, strike_from;
  bool operator==(const EventFacts&) const = default;
};

EventFacts facts_of(const Event& event);
Event with_facts(Event event, EventFacts facts);
Event with_terms(Event event, const JobTerms& terms);
Event with_units(Event event, Units units);
/// Amounts that were typed stay as they are: what they are worth in another currency nobody knows.
Event with_currency(Event event, std::string currency);
/// Adds a palette to those that the event draws from; one that it has already changes nothing.
Event with_palette(Event event, std::string_view key);
Event without_palette(Event event, std::string_view key);
/// Sets one of the standing check's assumptions at other than the standard.
Event with_assumption(Event event, std::string_view key, double value);
/// Back to the standard.
Event without_assumption(Event event, std::string_view key);

}  // namespace quadrille
