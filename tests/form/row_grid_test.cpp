// The pattern editor's grid, and patterns unrolled into cells.
#include "studio/form/row_grid.hpp"

#include "studio/host/builder.hpp"
#include "tables.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("text becomes a grid and a grid text") {
  const RowGrid grid = *grid_of("aabb, ABBA/C", 4);
  CHECK(grid.rows == std::vector<SlotRow>{{0, 0, 1, 1}, {0, 1, 1, 0}, {2, 2, 2, 2}});
  CHECK(text_of(grid) == "AABB ABBA CCCC");
  CHECK(slots_in(grid) == 3);
  CHECK(grid_of("", 4)->rows.empty());
  CHECK_FALSE(grid_of("AAGG", 4));
  // The cluster's size was changed behind the rows: they can still be edited.
  CHECK(text_of(*grid_of("AABB", 3)) == "AAB");
  CHECK(text_of(*grid_of("AB", 4)) == "ABBB");
  CHECK(rc::check("text becomes a grid", [] {
    RowGrid any;
    any.places = *rc::gen::inRange(2, 7);
    const int count = *rc::gen::inRange(0, 8);
    for (int i = 0; i < count; ++i) {
      any.rows.emplace_back();
      for (int k = 0; k < any.places; ++k)
        any.rows.back().push_back(static_cast<std::uint32_t>(*rc::gen::inRange(0, 6)));
    }
    RC_ASSERT(*grid_of(text_of(any), any.places) == any);
  }));
}

TEST_CASE("rows are added, taken away, coloured and turned round the rod") {
  const RowGrid grid = *grid_of("ABCD AAAA", 4);
  CHECK(text_of(with_grid_row(grid, 0)) == "ABCD ABCD AAAA");
  CHECK(text_of(with_grid_row(*grid_of("", 3), 0)) == "AAA");
  CHECK(text_of(without_grid_row(grid, 0)) == "AAAA");
  CHECK(text_of(with_slot(grid, 1, 2, 5)) == "ABCD AAFA");
  CHECK(text_of(rotated(grid, 0, 1)) == "DABC AAAA");
  CHECK(text_of(rotated(grid, 0, -1)) == "BCDA AAAA");
  CHECK(rotated(rotated(grid, 0, 3), 0, -3) == grid);
  CHECK(rotated_all(grid, 4) == grid);
  CHECK(without_grid_row(grid, 2) == grid);
  CHECK(with_slot(grid, 0, 4, 1) == grid);
  CHECK(with_slot(grid, 0, 0, 6) == grid);
}

TEST_CASE("unrolled, every second row stands half a place aside and each place once") {
  const RowGrid grid = *grid_of("ABCD", 4);
  const auto cells = unrolled(grid, 1, 3);
  REQUIRE(cells.size() == 12);
  // By hand: a quad turned by 45 degrees, half of a quarter turn, per row.
  const double across[] = {0, 1, 2, 3, 0.5, 1.5, 2.5, 3.5, 0, 1, 2, 3};
  const std::uint32_t right[] = {0, 1, 2, 3, 0, 1, 2, 3, 3, 0, 1, 2};  // the third row is turned by a whole place
  const std::uint32_t left[] = {0, 1, 2, 3, 1, 2, 3, 0, 1, 2, 3, 0};
  const auto other = unrolled(grid, -1, 3);
  for (std::size_t i = 0; i < 12; ++i) {
    CHECK(cells[i].row == i / 4);
    CHECK(cells[i].across == across[i]);
    CHECK(cells[i].slot == right[i]);
    CHECK(other[i].across == across[i]);
    CHECK(other[i].slot == left[i]);
  }
  CHECK(unrolled(*grid_of("", 4), 1, 3).empty());
}

TEST_CASE("the picture of a built column has a cell for each balloon of its body") {
  const auto built = build_piece(*types_here().find("column"), {});
  REQUIRE(built->status == Status::ok);
  const auto cells = unrolled(built->piece);
  CHECK(cells.size() == built->piece.balloons.size());  // without topper and collar all are of the body
  for (const PatternCell& cell : cells) {
    CHECK(cell.across >= 0);
    CHECK(cell.across < 4);
  }
  const ParameterTable& table = types_here().find("column")->parameters;
  CHECK(places_in(table, {}) == 4);
  CHECK(places_in(table, {{"cluster-size", Value::of_number(Kind::count, 5)}}) == 5);
}
