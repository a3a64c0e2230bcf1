// All that a build pushed as one string of bytes, so that two builds can be compared to the last bit.
#pragma once

#include <string>

#include "sdk/built.hpp"

namespace quadrille {

/// Equal exactly where all numbers have the same bits and all codes and texts are the same; -0 and 0 differ.
std::string bytes_of(const Piece& piece);

}  // namespace quadrille
