// Palettes of graphics programs. The grammar is that of the GIMP developer documentation, "GIMP Palette Format Version 2
// (.gpl)"; the palettes here are invented.
#include "studio/files/gpl_file.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "scratch.hpp"
#include "studio/files/palette_file.hpp"
#include "studio/files/plain_key.hpp"

using namespace quadrille;

namespace {

ImportedPalette imported(const std::string& bytes) {
  auto palette = read_gpl(bytes, "f.gpl", "stem");
  REQUIRE(palette.error == "");
  return std::move(*palette.value);
}
std::vector<std::string> keys_of(const Palette& palette) {
  std::vector<std::string> keys;
  for (const Colour& colour : palette.colours) keys.push_back(colour.key);
  return keys;
}
bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }
using Texts = std::vector<std::string>;

const std::string orchard =
    "GIMP Palette\n"
    "Name: Orchard & Lane\n"
    "Columns: 3\n"
    "#\n"
    "# From a walk in May.\n"
    "200  64  47\tPoppy\n"
    "  0 128 255 Deep   Inlet\n"
    "\n"
    "255 255 255\n"
    "63\t127\t79\tPoppy\n";

}  // namespace

TEST_CASE("a palette of a graphics program is read: colours, names, keys; matte, without packs") {
  const ImportedPalette file = imported(orchard);
  CHECK(file.findings.empty());
  CHECK(file.palette == Palette{"orchard-lane",
                                "Orchard & Lane",
                                "USD",
                                {{"poppy", "Poppy", 200, 64, 47, Finish::matte, {}},
                                 {"deep-inlet", "Deep   Inlet", 0, 128, 255, Finish::matte, {}},
                                 {"colour-ffffff", "#ffffff", 255, 255, 255, Finish::matte, {}},
                                 {"poppy-2", "Poppy", 63, 127, 79, Finish::matte, {}}}});
}

TEST_CASE("the old form without a name is called after its file; both kinds of line end, and a byte order mark, do") {
  const ImportedPalette old = imported("GIMP Palette\n# no name\n1 2 3 Ink\n");
  CHECK(old.palette.name == "stem");
  CHECK(old.palette.key == "stem");
  std::string crlf = "\xEF\xBB\xBF";
  for (const char c : orchard) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
  CHECK(imported(crlf).palette == imported(orchard).palette);
  std::string cr = orchard;
  for (char& c : cr) c = c == '\n' ? '\r' : c;
  CHECK(imported(cr).palette == imported(orchard).palette);
}

TEST_CASE("bytes that are no UTF-8 are taken as Latin-1") {
  // Source: ISO/IEC 8859-1: 0xE9 is é, 0xFC is ü; UTF-8 (RFC 3629) writes them C3 A9 and C3 BC.
  const ImportedPalette latin = imported("GIMP Palette\nName: Caf\xE9\n1 2 3 Gr\xFCn\n");
  CHECK(latin.palette.name == "Caf\xC3\xA9");
  CHECK(latin.palette.key == "cafe");
  CHECK(latin.palette.colours[0].name == "Gr\xC3\xBCn");
  CHECK(imported("GIMP Palette\nName: Caf\xC3\xA9\n1 2 3 Gr\xC3\xBCn\n").palette == latin.palette);
}

TEST_CASE("a line that is no colour is left out, with its number and what is accepted; the others are read") {
  const Texts bad{"256 0 0 Too red", "-1 0 0 Below", "1 2 Ink",   "1.5 2 3 Ink",
                  "a b c",           "0x10 0 0",     "1,2,3 Ink", "1 2 99999999999999999999",
                  "Columns: three"};
  for (const std::string& line : bad) {
    CAPTURE(line);
    const ImportedPalette file = imported("GIMP Palette\nName: n\n" + line + "\n1 2 3 Ink\n");
    CHECK(keys_of(file.palette) == Texts{"ink"});
    REQUIRE(file.findings.size() == 1);
    CHECK(file.findings[0].weight == Weight::warning);
    CHECK(holds(file.findings[0].text, "f.gpl, line 3: "));
    CHECK(holds(file.findings[0].text, line.substr(0, 5)));
    CHECK(holds(file.findings[0].remedy, "0 to 255"));
  }
  std::string many = "GIMP Palette\n1 2 3\n";
  for (int i = 0; i < 500; ++i) many += "nonsense\n";
  const Findings told = imported(many).findings;
  CHECK(told.size() == 21);
  CHECK(holds(told.back().text, "480 more lines"));
}

