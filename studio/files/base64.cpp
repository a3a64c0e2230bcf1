#include "studio/files/base64.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace quadrille {
namespace {

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
constexpr std::size_t bytes_per_line = 57;
constexpr std::uint8_t none = 64;

constexpr std::array<std::uint8_t, 256> values = [] {
  std::array<std::uint8_t, 256> table{};
  table.fill(none);
  for (std::size_t i = 0; i < alphabet.size(); ++i)
    table[static_cast<unsigned char>(alphabet[i])] = static_cast<std::uint8_t>(i);
  return table;
}();

/// One to three bytes as four characters.
std::string group_of(std::string_view bytes) {
  std::uint32_t bits = 0;
  for (std::size_t i = 0; i < 3; ++i) bits = bits << 8 | (i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0u);
  std::string group(4, '=');
  for (std::size_t i = 0; i <= bytes.size(); ++i) group[i] = alphabet[bits >> (18 - 6 * i) & 63];
  return group;
}

bool is_blank(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t'; }

}  // namespace

std::vector<std::string> base64_lines(std::string_view bytes) {
  std::vector<std::string> lines;
  while (!bytes.empty()) {
    std::string_view run = bytes.substr(0, bytes_per_line);
    bytes.remove_prefix(run.size());
    std::string line;
    for (; !run.empty(); run.remove_prefix(std::min<std::size_t>(3, run.size()))) line += group_of(run.substr(0, 3));
    lines.push_back(std::move(line));
  }
  return lines;
}

Result<std::string> parse_base64(std::string_view text) {
  using Bytes = Result<std::string>;
  std::string bytes;
  bytes.reserve(text.size() / 4 * 3);
  std::uint32_t bits = 0;
  int held = 0;  // bits that are not yet a byte
  std::size_t characters = 0, padding = 0;
  for (const char c : text) {
    if (is_blank(c)) continue;
    ++characters;
    if (c == '=') {
      ++padding;
      continue;
    }
    const std::uint8_t value = values[static_cast<unsigned char>(c)];
    if (value == none || padding > 0) return Bytes::bad("it holds a character that base64 does not have there");
    bits = (bits << 6 | value) & 0xFFFFu;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes += static_cast<char>(bits >> held & 0xFFu);
  }
  const bool spare_bits = (bits & ((1u << held) - 1u)) != 0;
  if (characters % 4 != 0 || padding > 2 || static_cast<std::size_t>(held) != padding * 2 || spare_bits)
    return Bytes::bad("it is cut off");
  return Bytes::good(std::move(bytes));
}

}  // namespace quadrille
