// `quadrille quote`: the same money on the screen, in JSON and CSV; and issuing it.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "csv_rows.hpp"
#include "has_word.hpp"
#include "scene.hpp"
#include "studio/model/money.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

/// The scene 18 km away, with a price of its own for the first arch.
std::string priced_event() {
  std::string text = event_text();
  text.replace(text.find("<job title=\"Harvest supper\"/>"), 29,
               "<job title=\"Harvest supper\" travel-m=\"18000\" discount-ppm=\"50000\"/>");
  text.replace(text.find("y-m=\"0\""), 7, "y-m=\"0\" price-minor=\"46500\"");
  return text;
}

TEST_CASE("quote --json has lines that add up, what it earns, and whose figures it is made from") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"quote", put_scene(folder, priced_event()), "--json"});
  CHECK(outcome.exit == 0);
  CHECK(outcome.err.empty());
  const Json json = Json::parse(outcome.out);
  CHECK(json["currency"] == "USD");
  std::int64_t net = 0, tax = 0;
  for (const Json& line : json["lines"]) {
    for (const char* key : {"kind", "piece", "text", "net_minor", "tax_ppm", "tax_minor", "total_minor"})
      CHECK(line.contains(key));
    net += line["net_minor"].get<std::int64_t>();
    tax += line["tax_minor"].get<std::int64_t>();
  }
  CHECK(json["net_minor"] == net);
  CHECK(json["tax_minor"] == tax);
  CHECK(json["total_minor"] == net + tax);
  CHECK(json["deposit_minor"].get<std::int64_t>() + json["balance_minor"].get<std::int64_t>() == net + tax);
  CHECK(json["lines"][0]["net_minor"] == 46500);
  CHECK(json["pieces"][0]["price_from"] == "own");
  CHECK(json["pieces"][1]["price_from"] == "cost-plus");
  // Delivery of the standard house: 35.00 and 1.20 a kilometre, 36 km there and back.
  CHECK(json["lines"][2]["kind"] == "delivery");
  CHECK(json["lines"][2]["net_minor"] == 3500 + 36 * 120);
  // Two colours of 138 balloons each take four packs of 9.90, however the arches share them.
  CHECK(json["earnings"]["balloons_minor"] == 4 * 990);
  CHECK(json["pieces"][0]["balloons_minor"].get<std::int64_t>() +
            json["pieces"][1]["balloons_minor"].get<std::int64_t>() ==
        4 * 990);
  CHECK(json["issued"].is_null());
}

TEST_CASE("the screen, JSON and CSV quote the same") {
  const Folder folder;
  const std::string event = put_scene(folder, priced_event());
  const Json json = Json::parse(quadrille_in(folder, {"quote", event, "--json"}).out);
  const Ran text = quadrille_in(folder, {"quote", event});
  REQUIRE(quadrille_in(folder, {"quote", event, "--csv", folder / "q.csv"}).exit == 0);
  const auto rows = csv_rows(bytes_of(folder / "q.csv"));
  const auto lines = rows_of(rows, "line");
  REQUIRE(lines.size() == json["lines"].size());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto minor = json["lines"][i]["total_minor"].get<std::int64_t>();
    CHECK(std::llround(std::stod(lines[i].at("total")) * 100) == minor);
    CHECK(lines[i].at("text") == json["lines"][i]["text"].get<std::string>());
    CHECK(text.out.find(lines[i].at("text")) != std::string::npos);
    CHECK(text.out.find(lines[i].at("total")) != std::string::npos);
  }
  // What has to be bought besides stood in a finding alone, while so much was left of the price.
  const auto hardware = json["hardware_minor"].get<std::int64_t>();
  REQUIRE(hardware > 0);
  CHECK(text.out.find("frames, bases and fittings for " + print_figure(hardware, "USD") + " are still to be bought") !=
        std::string::npos);
  // A discount is a number below nothing, not a text that begins with '-'.
  CHECK(lines.back().at("kind") == "discount");
  CHECK(lines.back().at("net").starts_with("-"));
}

