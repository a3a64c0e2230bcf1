// Numbers as they stand in fields: no more decimals than they need.
#pragma once

#include <string>

#include "sdk/number.hpp"

namespace quadrille {

/// With at most `decimals` decimals, without useless zeros, and never by powers of ten: "100000", "2.5". As print_fixed
/// otherwise.
inline std::string print_short(double number, int decimals) {
  std::string text = print_fixed(number, decimals);
  if (text.find('.') == std::string::npos) return text;
  while (text.ends_with('0')) text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

}  // namespace quadrille
