// Every kind of sheet is found by its name and makes pages of the same event.
#include "studio/sheets/sheet_kinds.hpp"

#include <doctest/doctest.h>

#include <set>

#include "tests/drawing/sample.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

TEST_CASE("every kind of sheet is found by its key and gives whole pages") {
  const auto job = sample::one_arch();
  const EventCount count = job.count();
  std::set<std::string_view> keys;
  for (const SheetKind& kind : sheet_kinds()) {
    CAPTURE(kind.key);
    CHECK(keys.insert(kind.key).second);
    CHECK(find_sheet_kind(kind.key) == &kind);
    const auto pages = kind.pages({job.event, job.built, count, job.palettes}, {});
    CHECK(!pages.empty());
    for (const Page& page : pages) check_page(page);
  }
  CHECK(find_sheet_kind("ELEVATION") == nullptr);
  CHECK(find_sheet_kind("") == nullptr);
}
