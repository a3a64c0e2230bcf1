// Palettes: ours are whole, strangers' are read or refused.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "scratch.hpp"
#include "studio/files/palette_file.hpp"
#include "tests/places.hpp"

using namespace quadrille;

namespace {

std::string palette_with(const std::string& inside) {
  return "<palette xmlns=\"urn:quadrille:palette:1\" version=\"1.0\" reader=\"1.0\" key=\"mine\" name=\"Mine\" "
         "currency=\"EUR\">\n" +
         inside + "\n</palette>\n";
}
const std::filesystem::path ours = source_place("palettes");

}  // namespace

TEST_CASE("our palettes have 24 colours and more, in four finishes, each to be bought in the trade's sizes") {
  const LoadedPalettes loaded = load_palettes({ours});
  CHECK(loaded.findings.empty());
  REQUIRE(loaded.palettes.size() >= 2);
  for (const Palette& palette : loaded.palettes) {
    CAPTURE(palette.key);
    CHECK(palette.colours.size() >= 24);
    std::set<Finish> finishes;
    std::set<std::string> names;
    for (const Colour& colour : palette.colours) {
      CAPTURE(colour.key);
      finishes.insert(colour.finish);
      CHECK(names.insert(colour.name).second);
      for (const double size : {5, 11, 16, 36})  // common practice, no source
        CHECK(std::ranges::count(colour.packs, size, &Pack::nominal_in) == 1);
      for (const Pack& pack : colour.packs) CHECK((pack.count >= 1 && pack.price_minor > 0));
    }
    CHECK(finishes.size() == 4);
  }
  CHECK(find_colour(loaded.palettes, {"house", "ivory"}) != nullptr);
  CHECK(find_colour(loaded.palettes, {"house", "deep-green"}) != nullptr);
}

TEST_CASE("a colour in capital digits, as graphics programs write it, was refused") {
  const auto palette = read_palette(palette_with("<colour key=\"a\" srgb=\"#D0217F\"/>"), "f");
  REQUIRE(palette.error == "");
  CHECK(palette->colours[0].red == 0xD0);
  CHECK(palette->colours[0].green == 0x21);
  CHECK(palette->colours[0].blue == 0x7F);
}

TEST_CASE("the palettes are found from the folder of the executable, as in an installed program") {
  const auto folders = standard_palette_folders(build_place("bin/quadrille"), {});
  CHECK(load_palettes(folders).palettes.size() >= 2);
}

TEST_CASE("a palette is read for what it says; a colour's own pack wins over the list it names") {
  const auto palette =
      read_palette(palette_with("<packs key=\"l\"><pack nominal-in=\"11\" count=\"100\" price-minor=\"1500\"/>"
                                "<pack nominal-in=\"5\" count=\"50\" price-minor=\"600\"/></packs>\n"
                                "<colour key=\"mud\" name=\"Mud\" srgb=\"#0a80ff\" finish=\"pearl\" packs=\"l\">"
                                "<pack nominal-in=\"11\" count=\"25\" price-minor=\"700\"/></colour>"),
                   "f");
  REQUIRE(palette.error == "");
  CHECK(palette->key == "mine");
  CHECK(palette->currency == "EUR");
  REQUIRE(palette->colours.size() == 1);
  CHECK(palette->colours[0] == Colour{"mud", "Mud", 10, 128, 255, Finish::pearl, {{5, 50, 600}, {11, 25, 700}}});
}

TEST_CASE("a palette that cannot be meant is refused with its place") {
  const struct {
    std::string bytes;
    std::vector<std::string> named;
  } table[] = {
      {palette_with("<colour key=\"a\" srgb=\"red\"/>"), {"line 2", "<colour key=\"a\">", "#rrggbb"}},
      {palette_with("<colour key=\"a\" srgb=\"#12345G\"/>"), {"line 2", "#rrggbb"}},
      {palette_with("<colour key=\"a\"/>"), {"line 2", "srgb", "missing"}},
      {palette_with("<colour srgb=\"#000000\"/>"), {"line 2", "key", "missing"}},
      {palette_with("<colour key=\"a\" srgb=\"#000000\"/>\n<colour key=\"a\" srgb=\"#000000\"/>"), {"line 3", "twice"}},
      {palette_with("<colour key=\"a\" srgb=\"#000000\" packs=\"none\"/>"), {"line 2", "none"}},
      {palette_with(
           "<colour key=\"a\" srgb=\"#000000\"><pack nominal-in=\"11\" count=\"0\" price-minor=\"1\"/></colour>"),
       {"line 2", "count=\"0\""}},
      {palette_with(
           "<colour key=\"a\" srgb=\"#000000\"><pack nominal-in=\"11\" count=\"9\" price-minor=\"14.95\"/></colour>"),
       {"price-minor", "whole"}},
      // Passed over by the takeoff without a word, once.
      {palette_with("<colour key=\"a\" srgb=\"#000000\">"
                    "<pack nominal-in=\"11\" count=\"9\" price-minor=\"1000000000001\"/></colour>"),
       {"price-minor", "to 1000000000000"}},
      {"<event xmlns=\"urn:quadrille:event:1\"/>", {"not a palette file"}},
  };
  for (const auto& row : table) {
    CAPTURE(row.bytes);
    const auto palette = read_palette(row.bytes, "p.xml");
    CAPTURE(palette.error);
    CHECK(palette.error.starts_with("p.xml"));
    for (const std::string& part : row.named) CHECK(palette.error.find(part) != std::string::npos);
  }
  Findings findings;
  CHECK(read_palette(palette_with("<colour key=\"a\" srgb=\"#000000\" finsh=\"pearl\"/>"), "p.xml", &findings));
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].text.find("finsh") != std::string::npos);
}

