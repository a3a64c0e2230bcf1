// What is known of the job as a whole, as a form.
#pragma once

#include <string_view>

#include "sdk/result.hpp"
#include "studio/form/facts.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// Keys: title, client, venue; date, load-in-from, ready-by, strike-from; currency, travel, crew, discount.
FactFields event_fields(const Event& event);

/// The event with what was typed into the field of `key`, or the sentence of what is wrong with it.
Result<Event> with_event_field(const Event& event, std::string_view key, std::string_view text);

/// True where a piece has a colour of this palette.
bool uses_palette(const Event& event, std::string_view key);

}  // namespace quadrille
