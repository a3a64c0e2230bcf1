// What a plugin can do wrong while it builds.
#pragma once

#include <string>

namespace quadrille {

enum class FaultKind {
  threw,       ///< an exception came out of build, or build said that it failed inside
  not_finite,  ///< pushed a number that is not finite
  too_large,   ///< pushed more than the studio takes
  broken       ///< pushed something that contradicts itself or the contract
};

struct Fault {
  FaultKind kind = FaultKind::broken;
  std::string sentence;
};

}  // namespace quadrille
