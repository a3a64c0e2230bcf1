// `quadrille count` and `check` as scripts use them.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "has_word.hpp"
#include "scene.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

TEST_CASE("count --json gives every key that scripts rely on, and the totals agree") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder), "--json"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.err.empty());
  const Json json = Json::parse(outcome.out);
  for (const char* key :
       {"nominal_in", "inflated_m", "colour", "palette", "used", "spares", "on_hand", "packs", "pack_size", "order"})
    CHECK(json["balloons"].at(0).contains(key));
  for (const char* key : {"key", "name", "quantity", "unit"}) CHECK(json["supplies"].at(0).contains(key));
  for (const char* key : {"id", "name", "type", "balloons", "clusters"}) CHECK(json["pieces"].at(0).contains(key));

  // Two arches of 33 quads, two of each colour per quad: 2 × 66 = 132 of each colour, 264 in all. Spares for 132 at 2 %
  // and 95 %: 6 (tests/reference/binomial.csv). 138 balloons in packs of 100 are 2 packs, 200 balloons.
  CHECK(json["total_balloons"] == 264);
  REQUIRE(json["balloons"].size() == 2);
  for (const Json& line : json["balloons"]) {
    CHECK(line["palette"] == "garden");
    CHECK(line["used"] == 132);
    CHECK(line["spares"] == 6);
    CHECK(line["on_hand"] == 0);
    CHECK(line["pack_size"] == 100);
    CHECK(line["packs"] == 2);
    CHECK(line["order"] == 200);
  }
  CHECK(json["pieces"][0]["balloons"] == 132);
  CHECK(json["pieces"][1]["clusters"] == 33);
}

TEST_CASE("count prints a table for people and writes one for spreadsheets") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const Ran text = quadrille_in(folder, {"count", event});
  CHECK(text.exit == 0);
  CHECK(text.out.find("Balloons: 264") != std::string::npos);
  CHECK(text.out.find("Fern") != std::string::npos);
  const Ran csv = quadrille_in(folder, {"count", event, "--csv", folder / "count.csv"});
  CHECK(csv.exit == 0);
  CHECK(csv.out.empty());
  const std::string table = bytes_of(folder / "count.csv");
  CHECK(table.starts_with("list,name,key,palette,nominal_in,inflated_m,used,"));
  CHECK(table.find("\r\nballoon,Fern,fern,garden,11,") != std::string::npos);
  // The palette's name of this colour begins with '=' and holds a comma and quotes.
  CHECK(table.find("\r\nballoon,\"'=Poppy, \"\"red\"\"\",poppy,garden,11,") != std::string::npos);
}

TEST_CASE("an output that cannot be written ends with 4") {
  const Folder folder;
  const std::string event = put_scene(folder);
  const Ran nowhere = quadrille_in(folder, {"count", event, "--csv", folder / "no/count.csv"});
  CHECK(nowhere.exit == 4);
  CHECK(nowhere.err.find("no/count.csv") != std::string::npos);
  const Ran full = run_in(folder, quadrille_program, {"count", event, "--json"}, environment_in(folder), "/dev/full");
  CHECK(full.exit == 4);
}

TEST_CASE("a table never replaces the event it is made from") {
  const Folder folder;
  const std::string event = put_scene(folder);
  CHECK(quadrille_in(folder, {"count", event, "--csv", event}).exit == 2);
  CHECK(bytes_of(event) == event_text());
}

TEST_CASE("a piece of an unknown type is counted as last calculated") {
  const Folder folder;
  std::string event = event_text(
      "      <last-built width-m=\"3\" height-m=\"2\" depth-m=\"0.5\" clusters=\"9\">\n"
      "        <count nominal-in=\"11\" inflated-m=\"0.28\" slot=\"A\" balloons=\"36\"/>\n"
      "      </last-built>\n");
  event.replace(event.find("type=\"arch\""), 11, "type=\"wave\"");
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder, event), "--json"});
  const Json json = Json::parse(outcome.out);
  CHECK(json["pieces"][0]["as_last_calculated"] == true);
  CHECK(json["pieces"][0]["balloons"] == 36);
  CHECK(json["total_balloons"] == 168);  // 36 + 132
}

TEST_CASE("check says nothing wrong of a sound event and ends with 0") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"check", put_scene(folder), "--json"});
  CHECK(outcome.exit == 0);
  const Json json = Json::parse(outcome.out);
  CHECK(json["problems"] == 0);
  CHECK(json["findings"].is_array());
}

