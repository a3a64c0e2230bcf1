// `quadrille try` as scripts use it.
#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "program.hpp"

namespace quadrille {
namespace {

using Json = nlohmann::json;

void check_keys(const Json& object, const std::vector<const char*>& keys) {
  for (const char* key : keys) {
    CAPTURE(key);
    CHECK(object.contains(key));
  }
}

TEST_CASE("try --json gives every key that scripts rely on") {
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"try", "arch", "frame=flexible-rod", "rod-length=9m", "span=3.2m",
                                            "cluster-size=4", "clusters=33", "slots=2", "--json"});
  CHECK(outcome.exit == 0);
  const Json json = Json::parse(outcome.out);
  check_keys(json, {"type", "status", "messages", "size", "hidden_share", "bare", "spine_m", "frame", "clusters",
                    "balloons", "supplies", "work", "facts", "supports", "tie_points", "anchoring"});
  CHECK(json["type"] == "arch");
  CHECK(json["status"] == "ok");
  check_keys(json["size"], {"width_m", "height_m", "depth_m"});
  check_keys(json["frame"], {"nodes", "members"});
  CHECK(json["frame"]["nodes"].at(0).size() == 3);
  check_keys(json["frame"]["members"].at(0),
             {"from", "to", "outer_m", "inner_m", "young_pa", "density_kg_m3", "strength_pa"});
  check_keys(json["clusters"].at(0), {"number", "at_m", "centre_m", "turn_deg"});
  check_keys(json["balloons"].at(0),
             {"centre_m", "neck_m", "diameter_m", "nominal_in", "slot", "cluster", "place", "role"});
  check_keys(json["supplies"].at(0), {"key", "quantity", "unit"});
  check_keys(json["work"].at(0), {"key", "quantity"});
  check_keys(json["facts"], {"rod_length_m", "span_m", "height_m", "widest_m", "foot_push_n", "foot_moment_nm",
                             "topple_weight_n_per_m", "tightness"});
  CHECK(json["facts"]["rod_length_m"].get<double>() == doctest::Approx(9).epsilon(1e-12));

  // Common practice, no source: 33 quads in two colours, two of each per quad, are 66 and 66.
  REQUIRE(json["clusters"].size() == 33);
  REQUIRE(json["balloons"].size() == 132);
  int of_a = 0;
  for (const Json& balloon : json["balloons"]) of_a += balloon["slot"] == "A" ? 1 : 0;
  CHECK(of_a == 66);
  // Quads are turned by 180°/4 = 45° and the turn keeps its hand.
  for (std::size_t i = 1; i < 33; ++i) {
    const double turn =
        json["clusters"][i]["turn_deg"].get<double>() - json["clusters"][i - 1]["turn_deg"].get<double>();
    CHECK(std::fmod(turn + 360, 360) == doctest::Approx(45).epsilon(1e-9));
  }
}

TEST_CASE("numbers are printed so that nothing is lost") {
  // 1/3 m as a span: the shortest text of the double 1/3 has 16 digits; a print at six digits would fall short.
  const Folder folder;
  const Ran outcome = quadrille_in(folder, {"try", "arch", "span=0.3333333333333333", "rod-length=6m", "--json"});
  const Json json = Json::parse(outcome.out);
  REQUIRE(json["status"] == "ok");
  CHECK(json["facts"]["span_m"].get<double>() == doctest::Approx(1.0 / 3).epsilon(1e-15));
}

TEST_CASE("a piece that cannot be ends with 1 and says which value is to blame") {
  const Folder folder;
  // A rod of 6 m cannot span 7 m.
  const Ran wide = quadrille_in(folder, {"try", "arch", "rod-length=6m", "span=7m", "--json"});
  CHECK(wide.exit == 1);
  const Json json = Json::parse(wide.out);
  CHECK(json["status"] != "ok");
  bool blames_span = false;
  for (const Json& message : json["messages"])
    blames_span = blames_span || (message["key"] == "span" && message["severity"] == "refusal");
  CHECK(blames_span);
  CHECK(wide.err.find("span") != std::string::npos);
  // A rod that would break is refused, and still shown with its figures.
  const Json broken = Json::parse(quadrille_in(folder, {"try", "arch", "span=5.7m", "--json"}).out);
  CHECK(broken["status"] == "infeasible");
  CHECK(broken["facts"]["bend_radius_m"].get<double>() < broken["facts"]["bend_limit_m"].get<double>());
  CHECK(broken["frame"]["nodes"].size() > 10);
}

TEST_CASE("a value outside its range and a choice that there is not end with 3") {
  const Folder folder;
  CHECK(quadrille_in(folder, {"try", "arch", "span=-1m"}).exit == 3);
  const Ran choice = quadrille_in(folder, {"try", "arch", "frame=triangle", "--json"});
  CHECK(choice.exit == 3);
  CHECK(Json::parse(choice.out)["status"] == "bad_parameter");
}

TEST_CASE("words that cannot be meant end with 2 and print no data") {
  const Folder folder;
  const std::vector<std::vector<std::string>> mistakes{
      {"try"},
      {"try", "ark"},
      {"try", "arch", "spam=2m"},
      {"try", "arch", "span"},
      {"try", "arch", "span=wide"},
      {"try", "arch", "span=nan"},
      {"try", "arch", "span=2m", "span=3m"},
      {"try", "arch", "--json", "--out", folder / "a.pdf"},
      {"try", "arch", "--out", folder / "a.doc"},
      {"try", "arch", "--colour"},
  };
  for (const auto& words : mistakes) {
    const Ran outcome = quadrille_in(folder, words);
    CAPTURE(words.back());
    CHECK(outcome.exit == 2);
    CHECK(outcome.out.empty());
    CHECK_FALSE(outcome.err.empty());
  }
  CHECK(quadrille_in(folder, {"try", "ark"}).err.find("arch") != std::string::npos);
}

TEST_CASE("without --json it says in words what it built, and draws on request") {
  const Folder folder;
  const Ran text = quadrille_in(folder, {"try", "arch", "rod-length=9m", "span=3.2m", "clusters=33"});
  CHECK(text.exit == 0);
  CHECK(text.out.find("132 balloons in 33 clusters") != std::string::npos);
  const Ran drawn = quadrille_in(folder, {"try", "arch", "--out", folder / "arch.svg"});
  CHECK(drawn.exit == 0);
  CHECK(drawn.out.empty());
  CHECK(bytes_of(folder / "arch.svg").find("<svg") != std::string::npos);
  CHECK(quadrille_in(folder, {"try", "arch", "--out", folder / "no/where.svg"}).exit == 4);
}

}  // namespace
}  // namespace quadrille
