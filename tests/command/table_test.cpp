// Columns line up whatever stands in them.
#include "studio/command/table.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

TEST_CASE("columns are as wide as their widest cell, counted in characters") {
  // By hand: the widest of the first column has six characters ("Größen"), of the second three.
  CHECK(print_table({"name", "n"}, {{"Größen", "7"}, {"ab", "120"}}, {Align::left, Align::right}) ==
        "  name      n\n"
        "  Größen    7\n"
        "  ab      120\n");
}

TEST_CASE("a line end in a cell cannot break the table") { CHECK(print_table({"a"}, {{"x\ny"}}) == "  a\n  x y\n"); }

}  // namespace
}  // namespace quadrille
