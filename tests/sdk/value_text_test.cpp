// The written form of parameter values: read as people write it, and exact both ways.
#include "sdk/value_text.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdint>
#include <cstring>
#include <string>
#include <vector>

using namespace quadrille;

namespace {

Value value_of(Kind kind, const char* text) {
  CAPTURE(text);
  const auto value = parse_value(kind, text);
  CAPTURE(value.error);
  REQUIRE(value);
  CHECK(value->kind == kind);
  return *value;
}

std::string refusal_of(Kind kind, const char* text) {
  CAPTURE(text);
  const auto value = parse_value(kind, text);
  REQUIRE(!value);
  CHECK(value.error.ends_with('.'));
  return value.error;
}

bool contains(const std::string& text, const char* part) { return text.find(part) != std::string::npos; }

double any_finite() {
  return *rc::gen::suchThat(rc::gen::map(rc::gen::arbitrary<std::uint64_t>(),
                                         [](std::uint64_t bits) {
                                           double number = 0;
                                           std::memcpy(&number, &bits, sizeof number);
                                           return number;
                                         }),
                            [](double number) { return std::isfinite(number); });
}

/// Positive and finite, of a size that sums and quotients bear.
double any_positive() { return *rc::gen::inRange(1, 1'000'000'000) * 1.1e-6; }

Value any_value(Kind kind) {
  if (kind == Kind::flag) return Value::of_number(kind, *rc::gen::inRange(0, 2));
  if (is_whole(kind)) return Value::of_number(kind, *rc::gen::arbitrary<std::uint32_t>());
  if (is_number(kind)) return Value::of_number(kind, any_finite());
  if (kind == Kind::choice) return Value::of_text(kind, *rc::gen::arbitrary<std::string>());
  if (kind == Kind::rows) {
    const auto word = rc::gen::nonEmpty(rc::gen::container<std::string>(rc::gen::elementOf(std::string("ABCDEF"))));
    std::string text;
    for (const auto& row : *rc::gen::container<std::vector<std::string>>(word)) text += (text.empty() ? "" : " ") + row;
    return Value::of_text(kind, text);
  }
  std::vector<double> list;
  const int entries = *rc::gen::inRange(0, 6);
  for (int i = 0; i < 3 * entries; ++i) list.push_back(kind == Kind::path ? any_finite() : any_positive());
  return Value::of_list(kind, list);
}

}  // namespace

TEST_CASE("every value reads back from its written form exactly") {
  for (auto code = static_cast<std::uint32_t>(Kind::length); code <= static_cast<std::uint32_t>(Kind::mix); ++code) {
    const auto kind = static_cast<Kind>(code);
    CAPTURE(code);
    CHECK(rc::check("print then parse", [kind] {
      const Value value = any_value(kind);
      const auto back = parse_value(kind, print_value(value));
      RC_ASSERT(back.error == "");
      RC_ASSERT(*back == value);
    }));
  }
}

TEST_CASE("numbers with units are read by their kind") {
  CHECK(value_of(Kind::length, "8'6\"").number == doctest::Approx(102 * 0.0254));
  CHECK(value_of(Kind::length, "6m") == Value::of_number(Kind::length, 6));
  CHECK(value_of(Kind::mass, "10kg").number == 10);
  CHECK(value_of(Kind::angle, "180deg").number == doctest::Approx(3.14159265358979));
  CHECK(value_of(Kind::ratio, "88%").number == 0.88);
  CHECK(value_of(Kind::balloon, "11in").number == 11);
  CHECK(value_of(Kind::balloon, "11").number == 11);
  CHECK(value_of(Kind::balloon, "11\"").number == 11);
  CHECK(contains(refusal_of(Kind::balloon, "28cm"), "11in"));
  CHECK(contains(refusal_of(Kind::length, "6kg"), "no unit of length"));
}

TEST_CASE("counts, slots and seeds are whole") {
  CHECK(value_of(Kind::count, "33").number == 33);
  CHECK(value_of(Kind::count, " 33 ").number == 33);
  CHECK(value_of(Kind::count, "-1").number == -1);  // the range is the parameter's affair
  CHECK(value_of(Kind::seed, "4294967295").number == 4294967295.0);
  for (const char* wrong : {"", "3.5", "3,5", "three", "1e3", "3 pieces", "nan", "9007199254740993"})
    CHECK(contains(refusal_of(Kind::count, wrong), "no whole number"));
}

TEST_CASE("flags are said in words or digits") {
  for (const char* yes : {"yes", "true", "on", "1", "YES"}) CHECK(value_of(Kind::flag, yes).number == 1);
  for (const char* no : {"no", "false", "off", "0", "Off"}) CHECK(value_of(Kind::flag, no).number == 0);
  for (const char* wrong : {"", "2", "maybe", "ye"})
    CHECK(contains(refusal_of(Kind::flag, wrong), "neither yes nor no"));
}

TEST_CASE("pattern rows come in one form, however they were separated") {
  for (const char* text : {"AABB ABAB", "aabb,abab", "AAbb / ABab", "\nAABB\n\nABAB\n", "aabb\tabab"})
    CHECK(value_of(Kind::rows, text).text == "AABB ABAB");
  CHECK(value_of(Kind::rows, "").text.empty());
  CHECK(contains(refusal_of(Kind::rows, "AAGB"), "letters A to F"));
  CHECK(contains(refusal_of(Kind::rows, "A1"), "letters A to F"));
}

TEST_CASE("a path is points of two or three coordinates") {
  CHECK(value_of(Kind::path, "0 0 0; 1.2m 0 2.4m").list == std::vector<double>{0, 0, 0, 1.2, 0, 2.4});
  CHECK(value_of(Kind::path, "1 2; 3ft 4").list == std::vector<double>{1, 0, 2, 0.9144, 0, 4});
  CHECK(value_of(Kind::path, "-1 0,5 2;").list == std::vector<double>{-1, 0.5, 2});
  CHECK(value_of(Kind::path, "1.2 m 2.4 m").list == std::vector<double>{1.2, 0, 2.4});
  CHECK(value_of(Kind::path, "8'6\" 0 4'").list.size() == 3);
  CHECK(value_of(Kind::path, "").list.empty());
  CHECK(contains(refusal_of(Kind::path, "1"), "Point 1: '1' is no point"));
  CHECK(contains(refusal_of(Kind::path, "1 2 3 4"), "Point 1"));
  CHECK(contains(refusal_of(Kind::path, "1 2; ; 3 4"), "Point 2"));
  CHECK(contains(refusal_of(Kind::path, "1 2; 3 nan"), "Point 2"));
  CHECK(contains(refusal_of(Kind::path, "1 2; 3 4kg"), "Point 2: 'kg' is no unit of length"));
  CHECK(contains(refusal_of(Kind::path, "0,0,0"), "Point 1"));
}

TEST_CASE("a blank inside a length is not guessed at among several lengths") {
  CHECK(contains(refusal_of(Kind::path, "8' 6\" 0"), "one length or two"));
  CHECK(contains(refusal_of(Kind::path, "6 1/2 0"), "one length or two"));
  CHECK(contains(refusal_of(Kind::path, "6½in 0"), "one length or two"));
}

TEST_CASE("a mix is sizes with inflated diameters and shares") {
  CHECK(value_of(Kind::mix, "11in 0.28m 40%; 5 12cm 0.6").list == std::vector<double>{11, 0.28, 0.4, 5, 0.12, 0.6});
  CHECK(value_of(Kind::mix, "11 in 9 in 40 %").list == std::vector<double>{11, 0.2286, 0.4});
  CHECK(contains(refusal_of(Kind::mix, "11in 40%"), "Entry 1"));
  CHECK(contains(refusal_of(Kind::mix, "11in 0.28m 40%; 5in 12kg 1"), "Entry 2: 'kg' is no unit of length"));
  CHECK(contains(refusal_of(Kind::mix, "0in 0.28m 40%"), "above 0"));
  CHECK(contains(refusal_of(Kind::mix, "11in 0.28m -1"), "0 or more"));
}

TEST_CASE("a choice is its key, untouched") { CHECK(value_of(Kind::choice, "flexible-rod").text == "flexible-rod"); }
