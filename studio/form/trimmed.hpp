// What is typed, without the blanks around it.
#pragma once

#include <string_view>

#include "sdk/quantity.hpp"

namespace quadrille {

/// `text` without blanks at its ends; it lives as long as `text`.
inline std::string_view trimmed_text(std::string_view text) {
  skip_blanks(text);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

}  // namespace quadrille
