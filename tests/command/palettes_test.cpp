// `quadrille palettes`: the colours one can choose from, as the palette files have them.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "has_word.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

TEST_CASE("palettes --json has every colour of the file with finish, sRGB and packs") {
  const Folder folder;
  put_scene(folder);
  const Ran outcome = quadrille_in(folder, {"palettes", "--json"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.err.empty());
  const Json json = Json::parse(outcome.out);
  const Json* garden = nullptr;  // the program's own palettes are listed beside it
  for (const Json& palette : json["palettes"])
    if (palette["key"] == "garden") garden = &palette;
  REQUIRE(garden);
  // As garden_palette in scene.hpp has them.
  CHECK((*garden)["name"] == "Garden");
  CHECK((*garden)["currency"] == "USD");
  REQUIRE((*garden)["colours"].size() == 2);
  const Json poppy = (*garden)["colours"][1];
  CHECK(poppy["key"] == "poppy");
  CHECK(poppy["name"] == "=Poppy, \"red\"");
  CHECK(poppy["finish"] == "pearl");
  CHECK(poppy["srgb"] == "#c8402f");
  CHECK(poppy["packs"] == Json::parse(R"([{"nominal_in": 5.0, "count": 50, "price_minor": 390},
                                          {"nominal_in": 11.0, "count": 100, "price_minor": 990}])"));
}

TEST_CASE("palettes prints a line for every colour") {
  const Folder folder;
  put_scene(folder);
  const Ran outcome = quadrille_in(folder, {"palettes"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.out.find("garden: Garden (2 colours, prices in USD)\n") != std::string::npos);
  CHECK(has_line_with(outcome.out, {"fern", "Fern", "matte", "#3f7f4f", "5, 11 in"}));
}

TEST_CASE("the palettes beside an event are listed with it, and only with it") {
  const Folder folder;
  put_file(folder.path() / "job" / "supper.quadrille", event_text());
  put_file(folder.path() / "job" / "palettes" / "garden.xml", garden_palette);
  const std::string event = folder / "job/supper.quadrille";
  CHECK(quadrille_in(folder, {"palettes", event}).out.find("garden: Garden") != std::string::npos);
  CHECK(quadrille_in(folder, {"palettes"}).out.find("garden") == std::string::npos);
  const Ran missing = quadrille_in(folder, {"palettes", folder / "none.quadrille"});
  CHECK(missing.exit == 3);
  CHECK(missing.out.empty());
  CHECK(missing.err.find("none.quadrille: there is no such file") != std::string::npos);
}

TEST_CASE("a palette that cannot be read is told, and the others are listed") {
  const Folder folder;
  put_scene(folder);
  put_file(folder.path() / "palettes" / "broken.xml", "<palette");
  const Ran outcome = quadrille_in(folder, {"palettes"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.err.find("broken.xml") != std::string::npos);
  CHECK(outcome.out.find("garden: Garden") != std::string::npos);
}

// Whoever mistyped a colour was told six keys of thirty, and no way to see the others.
TEST_CASE("a colour that its palette does not have: the sentence names the nearest, and this list") {
  const Folder folder;
  std::string event = event_text();
  event.replace(event.find("key=\"fern\""), 10, "key=\"frn\"");
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder, event)});
  CHECK(outcome.exit == 3);
  CHECK(has_line_with(outcome.err, {"frn", "garden", "Did you mean \"fern\"?", "'quadrille palettes'"}));
}

TEST_CASE("a graphics program's palette is made one of ours, which events then find beside them") {
  const Folder folder;
  // As the GIMP developer documentation describes the format; the colours are invented.
  put_file(folder.path() / "walk.gpl",
           "GIMP Palette\nName: May walk\nColumns: 2\n#\n200 64 47\tPoppy\n300 0 0 Sun\n63 127 79 Fern\n");
  const std::string out = folder / "job/palettes/walk.xml";
  std::filesystem::create_directories(folder.path() / "job" / "palettes");
  const Ran made =
      quadrille_in(folder, {"palettes", "--import", folder / "walk.gpl", "--out", out, "--currency", "EUR"});
  CHECK(made.exit == 0);
  CHECK(has_line_with(made.out, {"poppy", "Poppy", "matte", "#c8402f"}));
  CHECK(has_line_with(made.err, {"walk.gpl,", "line", "6:"}));
  put_file(folder.path() / "job" / "supper.quadrille", event_text());
  const Json json = Json::parse(quadrille_in(folder, {"palettes", folder / "job/supper.quadrille", "--json"}).out);
  REQUIRE(json["palettes"][0]["key"] == "may-walk");
  CHECK(json["palettes"][0]["currency"] == "EUR");
  CHECK(json["palettes"][0]["colours"].size() == 2);
}

TEST_CASE("an import that cannot be says why, and writes nothing") {
  const Folder folder;
  put_file(folder.path() / "walk.gpl", "GIMP Palette\n1 2 3 Ink\n");
  put_file(folder.path() / "photo.gpl", "no palette");
  put_file(folder.path() / "garden.xml", garden_palette);
  const std::string walk = folder / "walk.gpl", out = folder / "out.xml";
  const struct {
    std::vector<std::string> arguments;
    int exit;
    const char* named;
  } table[] = {
      {{"--import", walk}, 2, "go together"},
      {{"--out", out}, 2, "go together"},
      {{"--currency", "EUR"}, 2, "--import and --out"},
      {{"--import", walk, "--out", out, "--json"}, 2, "leave out --json"},
      {{"--import", walk, "--out", folder / "out.gpl"}, 2, "end in .xml"},
      {{"--import", walk, "--out", folder / "garden.xml"}, 2, "holds a palette"},
      {{"--import", walk, "--out", out, "--currency", "dollars"}, 3, "ISO 4217"},
      {{"--import", folder / "photo.gpl", "--out", out}, 3, "GIMP Palette"},
      {{"--import", folder / "none.gpl", "--out", out}, 3, "no such file"},
      {{"--import", walk, "--out", folder / "nowhere/out.xml"}, 4, "nowhere"},
  };
  for (const auto& row : table) {
    std::vector<std::string> arguments{"palettes"};
    arguments.insert(arguments.end(), row.arguments.begin(), row.arguments.end());
    CAPTURE(row.named);
    const Ran outcome = quadrille_in(folder, arguments);
    CAPTURE(outcome.err);
    CHECK(outcome.exit == row.exit);
    CHECK(outcome.err.find(row.named) != std::string::npos);
    CHECK(outcome.out.empty());
    CHECK_FALSE(std::filesystem::exists(out));
  }
  CHECK(bytes_of(folder / "garden.xml") == garden_palette);
}

}  // namespace
}  // namespace quadrille
