// `quadrille stand`: the gust each piece bears, for people and for programs.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "program.hpp"
#include "scene.hpp"
#include "tests/sanitized.hpp"

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

// Each run of the command searches for lines, which takes minutes under sanitizers: there the case above stands for all,
// and tests/standing for the search.
TEST_SUITE_BEGIN("stand in words" * doctest::skip(sanitized));

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

TEST_CASE("a gust without a unit was taken for miles an hour in an event in feet: what it is taken for is said") {
  const Folder folder;
  put_file(folder / "lawn.quadrille", event_with(""));
  CHECK(quadrille_in(folder, {"stand", folder / "lawn.quadrille", "--gust", "18"}).err.find("metres per second") !=
        std::string::npos);
  CHECK(quadrille_in(folder, {"stand", folder / "lawn.quadrille", "--gust", "18mph"}).err.find("metres per second") ==
        std::string::npos);
}

TEST_CASE(
    "no wind blows indoors, whatever gust is asked about; outdoors without a forecast nobody can say: a problem") {
  const Folder folder;
  std::string inside = event_with("");
  inside.replace(inside.find("\"outdoors\" ground=\"grass\" gust-m-s=\"4\""), 38, "\"indoors\" ground=\"carpet\"");
  put_file(folder / "hall.quadrille", inside);
  const auto said = [&](const char* name, std::vector<std::string> more) {
    std::vector<std::string> words{"stand", folder / name, "--json"};
    words.insert(words.end(), more.begin(), more.end());
    return quadrille_in(folder, words);
  };
  const Json calm = Json::parse(said("hall.quadrille", {}).out),
             blown = Json::parse(said("hall.quadrille", {"--gust", "20mph"}).out);
  CHECK(blown["pieces"][0]["gust_m_s"].get<double>() == 0);
  CHECK(blown["pieces"][0]["verdict"] == calm["pieces"][0]["verdict"]);
  std::string unknown = event_with("");
  unknown.replace(unknown.find(" gust-m-s=\"4\""), 13, "");
  put_file(folder / "open.quadrille", unknown);
  const Ran open = said("open.quadrille", {});
  CHECK(open.exit == 1);
  CHECK(Json::parse(open.out)["pieces"][0]["verdict"] == "unknown");
  CHECK(open.err.find("No gust is forecast") != std::string::npos);
}

TEST_CASE("what holds of several pieces alike was told once for each: it is told once, with their names") {
  const Folder folder;
  std::string event = event_with("");
  const std::size_t from = event.find("    <piece"), to = event.find("  </area>");
  std::string again = event.substr(from, to - from);
  again.replace(again.find("id=\"p1\" name=\"Arch\""), 19, "id=\"p2\" name=\"Arch 2\"");
  event.replace(event.find("name=\"Arch\""), 11, "name=\"Arch 1\"");
  event.insert(event.find("  </area>"), again);
  put_file(folder / "two.quadrille", event);
  const Ran both = quadrille_in(folder, {"stand", folder / "two.quadrille"});
  CHECK(both.exit == 1);
  const std::size_t said = both.err.find("problem: Lawn, Arches 1 and 2: It is not to stand");
  REQUIRE(said != std::string::npos);
  CHECK(both.err.find("It is not to stand", said + 60) == std::string::npos);
}

TEST_CASE("advice in text says where each stake goes, in the event's own lengths, and what is reached with it") {
  const Folder folder;
  put_file(folder / "lawn.quadrille", event_with(""));
  const Ran text = quadrille_in(folder, {"stand", folder / "lawn.quadrille"});
  for (const char* words : {"tie front-1 (crown, to the front) to a stake ", "cord: Nylon cord", "\" in front",
                            ", from the left foot", "gust"})
    CHECK_MESSAGE(text.out.find(words) != std::string::npos, words);
  // Once, below everything.
  const std::string aid = "A planning aid, not an engineering certificate";
  const std::size_t last = text.out.rfind(aid);
  REQUIRE(last != std::string::npos);
  CHECK(text.out.find("; " + aid) == std::string::npos);
  for (const char* metric : {" Nm", " MPa", " N\n"}) CHECK(text.out.find(metric) == std::string::npos);
}

TEST_SUITE_END();

}  // namespace
}  // namespace quadrille
