// Somebody else's text inside one of our sentences: quoted, cut short, on one line, always valid UTF-8.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quadrille {

/// Bytes of the well-formed UTF-8 character that `text` begins with; 0 where it begins with none.
inline std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(0);
  if (text.empty()) return 0;
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return follows(1) ? 2 : 0;
  const bool overlong = (first == 0xE0 && byte(1) < 0xA0) || (first == 0xF0 && byte(1) < 0x90);
  const bool no_character = (first == 0xED && byte(1) >= 0xA0) || (first == 0xF4 && byte(1) >= 0x90);
  if (overlong || no_character) return 0;
  if (first >= 0xE0 && first < 0xF0) return follows(1) && follows(2) ? 3 : 0;
  if (first >= 0xF0 && first < 0xF5) return follows(1) && follows(2) && follows(3) ? 4 : 0;
  return 0;
}

/// `text` between single quotes, for use in a sentence. Control characters become blanks, bytes that are no UTF-8
/// become '?', and after about 40 bytes "…" stands for the rest.
/// A function object, because a function would lose to std::quoted by argument-dependent lookup on a std::string.
inline constexpr auto quoted = [](std::string_view text) {
  std::string shown = "'";
  while (!text.empty() && shown.size() <= 40) {
    const std::size_t length = utf8_length(text);
    const auto first = static_cast<unsigned char>(text.front());
    if (length == 0) {
      shown += '?';
    } else if (first < 0x20 || first == 0x7F) {
      shown += ' ';
    } else {
      shown += text.substr(0, length);
    }
    text.remove_prefix(length == 0 ? 1 : length);
  }
  if (!text.empty()) shown += "…";
  return shown + "'";
};

}  // namespace quadrille
