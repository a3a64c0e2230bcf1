// Finds whole words and numbers in what was printed: "66" is not in "166".
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace quadrille {

/// True where `word` stands in `text` with no letter, digit or decimal point against it.
inline bool has_word(std::string_view text, std::string_view word) {
  const auto joins = [&](std::size_t at) {
    const auto c = static_cast<unsigned char>(text[at]);
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c >= 0x80 ||
           (c == '.' && at + 1 < text.size() && text[at + 1] >= '0' && text[at + 1] <= '9');
  };
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !joins(at - 1)) && (end == text.size() || !joins(end))) return true;
  }
  return false;
}

/// True where one line of `text` has all of `words`.
inline bool has_line_with(const std::string& text, const std::vector<std::string>& words) {
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    const std::string_view line = std::string_view(text).substr(from, end - from);
    if (std::ranges::all_of(words, [&](const std::string& word) { return has_word(line, word); })) return true;
    from = end + 1;
  }
  return false;
}

}  // namespace quadrille