TEST_CASE("an issued quote is kept in the event, with a backup of it, and differences are shown") {
  const Folder folder;
  const std::string event = put_scene(folder, priced_event());
  const std::string before = bytes_of(event);
  const Ran issued =
      quadrille_in(folder, {"quote", event, "--issue", "--date", "2027-02-10", "--number", "A-7", "--json"});
  REQUIRE(issued.exit == 0);
  CHECK(issued.err.find("issued, and the event saved to " + event) != std::string::npos);
  CHECK(bytes_of(event + "~") == before);
  const std::string after = bytes_of(event);
  CHECK(after.find("<quote number=\"A-7\" date=\"2027-02-10\" valid-until=\"2027-03-12\" currency=\"USD\"") !=
        std::string::npos);
  const Json json = Json::parse(issued.out);
  CHECK(json["issued"]["number"] == "A-7");
  CHECK(json["issued"]["expired"] == false);
  CHECK(json["issued"]["total_minor"] == json["total_minor"]);
  CHECK(json["issued"]["changes"]["lines"].empty());

  // Looking at it changes nothing; on a later day it is expired.
  const Ran late = quadrille_in(folder, {"quote", event, "--date", "2027-03-13"});
  CHECK(late.exit == 0);
  CHECK(late.err.find("valid until 2027-03-12") != std::string::npos);
  CHECK(late.out.find("nothing has changed since") != std::string::npos);
  CHECK(bytes_of(event) == after);

  // A price that is changed by hand is a difference, and what was issued stays.
  std::string dearer = after;
  dearer.replace(dearer.find("price-minor=\"46500\""), 19, "price-minor=\"50000\"");
  put_file(event, dearer);
  const Ran changed = quadrille_in(folder, {"quote", event, "--json"});
  CHECK(changed.exit == 0);
  CHECK(changed.err.find("what the client was given is kept") != std::string::npos);
  const Json differences = Json::parse(changed.out)["issued"]["changes"];
  REQUIRE(differences["lines"].size() == 2);  // the piece and the discount
  CHECK(differences["lines"][0]["was"]["net_minor"] == 46500);
  CHECK(differences["lines"][0]["is"]["net_minor"] == 50000);
  CHECK(Json::parse(changed.out)["issued"]["total_minor"] == json["total_minor"]);
  CHECK(has_line_with(quadrille_in(folder, {"quote", event}).out, {"Arch p1", "465.00", "500.00"}));
  CHECK(bytes_of(event) == dearer);
}

TEST_CASE("--out leaves the event as it was, and never replaces another") {
  const Folder folder;
  const std::string event = put_scene(folder, priced_event()), before = bytes_of(event);
  const std::vector<std::string> words{"quote", event, "--issue", "--date", "2027-02-10", "--out"};
  const auto to = [&](const std::string& file) {
    auto all = words;
    all.push_back(file);
    return quadrille_in(folder, all);
  };
  CHECK(to(folder / "issued.quadrille").exit == 0);
  CHECK(bytes_of(event) == before);
  CHECK(bytes_of(folder / "issued.quadrille").find("<quote date=\"2027-02-10\"") != std::string::npos);
  put_file(folder.path() / "other.quadrille", event_text());
  CHECK(to(folder / "other.quadrille").exit == 2);
  CHECK(bytes_of(folder / "other.quadrille") == event_text());
  CHECK(to(folder / "none/issued.quadrille").exit == 4);
}

TEST_CASE("a quote that lacks prices is told and not issued") {
  const Folder folder;
  std::string text = priced_event();
  text.replace(text.find("currency=\"USD\""), 14, "currency=\"EUR\"");
  const std::string event = put_scene(folder, text);
  const Ran outcome = quadrille_in(folder, {"quote", event, "--issue", "--date", "2027-02-10"});
  CHECK(outcome.exit == 1);
  CHECK(outcome.err.find("was not issued") != std::string::npos);
  CHECK(outcome.err.find("no price in EUR") != std::string::npos);
  CHECK(bytes_of(event) == text);
}

TEST_CASE("an event of a newer version is quoted, but not saved over") {
  const Folder folder;
  std::string text = priced_event();
  text.replace(text.find("version=\"1.0\" reader=\"1.0\" units"), 26, "version=\"2.0\" reader=\"2.0\"");
  const std::string event = put_scene(folder, text);
  CHECK(quadrille_in(folder, {"quote", event}).exit == 0);
  CHECK(quadrille_in(folder, {"quote", event, "--issue", "--date", "2027-02-10"}).exit == 3);
  CHECK(bytes_of(event) == text);
}

}  // namespace
}  // namespace quadrille
