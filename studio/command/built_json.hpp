// A built piece as JSON: everything a script may want to measure, in SI units and the piece's frame.
#pragma once

#include <string>
#include <string_view>

#include "studio/command/json.hpp"
#include "studio/model/built_event.hpp"

namespace quadrille {

/// "ok", "bad_parameter", "infeasible" or "internal".
std::string_view name_of(Status status);

/// All of the piece. Of one that was not built there is what its type pushed before it refused, which may be nothing:
/// "status" says how far the rest is to be believed.
Json json_of(const std::string& type, const BuiltPiece& built);

}  // namespace quadrille
