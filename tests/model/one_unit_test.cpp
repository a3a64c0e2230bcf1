// A measure that is told in both systems, for a reader of one.
#include "studio/model/one_unit.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

std::string feet(const std::string& text) { return in_one_unit(text, Units::feet); }
std::string metric(const std::string& text) { return in_one_unit(text, Units::metric); }

TEST_CASE("a measure in both systems is told in the reader's") {
  const std::string plate = "Base plate, 450 mm (1' 5 1/2\") square, 8.0 kg (17.6 lb)";
  CHECK(feet(plate) == "Base plate, 1' 5 1/2\" square, 17.6 lb");
  CHECK(metric(plate) == "Base plate, 450 mm square, 8.0 kg");
  CHECK(feet("Keep 2.1 m (7 ft) of headroom.") == "Keep 7 ft of headroom.");
  CHECK(metric("Keep 2.1 m (7 ft) of headroom.") == "Keep 2.1 m of headroom.");
  CHECK(feet("at least 0.38 m (1' 3\") by 16 mm (5/8 in)") == "at least 1' 3\" by 5/8 in");
  CHECK(metric("at least 0.38 m (1' 3\") by 16 mm (5/8 in)") == "at least 0.38 m by 16 mm");
  CHECK(feet("Container, 10 l (2.6 gal)") == "Container, 2.6 gal");
}

TEST_CASE("brackets that hold no such measure stay, and so does what is told once") {
  for (const char* text : {"Nylon cord, 4 mm, 550 lb", "3 m (allowed)", "Arch (2)", "rod (7 ft)", "4 mm (2 m)", "1 m (",
                           "m (7 ft)", "(7 ft)", "8.0 kg (17.6 stones)", ""}) {
    CHECK(feet(text) == text);
    CHECK(metric(text) == text);
  }
}

}  // namespace
}  // namespace quadrille
