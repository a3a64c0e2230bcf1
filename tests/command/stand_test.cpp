// `quadrille stand`: the gust each piece bears, for people and for programs.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "program.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

constexpr const char* lawn_event = R"(<?xml version="1.0" encoding="UTF-8"?>
<event xmlns="urn:quadrille:event:1" version="1.0" reader="1.0" units="feet" currency="USD">
  <area id="a1" name="Lawn">
    <site surroundings="outdoors" ground="grass" gust-m-s="4"/>
    <piece id="p1" name="Arch" type="arch" x-m="0" y-m="0">
      <set key="rod-diameter" length="0.010"/>
      <set key="ballast" mass="20"/>
      LINES
    </piece>
  </area>
</event>
)";

std::string event_with(const std::string& lines) {
  std::string text = lawn_event;
  return text.replace(text.find("LINES"), 5, lines);
}

Json stood(const Folder& folder, const std::string& lines, std::vector<std::string> more = {}) {
  put_file(folder / "lawn.quadrille", event_with(lines));
  std::vector<std::string> words{"stand", folder / "lawn.quadrille", "--json"};
  words.insert(words.end(), more.begin(), more.end());
  const Ran outcome = quadrille_in(folder, words);
  REQUIRE((outcome.exit == 0 || outcome.exit == 1 || outcome.exit == 3));
  return Json::parse(outcome.out);
}

TEST_CASE("stand --json has every key that scripts rely on, and the limit grows with crown lines") {
  const Folder folder;
  const Json bare = stood(folder, "");
  const Json tied = stood(folder, R"(<line tie="front-1" x-m="0" y-m="-1.9"/><line tie="back-1" x-m="0" y-m="1.9"/>)");
  for (const Json& json : {bare, tied}) {
    const Json& piece = json["pieces"].at(0);
    for (const char* key : {"id", "name", "gust_m_s", "limit_gust_m_s", "governing", "checks", "reactions", "lines",
                            "top_displacement_m", "converged", "ballast_needed_kg"})
      CHECK_MESSAGE(piece.contains(key), key);
    for (const char* key : {"code", "utilisation", "direction_deg", "value", "limit", "unit", "source"})
      CHECK_MESSAGE(piece["checks"].at(0).contains(key), key);
    CHECK(piece["reactions"].at(0)["force_n"].size() == 3);
    CHECK(json["caution"].get<std::string>().find("licensed practice") != std::string::npos);
  }
  CHECK(bare["pieces"][0]["limit_gust_m_s"].get<double>() * 2 < tied["pieces"][0]["limit_gust_m_s"].get<double>());
  CHECK(bare["pieces"][0]["advice"].size() > 0);
  CHECK(tied["pieces"][0]["lines"].size() == 2);
  CHECK(tied["pieces"][0]["without_line"].size() == 2);
}

TEST_CASE("a gust can be given in any unit of speed, and a wrong one is refused") {
  const Folder folder;
  CHECK(stood(folder, "", {"--gust", "24mph"})["pieces"][0]["gust_m_s"].get<double>() ==
        doctest::Approx(24 * 0.44704));  // one mile an hour, by definition
  const Ran wrong = quadrille_in(folder, {"stand", folder / "lawn.quadrille", "--gust", "windy"});
  CHECK(wrong.exit == 2);
  CHECK(wrong.err.find("--gust") != std::string::npos);
  const Ran nowhere = quadrille_in(folder, {"stand", folder / "lawn.quadrille", "--area", "Roof"});
  CHECK(nowhere.exit == 2);
  CHECK(nowhere.err.find("Roof") != std::string::npos);
}

TEST_CASE("the text says what fails first, the action levels and the caution, and every checklist line has a source") {
  const Folder folder;
  put_file(folder / "lawn.quadrille", event_with(R"(<line tie="side-1" x-m="-2" y-m="0"/>)"));
  const Ran text = quadrille_in(folder, {"stand", folder / "lawn.quadrille"});
  CHECK(text.exit == 1);  // it does not stand
  for (const char* words : {"first to fail", "watch it from", "take it down at", "planning aid", "[ ] "})
    CHECK_MESSAGE(text.out.find(words) != std::string::npos, words);
  CHECK(text.err.find("tied to the sides alone") != std::string::npos);
  std::set<std::string> keys;
  const Json json = stood(folder, "");
  for (const Json& line : json["checklist"]) {
    CHECK_FALSE(line["source"].get<std::string>().empty());
    CHECK_FALSE(line["reason"].get<std::string>().empty());
    CHECK(keys.insert(line["key"].get<std::string>()).second);
  }
  CHECK(keys.size() > 12);
}

TEST_CASE("a line that cannot run is left out and said, and a stake is not driven into concrete") {
  const Folder folder;
  put_file(folder / "lawn.quadrille", event_with(R"(<line tie="front-9" x-m="0" y-m="-2"/>)"));
  CHECK(quadrille_in(folder, {"stand", folder / "lawn.quadrille"}).err.find("no tie point \"front-9\"") !=
        std::string::npos);
  std::string hard = event_with(R"(<line tie="front-1" x-m="0" y-m="-2"/>)");
  hard.replace(hard.find("\"grass\""), 7, "\"concrete\"");
  put_file(folder / "lawn.quadrille", hard);
  CHECK(quadrille_in(folder, {"stand", folder / "lawn.quadrille"}).err.find("no stake can be driven") !=
        std::string::npos);
}

}  // namespace
}  // namespace quadrille
