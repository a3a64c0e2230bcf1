// Text that comes from a plugin: it may be NULL, endless, or not UTF-8.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace quadrille {

/// The text at `text`; nothing where it is NULL or longer than `most` bytes.
std::optional<std::string> read_text(const char* text, std::size_t most);

/// True where the whole of `text` is well-formed UTF-8 (RFC 3629: no overlong forms, no surrogates, up to U+10FFFF).
bool is_utf8(std::string_view text);

/// `text` with every byte that is not UTF-8 replaced by U+FFFD, and control characters other than a line break by
/// blanks.
std::string cleaned(std::string_view text);

}  // namespace quadrille
