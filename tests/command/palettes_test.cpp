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

}  // namespace
}  // namespace quadrille