TEST_CASE("what is no such palette is refused with what it should begin with, or that it has no colour") {
  for (const std::string& bytes : {std::string(), std::string("1 2 3 Ink\n"), std::string("JASC-PAL\n0100\n"),
                                   std::string("\nGIMP Palette\n"), std::string("GIMP Palettes\n1 2 3\n")})
    CHECK(holds(read_gpl(bytes, "f.gpl", "f").error, "f.gpl, line 1: This is no palette"));
  CHECK(holds(read_gpl("GIMP Palette\nName: n\n# none\n", "f.gpl", "f").error, "f.gpl: It holds no colour"));
  CHECK(holds(read_gpl(orchard, "f.gpl", "f", "XXX").error, "ISO 4217"));
  CHECK(holds(open_gpl("/nowhere/f.gpl").error, "no such file"));
}

TEST_CASE("no bytes make the import fall over, and whatever it reads can be saved") {
  const ScratchFolder folder;
  for (std::size_t at = 0; at < orchard.size(); ++at)
    for (const char c : {'\0', '\n', '"', '<', '\xFF', '\xC3', '9', '-'}) {
      std::string changed = orchard;
      changed[at] = c;
      const auto palette = read_gpl(changed, "f", "f");
      if (palette) CHECK(save_palette(folder / "p.xml", palette->palette).value_or("") == "");
    }
  for (std::size_t length = 0; length <= orchard.size(); ++length) {
    const auto palette = read_gpl(orchard.substr(0, length), "f", "f");
    CHECK(static_cast<bool>(palette) == (length >= orchard.find("200") + 10));  // from "200  64  4" on
  }
}

TEST_CASE("keys are plain and unique, however the names clash") {
  // "b-2" is there when the second "b" looks for a key.
  const ImportedPalette clash = imported("GIMP Palette\n1 2 3 b\n1 2 3 B-2\n1 2 3 B\n1 2 3 b!\n1 2 3 b 2\n");
  CHECK(keys_of(clash.palette) == Texts{"b", "b-2", "b-3", "b-4", "b-2-2"});
  std::string many = "GIMP Palette\n";
  for (int i = 0; i < 10'050; ++i) many += "1 2 3 Same\n";
  const ImportedPalette full = imported(many);
  CHECK(full.palette.colours.size() == most_imported_colours);
  CHECK(full.palette.colours.back().key == "same-10000");
  REQUIRE(full.findings.size() == 1);
  CHECK(holds(full.findings[0].text, "line 10002"));
}

TEST_CASE("a key is made of a name's plain letters") {
  // Letters without their marks: the first of their canonical decomposition in the Unicode Character Database, where it
  // has one. "Å" is U+00C5, or "A" and U+030A.
  const struct {
    const char *name, *key;
  } table[] = {{"Deep Green", "deep-green"},
               {"  --Rosé / Gold 2--", "rose-gold-2"},
               {"Robin’s egg", "robins-egg"},
               {"Ångström", "angstrom"},
               {"A\u030Angstro\u0308m", "angstrom"},
               {"Weiß & Œuf", "weiss-ouf"},
               {"Žluťoučký kůň", "zlutoucky-kun"},
               {"日本", ""},
               {"", ""},
               {"ÆØÞÿ×÷", "aeothy"}};
  for (const auto& row : table) {
    CAPTURE(row.name);
    CHECK(plain_key(row.name) == row.key);
  }
  CHECK(plain_key(std::string(100, 'a')).size() == 40);
  CHECK(plain_key("a\xFF\xC3z") == "a-z");
}

TEST_CASE("an imported palette is saved as one of ours and read back the same") {
  const ScratchFolder folder;
  put(folder / "Autumn walk.gpl", "GIMP Palette\n90 60 30 Oak \"bark\" <old>\n");
  const auto file = open_gpl(folder / "Autumn walk.gpl", "EUR");
  REQUIRE(file.error == "");
  CHECK(file->palette.key == "autumn-walk");
  CHECK(save_palette(folder / "autumn.xml", file->palette) == std::nullopt);
  const LoadedPalettes loaded = load_palettes({folder.path()});
  CHECK(loaded.findings.empty());
  REQUIRE(loaded.palettes.size() == 1);
  CHECK(loaded.palettes[0] == file->palette);
  CHECK(loaded.palettes[0].currency == "EUR");
}
