#include "studio/files/plain_key.hpp"

#include <array>

#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

constexpr std::size_t longest = 40;

/// The letters of Unicode's block Latin-1 Supplement from U+00C0 without their marks; the small ones, from U+00E0, are
/// the same. × and ÷ are no letters. Source: the Unicode Standard, code chart "C1 Controls and Latin-1 Supplement".
constexpr std::array<std::string_view, 32> latin_1{"a", "a", "a", "a", "a", "a", "ae", "c", "e",  "e", "e",
                                                   "e", "i", "i", "i", "i", "d", "n",  "o", "o",  "o", "o",
                                                   "o", "",  "o", "u", "u", "u", "u",  "y", "th", "ss"};

/// U+0100 to U+017F, a letter for each; j, l, n and o of the ligatures by their first. Source: the Unicode Standard,
/// code chart "Latin Extended-A".
constexpr std::string_view extended_a =
    "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkklllllllllln"
    "nnnnnnnnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
static_assert(extended_a.size() == 128);

std::string plain(char32_t c) {
  if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) return std::string(1, static_cast<char>(c));
  if (c >= 'A' && c <= 'Z') return std::string(1, static_cast<char>(c - 'A' + 'a'));
  if (c == 0xFF) return "y";
  if (c >= 0xC0 && c <= 0xFE) return std::string(latin_1[(c - 0xC0) % 32]);
  if (c >= 0x100 && c <= 0x17F) return std::string(1, extended_a[c - 0x100]);
  return {};
}

}  // namespace

std::string plain_key(std::string_view name) {
  std::string key;
  bool between = false;
  for (std::size_t at = 0; at < name.size();) {
    const CodePoint point = code_point_at(name, at);
    at += point.length == 0 ? 1 : point.length;
    const bool is_accent = point.value >= 0x300 && point.value <= 0x36F;      // apart from its letter
    const bool is_apostrophe = point.value == '\'' || point.value == 0x2019;  // "Robin's egg" is two words
    if (is_accent || is_apostrophe) continue;
    const std::string letters = point.length == 0 ? std::string() : plain(point.value);
    if (!letters.empty()) {
      if (between && !key.empty()) key += '-';
      if (key.size() + letters.size() > longest) break;
      key += letters;
    }
    between = letters.empty();
  }
  while (key.ends_with('-')) key.pop_back();
  return key;
}

}  // namespace quadrille
