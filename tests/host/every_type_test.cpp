// Every piece type that this build has made passes the gate and the conformance suite.
#include <set>

#include "studio/host/conformance.hpp"
#include "tests/host/fixture.hpp"
#include "tests/places.hpp"

using namespace quadrille;
using namespace quadrille::testing;
namespace fs = std::filesystem;

namespace {

PieceTypes types_of_this_build() { return find_piece_types({{build_place("pieces")}, {}, false}); }

}  // namespace

TEST_CASE("every folder of plugins gives at least one piece type, and none of this build is refused") {
  // Once the suite passed with an empty folder of plugins, having looked at nothing.
  const PieceTypes found = types_of_this_build();
  for (const RefusedFile& refused : found.refused)
    FAIL_CHECK(refused.file.string(), " is refused (", std::string(key_of(refused.reason)), "): ", refused.sentence);
  std::set<std::string> files;
  for (const PieceType& type : found.types) files.insert(type.file.stem().string());
  std::size_t folders = 0;
  for (const auto& entry : fs::directory_iterator(source_place("plugins"))) {
    if (!fs::exists(entry.path() / "CMakeLists.txt")) continue;
    ++folders;
    CAPTURE(entry.path().string());
    CHECK(files.contains(entry.path().filename().string()));
  }
  CHECK(folders > 0);
}

TEST_CASE("every piece type of this build conforms") {
  const PieceTypes found = types_of_this_build();
  REQUIRE_FALSE(found.types.empty());
  constexpr TimeBudget ample{600, 600};  // how fast a type builds is for the benchmarks: a busy machine fails no test
  for (const PieceType& type : found.types) {
    CAPTURE(type.id);
    const TypeProof proof = prove(type, ample);
    CHECK(proof.checks.size() == 9);  // as conformance.hpp lists them
    for (const Check& check : proof.checks) CHECK_MESSAGE(check.passed, check.name, ": ", check.sentence);
  }
}
