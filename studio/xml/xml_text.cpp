#include "studio/xml/xml_text.hpp"

#include <cstdint>

namespace quadrille {
namespace {

std::string hexadecimal(std::uint32_t number) {
  constexpr char digits[] = "0123456789ABCDEF";
  std::string text;
  do {
    text.insert(text.begin(), digits[number % 16]);
    number /= 16;
  } while (number > 0);
  return text.size() % 2 == 0 ? text : "0" + text;
}

bool is_plain(char c) { return static_cast<unsigned char>(c) >= 0x20 && static_cast<unsigned char>(c) < 0x80; }

}  // namespace

CodePoint code_point_at(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned first = byte(at);
  if (first < 0x80) return {first, 1};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return {};
  char32_t value = first & (0x7Fu >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0) != 0x80) return {};
    value = (value << 6) | (byte(at + i) & 0x3Fu);
  }
  constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = value >= 0xD800 && value <= 0xDFFF;
  if (value < least[length] || surrogate || value > 0x10FFFF) return {};
  return {value, length};
}

std::optional<BadByte> find_bad_byte(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    if (is_plain(bytes[at])) {
      ++at;
      continue;
    }
    const CodePoint c = code_point_at(bytes, at);
    const auto byte = static_cast<unsigned char>(bytes[at]);
    if (c.length == 0) return BadByte{at, "a byte that is not UTF-8 (0x" + hexadecimal(byte) + ")"};
    if (!may_stand_in_xml(c.value))
      return BadByte{at, (c.value < 0x20 ? "a control character (0x" : "a character that XML forbids (U+") +
                             hexadecimal(static_cast<std::uint32_t>(c.value)) + ")"};
    at += c.length;
  }
  return std::nullopt;
}

std::string clean_text(std::string_view text) {
  if (!find_bad_byte(text)) return std::string(text);
  std::string clean;
  for (std::size_t at = 0; at < text.size();) {
    const CodePoint c = code_point_at(text, at);
    if (c.length == 0) clean += "\xEF\xBF\xBD";
    if (c.length > 0 && may_stand_in_xml(c.value)) clean += text.substr(at, c.length);
    at += c.length == 0 ? 1 : c.length;
  }
  return clean;
}

std::string escaped(std::string_view text) {
  std::string written;
  written.reserve(text.size());
  for (const char c : text) {
    switch (c) {
      case '&':
        written += "&amp;";
        break;
      case '<':
        written += "&lt;";
        break;
      case '>':
        written += "&gt;";
        break;
      case '"':
        written += "&quot;";
        break;
      case '\t':
        written += "&#9;";
        break;
      case '\n':
        written += "&#10;";
        break;
      case '\r':
        written += "&#13;";
        break;
      default:
        written += c;
    }
  }
  return written;
}

std::string with_lf(std::string_view text) {
  std::string lf;
  lf.reserve(text.size());
  for (std::size_t at = 0; at < text.size(); ++at) {
    const bool carriage = text[at] == '\r';
    if (carriage && at + 1 < text.size() && text[at + 1] == '\n') continue;
    lf += carriage ? '\n' : text[at];
  }
  return lf;
}

}  // namespace quadrille
