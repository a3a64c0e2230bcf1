// Which text an XML file can hold, and how it is written there.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille {

/// One character of UTF-8 text; length 0 where there is none.
struct CodePoint {
  char32_t value = 0;
  std::size_t length = 0;
};

/// The character that begins at byte `at`; overlong forms, surrogates and numbers beyond U+10FFFF are none.
/// Source: RFC 3629, section 4.
CodePoint code_point_at(std::string_view text, std::size_t at);

/// Source: XML 1.0 (fifth edition), production [2] Char.
constexpr bool may_stand_in_xml(char32_t c) {
  return c == 0x9 || c == 0xA || c == 0xD || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) ||
         (c >= 0x10000 && c <= 0x10FFFF);
}

struct BadByte {
  std::size_t offset = 0;  ///< from 0
  std::string what;        ///< e.g. "a control character (0x01)"
};

/// The first byte that cannot stand in an XML file, if any.
std::optional<BadByte> find_bad_byte(std::string_view bytes);

/// `text` as an XML file can hold it: forbidden characters are dropped, bytes that are not UTF-8 become U+FFFD.
std::string clean_text(std::string_view text);

/// `text` as it stands between double quotes; line ends and tabs become references, so that they come back as they are.
std::string escaped(std::string_view text);

/// `text` with every line end as LF.
std::string with_lf(std::string_view text);

}  // namespace quadrille
