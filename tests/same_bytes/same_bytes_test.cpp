// The same values give the same bytes, however the piece types were compiled and whatever processor they run on.
#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "sdk/random.hpp"
#include "studio/command/built_json.hpp"
#include "studio/host/builder.hpp"
#include "studio/host/discovery.hpp"
#include "tests/command/program.hpp"
#include "tests/places.hpp"

using namespace quadrille;

namespace {

const PieceTypes& types_in(const std::string& folder) {
  static std::map<std::string, PieceTypes> found;
  const auto known = found.find(folder);
  return known != found.end() ? known->second
                              : found.emplace(folder, find_piece_types({{folder}, std::nullopt, false})).first->second;
}
const PieceTypes& these() { return types_in(build_place("pieces")); }
const PieceTypes& others() { return types_in(OTHER_PIECES); }

/// The defaults with every choice, and `drawn` sets in which half of the numbers and choices are other than standard.
std::vector<ValueMap> value_sets(const PieceType& type, int drawn) {
  std::vector<ValueMap> sets{{}};
  for (const Parameter& parameter : type.parameters)
    for (const Choice& choice : parameter.choices)
      sets.push_back({{parameter.key, Value::of_text(Kind::choice, choice.key)}});
  Random random(20);
  for (int i = 0; i < drawn; ++i) {
    ValueMap values;
    for (const Parameter& parameter : type.parameters) {
      const double share = random.unit();
      if (random.unit() < 0.5) continue;
      if (!parameter.choices.empty())
        values[parameter.key] = Value::of_text(
            Kind::choice,
            parameter.choices[static_cast<std::size_t>(share * static_cast<double>(parameter.choices.size()))].key);
      else if (is_number(parameter.kind)) {
        // Within a fifth of the way to either end of what a slider offers, so that most sets can be built.
        const double from = parameter.standard.number + 0.2 * (parameter.display_min - parameter.standard.number);
        const double to = parameter.standard.number + 0.2 * (parameter.display_max - parameter.standard.number);
        const double number = from + share * (to - from);
        values[parameter.key] =
            Value::of_number(parameter.kind, is_whole(parameter.kind) ? std::nearbyint(number) : number);
      }
    }
    sets.push_back(values);
  }
  return sets;
}

std::string bytes_of_build(const PieceType& type, const ValueMap& values) {
  return json_of(type.id, *build_piece(type, values)).dump();
}

}  // namespace

TEST_CASE("unoptimised, optimised and sanitized builds of a piece type give the same bytes") {
  REQUIRE(these().types.size() >= 3);
  REQUIRE(others().types.size() == these().types.size());
  for (const PieceType& type : these().types) {
    CAPTURE(type.id);
    const PieceType* other = others().find(type.id);
    REQUIRE(other != nullptr);
    REQUIRE(other->file != type.file);
    int built = 0;
    const auto sets = value_sets(type, 24);
    for (std::size_t i = 0; i < sets.size(); ++i) {
      CAPTURE(i);
      const std::string bytes = bytes_of_build(type, sets[i]);
      built += bytes.find("\"status\":\"ok\"") != std::string::npos;
      CHECK(bytes == bytes_of_build(*other, sets[i]));
    }
    CHECK(built >= 12);  // refusals say nothing about geometry
  }
}

#if defined(__x86_64__) && defined(__GLIBC__)
TEST_CASE("a processor without fused multiply-add, whose sines differ in the last bits, gives the same bytes") {
  // The C library picks its mathematics by what the processor has, and can be told to do without.
  if (!__builtin_cpu_supports("fma")) MESSAGE("this processor has none itself: nothing is compared here");
  const Folder folder;
  Environment plain = environment_in(folder), poorer = plain;
  poorer["GLIBC_TUNABLES"] = "glibc.cpu.hwcaps=-FMA,-FMA4,-AVX2";
  for (const PieceType& type : these().types) {
    std::vector<std::string> settings{""};
    for (const Parameter& parameter : type.parameters)
      for (const Choice& choice : parameter.choices) settings.push_back(parameter.key + "=" + choice.key);
    for (const std::string& setting : settings) {
      CAPTURE(type.id);
      CAPTURE(setting);
      std::vector<std::string> words{"try", type.id, "--json"};
      if (!setting.empty()) words.push_back(setting);
      const Ran here = run_in(folder, quadrille_program, words, plain);
      CHECK(here.out.size() > 100);
      CHECK(here.out == run_in(folder, quadrille_program, words, poorer).out);
    }
  }
}
#endif