TEST_CASE("the first palette of a key wins; what cannot be read is told and harms no other") {
  const ScratchFolder folder;
  std::filesystem::create_directory(folder / "one");
  std::filesystem::create_directory(folder / "two");
  put(folder / "one/a.xml", palette_with("<colour key=\"a\" srgb=\"#000000\"/>"));
  put(folder / "one/b.xml", "rubbish");
  put(folder / "one/c.txt", "not looked at");
  put(folder / "two/a.xml", palette_with("<colour key=\"z\" srgb=\"#ffffff\"/>"));
  const LoadedPalettes loaded = load_palettes({folder / "none", folder / "one", folder / "two", folder / "one"});
  REQUIRE(loaded.palettes.size() == 1);
  CHECK(loaded.palettes[0].colours[0].key == "a");
  REQUIRE(loaded.findings.size() == 2);
  CHECK(loaded.findings[0].code == "palette-unreadable");
  CHECK(loaded.findings[0].text.find("b.xml") != std::string::npos);
  CHECK(loaded.findings[1].code == "palette-repeated");
}

TEST_CASE("one size may be sold in several packs; a colour's own packs of a size stand for all of the list's") {
  const std::string list =
      "<packs key=\"l\"><pack nominal-in=\"11\" count=\"100\" price-minor=\"1500\"/>"
      "<pack nominal-in=\"11\" count=\"25\" price-minor=\"450\"/>"
      "<pack nominal-in=\"5\" count=\"50\" price-minor=\"600\"/></packs>";
  const auto palette = read_palette(
      palette_with(list + "<colour key=\"a\" srgb=\"#000000\" packs=\"l\"/>"
                          "<colour key=\"b\" srgb=\"#000000\" packs=\"l\"><pack nominal-in=\"11\" count=\"10\" "
                          "price-minor=\"200\"/></colour>"),
      "f");
  REQUIRE(palette.error == "");
  CHECK(palette->colours[0].packs == std::vector<Pack>{{5, 50, 600}, {11, 25, 450}, {11, 100, 1500}});
  CHECK(palette->colours[1].packs == std::vector<Pack>{{5, 50, 600}, {11, 10, 200}});
  const auto twice = read_palette(palette_with("<colour key=\"a\" srgb=\"#000000\">"
                                               "<pack nominal-in=\"11\" count=\"9\" price-minor=\"1\"/>"
                                               "<pack nominal-in=\"11.0\" count=\"9\" price-minor=\"2\"/></colour>"),
                                  "f");
  CHECK(twice.error.find("two packs of 9") != std::string::npos);
}

TEST_CASE("a palette is written so that it reads back the same; what could not be read is not saved") {
  for (const Palette& palette : load_palettes({ours}).palettes) {
    const auto again = read_palette(write_palette(palette), "f");
    REQUIRE(again.error == "");
    CHECK(*again == palette);
  }
  const ScratchFolder folder;
  const auto file = folder / "p.xml";
  put(file, "before");
  const auto refused = [&](const Palette& palette, const std::string& named) {
    const auto sentence = save_palette(file, palette);
    CHECK(sentence.value_or("").find(named) != std::string::npos);
    CHECK(contents(file) == "before");
  };
  refused({"", "n", "USD", {{"a", "A", 0, 0, 0, Finish::matte, {}}}}, "key is missing");
  refused({"k", "n", "dollars", {}}, "currency=\"dollars\"");
  refused({"k", "n", "USD", {{"a", "A", 0, 0, 0, Finish::matte, {}}, {"a", "B", 0, 0, 0, Finish::matte, {}}}}, "twice");
  refused({"k", "n", "USD", {{"a", "A", 0, 0, 0, Finish::matte, {{11, 0, 100}}}}}, "count=\"0\"");
  CHECK(save_palette(file, {"k", "n", "USD", {{"a", "A", 0, 0, 0, Finish::pearl, {{11, 5, 100}}}}}) == std::nullopt);
  CHECK(contents(folder / "p.xml~") == "before");
}
