// The words behind `try TYPE`.
#include "studio/command/try_values.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

PieceType hoop() {
  PieceType type;
  type.id = "hoop";
  const auto add = [&](const std::string& key, Kind kind, std::vector<std::string> aliases = {}) {
    Parameter parameter;
    parameter.key = key;
    parameter.kind = kind;
    parameter.aliases = std::move(aliases);
    type.parameters.push_back(parameter);
  };
  add("span", Kind::length, {"width"});
  add("clusters", Kind::count);
  add("pattern", Kind::choice);
  type.parameters.back().choices = {{"zigzag", "Zigzag"}, {"Solid", "Solid"}};
  add("lit", Kind::flag);
  type.parameters[1].hard_max = 12;
  return type;
}

Result<ValueMap> values_of(const std::vector<std::string>& words) { return values_of(hoop(), words); }

TEST_CASE("values are read as the kind that the table gives") {
  // 20 ft = 6.096 m: the international foot.
  const auto values = values_of({"span=20ft", "clusters=33", "pattern=a=b"});
  REQUIRE(values);
  CHECK(values->at("span") == Value::of_number(Kind::length, 6.096));
  CHECK(values->at("clusters") == Value::of_number(Kind::count, 33));
  CHECK(values->at("pattern") == Value::of_text(Kind::choice, "a=b"));
}

TEST_CASE("an earlier key stands for the present one") {
  const auto values = values_of({"width=2m"});
  REQUIRE(values);
  CHECK(values->contains("span"));
}

TEST_CASE("choices and flags were refused for a capital or a blank: now they are taken as meant") {
  const auto choice = [](const std::string& word) { return values_of({word})->at("pattern").text; };
  CHECK(choice("pattern=ZigZag") == "zigzag");
  CHECK(choice("pattern= zigzag ") == "zigzag");
  CHECK(choice("pattern=solid") == "Solid");
  CHECK(choice("pattern=zig zag") == "zig zag");  // no choice: refused when it is built, as it was typed
  CHECK(values_of({"lit= Yes "})->at("lit").number == 1);
}

TEST_CASE("what is no whole number was told \"as in 33\" where 12 is the most: now the range is told") {
  CHECK(values_of({"clusters=many"}).error == "clusters: 'many' is no whole number: 0 to 12 would be accepted.");
}

TEST_CASE("what cannot be meant is refused with the key or word to blame") {
  CHECK(values_of({"span"}).error.find("'span'") != std::string::npos);
  CHECK(values_of({"=2m"}).error.find("key=value") != std::string::npos);
  CHECK(values_of({"spam=2m"}).error.find("span, clusters, pattern, lit") != std::string::npos);
  CHECK(values_of({"span=wide"}).error.starts_with("span: "));
  CHECK(values_of({"clusters=2.5"}).error.starts_with("clusters: "));
  CHECK(values_of({"span=2m", "width=3m"}).error.find("twice") != std::string::npos);
}

}  // namespace
}  // namespace quadrille
