// A quote, what it earns, and how it differs from one that was issued, as JSON.
#pragma once

#include <optional>
#include <string>

#include "studio/command/json.hpp"
#include "studio/command/prepare.hpp"
#include "studio/quote/changes.hpp"

namespace quadrille {

/// `changes` are those since the event's issued quote, nothing where there is none; `as_of` is a date or empty.
Json json_of(const QuotedEvent& quoted, const PreparedEvent& prepared, const std::optional<QuoteChanges>& changes,
             const std::string& as_of);

}  // namespace quadrille
