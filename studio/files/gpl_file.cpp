#include "studio/files/gpl_file.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "sdk/number.hpp"
#include "studio/disk/file_bytes.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/files/plain_key.hpp"
#include "studio/model/money.hpp"
#include "studio/xml/unreadable.hpp"
#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

constexpr std::string_view blanks = " \t";

bool is_utf8(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t length = code_point_at(bytes, at).length;
    if (length == 0) return false;
    at += length;
  }
  return true;
}

/// Every byte is a character of its own, with the same number. Source: ISO/IEC 8859-1.
std::string from_latin_1(std::string_view bytes) {
  std::string text;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) {
      text += c;
      continue;
    }
    text += static_cast<char>(0xC0 | (byte >> 6));
    text += static_cast<char>(0x80 | (byte & 0x3F));
  }
  return text;
}

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end);
    if (!text.empty()) text.remove_prefix(text.starts_with("\r\n") ? 2 : 1);
  }
  return lines;
}

std::string_view trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(blanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

/// The word that `text` begins with, taken off it together with the blanks around.
std::string_view take_word(std::string_view& text) {
  text = trimmed(text);
  const std::size_t end = std::min(text.find_first_of(blanks), text.size());
  const std::string_view word = text.substr(0, end);
  text.remove_prefix(end);
  return word;
}

struct NamedColour {
  std::array<std::uint8_t, 3> rgb{};
  std::string_view name;
};

std::optional<NamedColour> colour_of(std::string_view line) {
  NamedColour colour;
  for (std::uint8_t& part : colour.rgb) {
    const auto number = parse_whole(take_word(line));
    if (!number || *number < 0 || *number > 255) return std::nullopt;
    part = static_cast<std::uint8_t>(*number);
  }
  colour.name = trimmed(line);
  return colour;
}

/// Gives each key once.
class Keys {
 public:
  /// `key`, or the first of key-2, key-3… that is free.
  std::string unique(const std::string& key) {
    if (given_.insert(key).second) return key;
    int& number = last_.try_emplace(key, 1).first->second;
    std::string next;
    do next = key + "-" + std::to_string(++number);
    while (!given_.insert(next).second);
    return next;
  }

 private:
  std::set<std::string> given_;
  std::map<std::string, int> last_;
};

class GplReader {
 public:
  GplReader(std::string_view name, ImportedPalette& imported) : name_(name), imported_(imported) {}

  void read_line(int line, std::string_view text) {
    if (trimmed(text).empty() || text.starts_with('#') || read_head(line, text)) return;
    const auto colour = colour_of(text);
    if (!colour)
      tell(line, "\"" + shown(trimmed(text)) + "\" is no colour and is left out.",
           "Write three whole numbers from 0 to 255 and a name, such as \"200 64 47 Poppy\".");
    else if (imported_.palette.colours.size() < most_imported_colours)
      add(*colour);
    else if (!std::exchange(is_full_, true))
      tell(line,
           "From here on colours are left out: there are more than " + std::to_string(most_imported_colours) + ".",
           "Split the file.");
  }

  void say_untold() {
    if (untold_ > 0)
      imported_.findings.push_back({Weight::warning,
                                    "palette-line",
                                    {},
                                    {},
                                    {},
                                    std::string(name_) + ": " + std::to_string(untold_) + " more lines are left out.",
                                    "Mend the first ones and import the file again."});
  }

 private:
  /// True for the lines "Name:" and "Columns:", which stand before the colours.
  bool read_head(int line, std::string_view text) {
    if (!imported_.palette.colours.empty()) return false;
    if (text.starts_with("Name:")) {
      imported_.palette.name = clean_text(trimmed(text.substr(5)));
      return true;
    }
    if (!text.starts_with("Columns:")) return false;
    const auto columns = parse_whole(trimmed(text.substr(8)));
    if (!columns || *columns < 0 || *columns > 255)
      tell(line, "\"" + shown(trimmed(text)) + "\" names no number of columns; nothing hangs on it here.",
           "A whole number from 0 to 255 is meant.");
    return true;
  }

  void add(const NamedColour& named) {
    Colour colour;
    colour.red = named.rgb[0];
    colour.green = named.rgb[1];
    colour.blue = named.rgb[2];
    const std::string srgb = srgb_text(colour), key = plain_key(named.name);
    colour.name = named.name.empty() ? srgb : clean_text(named.name);
    colour.key = keys_.unique(key.empty() ? "colour-" + srgb.substr(1) : key);
    imported_.palette.colours.push_back(std::move(colour));
  }

  void tell(int line, const std::string& text, std::string remedy) {
    constexpr std::size_t most_told = 20;
    if (imported_.findings.size() >= most_told) {
      ++untold_;
      return;
    }
    imported_.findings.push_back({Weight::warning,
                                  "palette-line",
                                  {},
                                  {},
                                  {},
                                  std::string(name_) + ", line " + std::to_string(line) + ": " + text,
                                  std::move(remedy)});
  }

  std::string_view name_;
  ImportedPalette& imported_;
  Keys keys_;
  std::size_t untold_ = 0;
  bool is_full_ = false;
};

Result<ImportedPalette> refused(std::string_view name, int line, std::string text) {
  return Result<ImportedPalette>::bad(sentence(name, {line, {}, std::move(text)}));
}

}  // namespace

Result<ImportedPalette> read_gpl(std::string_view bytes, std::string_view name, std::string_view stem,
                                 std::string_view currency) {
  if (!minor_digits(currency))
    return refused(name, 0, "\"" + shown(currency) + "\" is no currency; accepted is a code of ISO 4217 such as USD.");
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
  const std::string text = is_utf8(bytes) ? std::string(bytes) : from_latin_1(bytes);
  const auto lines = lines_of(text);
  if (lines.empty() || trimmed(lines.front()) != "GIMP Palette")
    return refused(name, 1, "This is no palette in the .gpl format, whose first line is \"GIMP Palette\".");
  ImportedPalette imported;
  GplReader reader(name, imported);
  for (std::size_t i = 1; i < lines.size(); ++i) reader.read_line(static_cast<int>(i + 1), lines[i]);
  reader.say_untold();
  Palette& palette = imported.palette;
  if (palette.colours.empty())
    return refused(name, 0,
                   "It holds no colour; a colour is a line of three whole numbers from 0 to 255 and a name, such as "
                   "\"200 64 47 Poppy\".");
  if (palette.name.empty()) palette.name = clean_text(stem);
  palette.key = plain_key(palette.name);
  if (palette.key.empty()) palette.key = plain_key(stem);
  if (palette.key.empty()) palette.key = "imported";
  if (palette.name.empty()) palette.name = palette.key;
  palette.currency = currency;
  return Result<ImportedPalette>::good(std::move(imported));
}

Result<ImportedPalette> open_gpl(const std::filesystem::path& path, std::string_view currency) {
  const auto bytes = read_bytes(path);
  if (!bytes) return Result<ImportedPalette>::bad(bytes.error);
  return read_gpl(*bytes, path.string(), path.stem().string(), currency);
}

}  // namespace quadrille