TEST_CASE("check ends with 3 where a colour is in no palette, and names it") {
  const Folder folder;
  std::string unknown = event_text();
  unknown.replace(unknown.find("key=\"fern\""), 10, "key=\"lilac\"");
  const Ran colour = quadrille_in(folder, {"check", put_scene(folder, unknown), "--json"});
  CHECK(colour.exit == 3);
  bool found = false;
  const Json findings = Json::parse(colour.out)["findings"];
  for (const Json& finding : findings) {
    for (const char* key : {"weight", "code", "area", "piece", "place", "key", "text", "remedy"})
      CHECK(finding.contains(key));
    found = found || (finding["weight"] == "problem" && finding["piece"] == "p1" &&
                      finding["text"].get<std::string>().find("lilac") != std::string::npos);
  }
  CHECK(found);
}

TEST_CASE("a slot without colour is a problem: check once said nothing of it, and count that its size is not sold") {
  const Folder folder;
  std::string event = event_text();
  const auto at = event.find("      <colour slot=\"B\"");
  event.erase(at, event.find('\n', at) + 1 - at);
  const Ran checked = quadrille_in(folder, {"check", put_scene(folder, event)});
  CHECK(checked.exit == 1);
  // 33 quads with two of slot B each.
  CHECK(has_line_with(checked.out, {"problem", "Barn", "Arch p1", "Slot B", "no colour", "66"}));
  CHECK_FALSE(has_line_with(checked.out, {"Arch p2", "no colour"}));
  const Ran counted = quadrille_in(folder, {"count", folder / "supper.quadrille"});
  CHECK(counted.exit == 1);
  CHECK(has_line_with(counted.out, {"no colour (slot B)", "66", "no colour chosen"}));
}

TEST_CASE("check and count end with 1 where a piece is refused, and the table says that it is not built") {
  const Folder folder;
  std::string wide = event_text();
  wide.replace(wide.find("length=\"2.7\""), 12, "length=\"9.5\"");
  const Ran refused = quadrille_in(folder, {"check", put_scene(folder, wide)});
  CHECK(refused.exit == 1);
  CHECK(refused.out.find("problem: Barn, Arch p1: The span") != std::string::npos);
  // Counting says so too: what is refused counts nothing.
  const Ran counted = quadrille_in(folder, {"count", put_scene(folder, wide), "--json"});
  CHECK(counted.exit == 1);
  CHECK(Json::parse(counted.out)["total_balloons"] == 132);
  CHECK(Json::parse(counted.out)["pieces"][0]["not_built"] == true);
  CHECK(Json::parse(counted.out)["pieces"][1]["not_built"] == false);
  CHECK(counted.err.find("Arch p1") != std::string::npos);
  const Ran text = quadrille_in(folder, {"count", folder / "supper.quadrille"});
  CHECK(has_line_with(text.out, {"Arch p1", "arch", "not built"}));
  CHECK_FALSE(has_line_with(text.out, {"Arch p1", "0"}));
}

TEST_CASE("a piece that was never calculated is not built: it once counted \"as last calculated\", with 0") {
  const Folder folder;
  std::string event = event_text();
  event.replace(event.find("type=\"arch\""), 11, "type=\"wave\"");
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder, event), "--json"});
  CHECK(outcome.exit == 1);
  const Json piece = Json::parse(outcome.out)["pieces"][0];
  CHECK(piece["as_last_calculated"] == false);
  CHECK(piece["not_built"] == true);
  CHECK(outcome.err.find("'wave' is not available") != std::string::npos);
}

TEST_CASE("an event of a newer version is counted with a warning: it was once counted without a word") {
  const Folder folder;
  std::string event = event_text();
  event.replace(event.find("version=\"1.0\" reader=\"1.0\" units"), 26, "version=\"2.0\" reader=\"2.0\"");
  const Ran outcome = quadrille_in(folder, {"count", put_scene(folder, event), "--json"});
  CHECK(outcome.exit == 0);
  CHECK(Json::parse(outcome.out)["total_balloons"] == 264);
  CHECK(outcome.err.find("warning: ") == 0);
  CHECK(outcome.err.find("version 2.0") != std::string::npos);
}

TEST_CASE("supplies are told in the event's units, lengths in feet and inches") {
  const Folder folder;
  std::string event = event_text();
  event.replace(event.find("units=\"metric\""), 14, "units=\"feet\"");
  const Ran feet = quadrille_in(folder, {"count", put_scene(folder, event)});
  const Ran metric = quadrille_in(folder, {"count", put_scene(folder)});
  // Of 33 clusters every third is tied, from the first on, and the last: 12, with 0.6 m of line each. Two arches take
  // 14.4 m, which are 47 ft 2.9 in: 48 ft suffice.
  CHECK(has_line_with(metric.out, {"Line, clusters to the frame", "14.4 m"}));
  CHECK(has_line_with(feet.out, {"Line, clusters to the frame", "48'"}));
  CHECK(has_line_with(feet.out, {"Fern", "9.0 in"}));
  CHECK(has_line_with(metric.out, {"Fern", "22.9 cm"}));
}

}  // namespace
}  // namespace quadrille
