// Conditions on other parameters' values.
#include "studio/model/conditions.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

namespace {

Parameter choice(const char* key, std::vector<Choice> choices, const char* only_with = "") {
  Parameter p;
  p.key = p.label = key;
  p.kind = Kind::choice;
  p.choices = std::move(choices);
  p.standard = Value::of_text(Kind::choice, p.choices.front().key);
  p.only_with = *parse_conditions(only_with);
  return p;
}

Parameter number(const char* key, Kind kind, double standard, const char* only_with = "") {
  Parameter p;
  p.key = p.label = key;
  p.kind = kind;
  p.hard_max = p.display_max = 10;
  p.standard = Value::of_number(kind, standard);
  p.only_with = *parse_conditions(only_with);
  return p;
}

const ParameterTable table{
    choice("frame", {{"bent", "Bent rod"}, {"square", "Square"}, {"round", "Round"}}),
    number("wall", Kind::flag, 0),
    number("accents", Kind::ratio, 0),
    number("corner", Kind::length, 1, "frame=square"),
    number("height", Kind::length, 1, "frame!=bent"),
    number("both", Kind::length, 1, "frame=square|frame=round wall=yes"),
    number("slot", Kind::count, 1, "accents>0"),
    number("free", Kind::length, 1),
};

bool applies(const char* key, const ValueMap& values) {
  return applies_now(table, values, *find_parameter(table, key));
}

}  // namespace

TEST_CASE("a parameter matters where all its conditions hold, of alternatives one") {
  const Value square = Value::of_text(Kind::choice, "square"), round = Value::of_text(Kind::choice, "round");
  const Value yes = Value::of_number(Kind::flag, 1);
  CHECK(applies("free", {}));
  CHECK_FALSE(applies("corner", {}));
  CHECK(applies("corner", {{"frame", square}}));
  CHECK_FALSE(applies("corner", {{"frame", round}}));
  CHECK_FALSE(applies("height", {}));
  CHECK(applies("height", {{"frame", round}}));
  CHECK_FALSE(applies("both", {{"frame", round}}));
  CHECK_FALSE(applies("both", {{"wall", yes}}));
  CHECK(applies("both", {{"frame", round}, {"wall", yes}}));
  CHECK(applies("both", {{"frame", square}, {"wall", yes}}));
  CHECK_FALSE(applies("slot", {}));
  CHECK(applies("slot", {{"accents", Value::of_number(Kind::ratio, 0.1)}}));
}

TEST_CASE("what a parameter waits for is said in the labels of the table") {
  const auto words = [](const char* key) { return conditions_in_words(table, *find_parameter(table, key)); };
  CHECK(words("free") == "");
  CHECK(words("corner") == "frame is Square");
  CHECK(words("height") == "frame is not Bent rod");
  CHECK(words("both") == "frame is Square or Round, and wall is yes");
  CHECK(words("slot") == "accents is above 0");
}
