// Pieces on their way from one event to another, as bytes and as text. Knows no toolkit.
#pragma once

#include <string>

#include "sdk/result.hpp"
#include "studio/arrange/cut_out.hpp"

namespace quadrille {

/// The name of the bytes' format on a clipboard.
inline constexpr const char* carried_format = "application/x-quadrille-pieces";

/// The cut-out as an event file of its own.
std::string carried_bytes(const CutOut& cut, Units units);

/// Reads them back. Errors: what read_event refuses, bytes of a newer version, and an event without pieces.
Result<CutOut> carried_pieces(std::string bytes);

/// The names of the pieces, a line each.
std::string carried_text(const CutOut& cut);

}  // namespace quadrille
