// Every piece type that this build has made passes the gate and the conformance suite.
#include "studio/host/conformance.hpp"
#include "tests/host/fixture.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("every piece type of this build conforms") {
  const PieceTypes found =
      find_piece_types({{std::filesystem::path(QUADRILLE_BINARY_DIR) / "pieces"}, std::nullopt, false});
  for (const RefusedFile& refused : found.refused)
    FAIL_CHECK(refused.file.string(), " is refused (", std::string(key_of(refused.reason)), "): ", refused.sentence);
  for (const PieceType& type : found.types) {
    CAPTURE(type.id);
    for (const Check& check : prove(type).checks) {
      CAPTURE(check.name);
      CAPTURE(check.sentence);
      CHECK(check.passed);
    }
  }
  MESSAGE(found.types.size(), " piece types of this build looked at");
}
