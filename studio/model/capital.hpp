// Texts that begin a line.
#pragma once

#include <string>
#include <string_view>

namespace quadrille {

/// The text with its first letter, where that is one of a to z, as a capital: "Left leg" for "left leg".
inline std::string with_capital(std::string_view text) {
  std::string told(text);
  if (!told.empty() && told[0] >= 'a' && told[0] <= 'z') told[0] = static_cast<char>(told[0] - 'a' + 'A');
  return told;
}

}  // namespace quadrille
