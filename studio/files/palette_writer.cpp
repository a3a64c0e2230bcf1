// write_palette and save_palette: the counterpart of palette_file.cpp.
#include <algorithm>
#include <cstdint>
#include <utility>

#include "studio/disk/safe_write.hpp"
#include "studio/files/element_writer.hpp"
#include "studio/files/file_header.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/xml/xml_text.hpp"

namespace quadrille {
namespace {

/// As a file gives it back: texts that XML can hold, packs in order, a name where there was none.
Palette as_read(Palette palette) {
  palette.key = clean_text(palette.key);
  palette.name = clean_text(palette.name);
  if (palette.name.empty()) palette.name = palette.key;
  for (Colour& colour : palette.colours) {
    colour.key = clean_text(colour.key);
    colour.name = clean_text(colour.name);
    if (colour.name.empty()) colour.name = colour.key;
    std::ranges::sort(colour.packs, {}, [](const Pack& pack) { return std::pair(pack.nominal_in, pack.count); });
  }
  return palette;
}

}  // namespace

std::string srgb_text(const Colour& colour) {
  constexpr char digits[] = "0123456789abcdef";
  std::string text = "#";
  for (const std::uint8_t part : {colour.red, colour.green, colour.blue}) {
    text += digits[part / 16];
    text += digits[part % 16];
  }
  return text;
}

std::string write_palette(const Palette& palette) {
  const Preserved nothing;  // palettes keep nothing
  const Kept kept(nothing);
  const Palette written = as_read(palette);
  ElementWriter root("palette", 0, kept);
  write_header(root, palette_kind);
  root.text("key", written.key);
  root.text("name", written.name);
  root.text("currency", written.currency);
  for (const Colour& colour : written.colours) {
    ElementWriter writer("colour", 1, kept, "colour");
    writer.text("key", colour.key);
    writer.text("name", colour.name);
    writer.text("srgb", srgb_text(colour));
    writer.text("finish", word_of(finish_words, colour.finish));
    for (const Pack& pack : colour.packs) {
      ElementWriter line("pack", 2, kept, "pack");
      line.number("nominal-in", pack.nominal_in);
      line.whole("count", pack.count);
      line.whole("price-minor", pack.price_minor);
      writer.child("pack", line.finish());
    }
    root.child("colour", writer.finish());
  }
  return whole_file(root, kept);
}

std::optional<std::string> save_palette(const std::filesystem::path& path, const Palette& palette) {
  const std::string bytes = write_palette(palette);
  const std::string refused = path.string() + " is not saved, since it would not open again as it is";
  const auto again = read_palette(bytes, "the new file");
  if (!again) return refused + ": " + again.error;
  if (*again != as_read(palette)) return refused + ".";
  return safe_write(path, bytes, Backup::keep_previous);
}

}  // namespace quadrille
