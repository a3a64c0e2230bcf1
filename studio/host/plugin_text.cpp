#include "studio/host/plugin_text.hpp"

#include <cstdint>
#include <cstring>

#include "sdk/quoted.hpp"

namespace quadrille {
std::optional<std::string> read_text(const char* text, std::size_t most) {
  if (text == nullptr) return std::nullopt;
  const std::size_t length = ::strnlen(text, most + 1);
  if (length > most) return std::nullopt;
  return std::string(text, length);
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

std::string cleaned(std::string_view text) {
  std::string clean;
  clean.reserve(text.size());
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const auto first = static_cast<std::uint8_t>(text.front());
    if (length == 0)
      clean += "\xEF\xBF\xBD";
    else if ((first < 0x20 && first != '\n') || first == 0x7F)
      clean += ' ';
    else
      clean += text.substr(0, length);
    text.remove_prefix(length == 0 ? 1 : length);
  }
  return clean;
}

}  // namespace quadrille
