// Pattern text as people type it, taken apart into words: one word of slot letters per cluster.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sdk/quantity.hpp"
#include "sdk/quoted.hpp"
#include "sdk/result.hpp"

namespace quadrille {

/// The words of `text` in capitals. Letters are A to F in either case; blanks, commas, '/' and line ends stand between
/// words. Fails with a sentence that names the row where there is anything else.
inline Result<std::vector<std::string>> row_words(std::string_view text) {
  std::vector<std::string> words;
  const auto is_gap = [](char c) { return is_blank(c) || c == ',' || c == '/'; };
  while (!text.empty()) {
    std::size_t length = 0;
    while (length < text.size() && !is_gap(text[length])) ++length;
    std::string word(text.substr(0, length));
    text.remove_prefix(length == 0 ? 1 : length);
    if (length == 0) continue;
    for (char& c : word) {
      const char slot = to_lower(c);
      if (slot < 'a' || slot > 'f')
        return Result<std::vector<std::string>>::bad("Row " + std::to_string(words.size() + 1) + " (" + quoted(word) +
                                                     ") is no row: it takes the slot letters A to F, with blanks "
                                                     "between rows, as in AABB ABAB.");
      c = static_cast<char>(slot - 'a' + 'A');
    }
    words.push_back(std::move(word));
  }
  return Result<std::vector<std::string>>::good(std::move(words));
}

}  // namespace quadrille
