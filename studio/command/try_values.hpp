// The "key=value" words of the command line as parameter values.
#pragma once

#include <span>
#include <string>

#include "sdk/result.hpp"
#include "sdk/value.hpp"
#include "studio/host/piece_type.hpp"

namespace quadrille {

/// The values under the keys that the type's table has now. Refused with a sentence: a word without '=', a key that the
/// type does not have, a key given twice, a value that is not of the parameter's kind. Ranges are left to the build.
Result<ValueMap> values_of(const PieceType& type, std::span<const std::string> words);

}  // namespace quadrille
