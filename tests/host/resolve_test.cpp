// Values against a table: defaults, earlier keys, and refusals that name the key and what would be accepted.
#include "studio/host/resolve.hpp"

#include <limits>

#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

const PieceType& post() {
  static const PieceType type = type_of("post");
  return type;
}

/// The refusal of one value; its text is empty where the value is taken.
Message refusal_of(const std::string& key, const Value& value) {
  const Resolved resolved = resolve(post(), {{key, value}});
  CHECK(resolved.refusal.has_value() == resolved.values.empty());
  return resolved.refusal.value_or(Message{});
}

Value number(Kind kind, double n) { return Value::of_number(kind, n); }

}  // namespace

TEST_CASE("what is not given stands at its default, in the order of the table") {
  const Resolved resolved = resolve(post(), {{"wraps", number(Kind::count, 5)}});
  REQUIRE_FALSE(resolved.refusal);
  REQUIRE(resolved.values.size() == post().parameters.size());
  for (std::size_t i = 0; i < resolved.values.size(); ++i)
    if (post().parameters[i].key == "wraps")
      CHECK(resolved.values[i].number == 5);
    else
      CHECK(resolved.values[i] == post().parameters[i].standard);
}

TEST_CASE("an earlier key stands for the present one, but not beside it") {
  CHECK(resolve(post(), {{"tall", number(Kind::length, 3)}}).values.at(0).number == 3);
  const auto both = resolve(post(), {{"tall", number(Kind::length, 3)}, {"height", number(Kind::length, 3)}});
  REQUIRE(both.refusal);
  CHECK(both.refusal->key == "height");
}

TEST_CASE("an unknown key is refused with the keys that there are") {
  const Message refusal = refusal_of("width", number(Kind::length, 3));
  CHECK(refusal.severity == Severity::refusal);
  CHECK(refusal.key == "width");
  CHECK(
      refusal.text ==
      "Post has no parameter 'width': it takes height, lean, ballast, wraps, tightness, topped, balloon, slots, seed, "
      "dressing, rows, path, mix.");
  CHECK(refusal_of("hight", number(Kind::length, 3)).text.find("did you mean height?") != std::string::npos);
}

TEST_CASE("numbers outside the hard range are refused with the range and its unit; its ends are taken") {
  CHECK(refusal_of("height", number(Kind::length, 0.5)).text == "");
  CHECK(refusal_of("height", number(Kind::length, 6)).text == "");
  // An inch is 0.0254 m and a pound 0.45359237 kg: 7 m are 275.59 in, 0.5 m 19.69 in, 6 m 236.22 in, to the nearest half
  // inch; 1 kg is 2.205 lb, 200 kg are 440.92 lb.
  CHECK(refusal_of("height", number(Kind::length, 7)).text ==
        "Height is 7 m (22' 11 1/2\"): 0.5 m to 6 m (1' 7 1/2\" to 19' 8\") would be accepted.");
  CHECK(refusal_of("tall", number(Kind::length, 7)).key == "height");
  CHECK(refusal_of("ballast", number(Kind::mass, -1)).text ==
        "Ballast is -1 kg (-2.2 lb): 0 kg to 200 kg (0.0 lb to 440.9 lb) would be accepted.");
  // 1 rad is 57.2957795…° (180/π)
  CHECK(refusal_of("lean", number(Kind::angle, 1)).text == "Lean is 57.29578°: 0° to 28.64789° would be accepted.");
  CHECK(refusal_of("balloon", number(Kind::balloon, 60)).text == "Balloon is 60 in: 1 in to 48 in would be accepted.");
  CHECK(refusal_of("seed", number(Kind::seed, 5e9)).text == "Seed is 5000000000: 0 to 4294967295 would be accepted.");
  CHECK(refusal_of("topped", number(Kind::flag, 2)).text == "Topped is 2: yes or no would be accepted.");
  for (const double n : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), 1e308})
    CHECK(refusal_of("height", number(Kind::length, n)).key == "height");
}

TEST_CASE("whole numbers are whole") {
  CHECK(refusal_of("wraps", number(Kind::count, 3.5)).text ==
        "Wraps is 3.5, which is no whole number: 2 to 6 would be accepted.");
  CHECK(refusal_of("topped", number(Kind::flag, 0.5)).text != "");
}

TEST_CASE("another kind, another choice, other letters, broken lists are refused") {
  CHECK(refusal_of("height", number(Kind::mass, 2)).text ==
        "Height holds another kind of value: a length would be accepted.");
  // What the choices are was not told.
  CHECK(refusal_of("dressing", number(Kind::count, 2)).text ==
        "Dressing holds another kind of value: one of its choices, dense or sparse, in a file written choice='dense', "
        "would be accepted.");
  CHECK(refusal_of("dressing", Value::of_text(Kind::choice, "wild")).text ==
        "Dressing is 'wild': dense or sparse would be accepted.");
  CHECK(refusal_of("rows", Value::of_text(Kind::rows, "AZ")).key == "rows");
  CHECK(refusal_of("rows", Value::of_text(Kind::rows, std::string(2'000'000, 'A'))).key == "rows");
  CHECK(refusal_of("path", Value::of_list(Kind::path, {1, 2})).key == "path");
  CHECK(refusal_of("path", Value::of_list(Kind::path, {0, 0, 0, 6, 0, 0})).text ==
        "Path, entry 2: a coordinate is 6 m (19' 8\"): -5 m to 5 m (-16' 5\" to 16' 5\") would be accepted.");
  CHECK(refusal_of("path", Value::of_list(Kind::path, {0, 0, std::numeric_limits<double>::quiet_NaN()})).key == "path");
  CHECK(refusal_of("path", Value::of_list(Kind::path, std::vector<double>(600'000, 0))).key == "path");
  CHECK(refusal_of("mix", Value::of_list(Kind::mix, {11, 0, 1})).key == "mix");
  CHECK(refusal_of("mix", Value::of_list(Kind::mix, {11, 0.28, 0})).key == "mix");
  CHECK(refusal_of("mix", Value::of_list(Kind::mix, {11, 0.28, 0, 5, 0.12, 1})).text == "");
}

TEST_CASE("equal values are brought to one form") {
  CHECK_FALSE(std::signbit(resolve(post(), {{"ballast", number(Kind::mass, -0.0)}}).values.at(2).number));
  CHECK(resolve(post(), {{"rows", Value::of_text(Kind::rows, "ab, ba")}}).values.at(10).text == "AB BA");
  Value untidy = number(Kind::length, 2);
  untidy.text = "left over";
  CHECK(resolve(post(), {{"height", untidy}}).values.at(0) == number(Kind::length, 2));
}
