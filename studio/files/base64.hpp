// Bytes as text that stands in an XML file.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sdk/result.hpp"

namespace quadrille {

/// `bytes` in lines of 76 characters, the last one shorter; none where there are no bytes.
/// Source: RFC 4648, section 4; the length of a line is that of RFC 2045, section 6.8.
std::vector<std::string> base64_lines(std::string_view bytes);

/// The bytes that `text` stands for; blanks and line ends anywhere in it count for nothing. An error where it holds
/// another character, ends within a byte, or is padded otherwise than base64_lines does it.
Result<std::string> parse_base64(std::string_view text);

}  // namespace quadrille
