// Tables as RFC 4180 writes them.
#include "studio/command/csv.hpp"

#include <doctest/doctest.h>

namespace quadrille {
namespace {

TEST_CASE("cells are quoted as RFC 4180 says") {
  // RFC 4180, section 2: rules 1 (CRLF), 5 and 6 (quotes around cells with CRLF, quotes, commas), 7 ("b""bb"; its own
  // example, whose other cells need no quotes).
  CHECK(print_csv({{"aaa", "b\"bb", "ccc"}}) == "aaa,\"b\"\"bb\",ccc\r\n");
  CHECK(print_csv({{"aaa", "b\r\nbb", "ccc"}, {"zzz", "y,y", ""}}) == "aaa,\"b\r\nbb\",ccc\r\nzzz,\"y,y\",\r\n");
  CHECK(print_csv({}).empty());
}

TEST_CASE("cells that a spreadsheet would run are made harmless") {
  for (const char* cell : {"=1+1", "+1", "-1", "@sum", "\tx", "\rx"})
    CHECK(harmless_cell(cell) == "'" + std::string(cell));
  CHECK(harmless_cell("Fern = green") == "Fern = green");
  CHECK(harmless_cell("").empty());
}

}  // namespace
}  // namespace quadrille
