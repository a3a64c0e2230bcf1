// A built piece as JSON: everything a script may want to measure, in SI units and the piece's frame.
#pragma once

#include <string>
#include <string_view>

#include "studio/command/json.hpp"
#include "studio/model/built_event.hpp"

namespace quadrille {

/// "ok", "bad_parameter", "infeasible" or "internal".
std::string_view name_of(Status status);

/// All of a piece that was built; of one that was not, type, status and messages only.
Json json_of(const std::string& type, const BuiltPiece& built);

}  // namespace quadrille
