// Thrown where a file cannot be read; studio/files turns it into a Result at its edge.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quadrille {

/// `line` counts from 1; 0 = the file as a whole. `place` is the element and may be empty. `text` is one sentence that
/// says what is wrong and what would be accepted.
struct Unreadable {
  int line = 0;
  std::string place, text;
};

/// `text` cut to a length that fits into a sentence.
inline std::string shown(std::string_view text) {
  constexpr std::size_t longest = 60;
  if (text.size() <= longest) return std::string(text);
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;  // not inside a character
  return std::string(text.substr(0, end)) + "…";
}

/// `FILE, line 12, <piece id="p1">: …` with what is known of it.
inline std::string sentence(std::string_view file, const Unreadable& what) {
  std::string said(file);
  if (what.line > 0) said += ", line " + std::to_string(what.line);
  if (!what.place.empty()) said += ", " + what.place;
  return said + ": " + what.text;
}

}  // namespace quadrille
