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

TEST_CASE("text is folded at blanks, and a word too long for a line has one of its own") {
  CHECK(folded("one two three", 7) == std::vector<std::string>{"one two", "three"});
  CHECK(folded("unbreakable word", 4) == std::vector<std::string>{"unbreakable", "word"});
  CHECK(folded("", 4) == std::vector<std::string>{""});
  CHECK(folded("\u00e9\u00e9 \u00e9", 4) == std::vector<std::string>{"\u00e9\u00e9 \u00e9"});  // characters, not bytes
}

TEST_CASE("a folded cell goes on in rows that are otherwise empty") {
  CHECK(with_folded({{"one two three", "5"}, {"four", "6"}}, 0, 7) ==
        std::vector<std::vector<std::string>>{{"one two", "5"}, {"  three", ""}, {"four", "6"}});
}

}  // namespace
}  // namespace quadrille
