// What a garland says of itself fits the way it is hung.
#include <doctest/doctest.h>

#include <string>

#include "sdk/units.hpp"
#include "tests/garland/built_garland.hpp"

using namespace quadrille;

namespace {

struct Way {
  std::string name;
  ValueMap values;
};

std::vector<Way> ways() {
  const auto choice = [](const char* key) { return Value::of_text(Kind::choice, key); };
  return {{"strip", {{"backing", choice("strip")}}},
          {"line", {{"backing", choice("line")}}},
          {"hooks", {{"backing", choice("hooks")}}},
          {"frame", {{"backing", choice("frame")}}},
          {"hanging",
           {{"backing", choice("line")},
            {"course", choice("hanging")},
            {"path", Value::of_list(Kind::path, {-2, 0, 3, 2, 0, 3})}}}};
}

std::string rules_of(const BuiltPiece& built) {
  std::string text;
  for (const AnchoringRule& rule : built.piece.anchoring) text += rule.text + " " + rule.reason + "\n";
  return text;
}

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

// A garland on a line was told of a strip's holes, one over a table of an arch frame, and a swag to be tied on every foot.
TEST_CASE("a garland's rules and supplies name only what it is hung by") {
  for (const Way& way : ways()) {
    CAPTURE(way.name);
    const auto built = build(way.values);
    const std::string rules = rules_of(*built);
    CHECK(says(rules, "A strip tears") == (way.name == "strip"));
    CHECK(says(rules, "Where one line parts") == (way.name != "strip"));
    CHECK(says(rules, "Try each hook") == (way.name == "hooks"));
    CHECK(says(rules, "between every two of its cable ties") == (way.name == "frame"));
    CHECK(says(rules, "between every two of its hooks, ") == (way.name == "hooks"));
    CHECK(says(rules, "not only at its two ends") == (way.name == "hanging"));
    // Half of the 0.6 m between hooks, in both units as print_both() gives them: 0.3 m is 11.8 in, a foot to the half inch.
    CHECK(says(rules, "about every 0.30 m (1').") == (way.name != "hanging"));
    CHECK_FALSE(says(rules, "every foot"));
    for (const Supply& supply : built->piece.supplies) CHECK_FALSE(says(supply.label, "arch"));
  }
}

TEST_CASE("hooks are to be tried with twice what the balloons weigh") {
  const auto built = build(ways()[2].values);
  // 3 g for 11 in, by the square of the size (common practice, no source): 5 in 0.62 g, 16 in 6.35 g.
  double grams = 0;
  for (const Balloon& balloon : built->piece.balloons)
    grams += balloon.nominal_in == 5 ? 0.6198 : balloon.nominal_in == 11 ? 3 : 6.3471;
  const double kilograms = std::ceil(2 * grams / 100) / 10, pounds = std::ceil(2 * grams / 45.359237) / 10;
  CHECK(says(rules_of(*built),
             "Try each hook with " + print_fixed(kilograms, 1) + " kg (" + print_fixed(pounds, 1) + " lb), twice"));
}
