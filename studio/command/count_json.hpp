// The lists of an event as JSON.
#pragma once

#include "studio/command/json.hpp"
#include "studio/command/reckon.hpp"

namespace quadrille {

/// What `count --json` prints.
Json json_of(const EventOrder& order, const PreparedEvent& prepared);

/// Which house the figures are of.
Json json_of(const LoadedHouse& house);

/// Null where the amount is not known.
inline Json json_of(const std::optional<Minor>& amount) { return amount ? Json(*amount) : Json(nullptr); }

}  // namespace quadrille
