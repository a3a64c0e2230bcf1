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

TEST_CASE("any pattern becomes the fewest rows that look the same") {
  for (const PatternKind kind :
       {PatternKind::solid, PatternKind::spiral, PatternKind::zigzag, PatternKind::stripes, PatternKind::diamond})
    for (int size = 2; size <= 6; ++size)
      for (int slots = 1; slots <= 4; ++slots)
        for (const int hand : {1, -1}) {
          PatternPlan plan;
          plan.kind = kind, plan.cluster_size = size, plan.slots = slots, plan.hand = hand, plan.band = 3;
          const auto laid = lay_pattern(plan, 25);
          const RowGrid grid = grid_of(laid, size, hand);
          const auto as_laid = unrolled(laid), as_typed = unrolled(grid, hand, 25);
          REQUIRE(as_laid.size() == as_typed.size());
          for (std::size_t i = 0; i < as_laid.size(); ++i) {
            CHECK(as_laid[i].row == as_typed[i].row);
            CHECK(as_laid[i].across == as_typed[i].across);
            CHECK(as_laid[i].slot == as_typed[i].slot);
          }
        }
  // By hand: a spiral is one row over and over, as it turns with the clusters; a solid one too.
  PatternPlan spiral;
  spiral.slots = 4;
  CHECK(text_of(grid_of(lay_pattern(spiral, 9), 4, 1)) == "ABCD");
  // Turned to the other hand throughout, each second row comes a place further back: back where it began after four.
  CHECK(grid_of(lay_pattern(spiral, 9), 4, -1).rows.size() == 4);
  CHECK(grid_of(lay_pattern(spiral, 9), 5, 1).rows.empty());
  CHECK(grid_of(std::vector<LaidCluster>{}, 4, 1).rows.empty());
}

TEST_CASE("choosing rows to be typed begins with those of the pattern that is built") {
  const PieceType& column = *types_here().find("column");
  const ParameterTables tables{{"column", &column.parameters}};
  Event event;
  event.areas.emplace_back();
  event.areas[0].edit([](Area& area) {
    area.id = "a1";
    for (const char* id : {"p1", "p2"}) {
      PlacedPiece piece;
      piece.id = id, piece.type = "column";
      piece.values["slots"] = Value::of_number(Kind::slots, 3);
      area.pieces.emplace_back(std::move(piece));
    }
    area.pieces[1].edit([](PlacedPiece& typed) { typed.values["rows"] = Value::of_text(Kind::rows, "AABB"); });
  });
  BuiltEvent built;
  for (const char* id : {"p1", "p2"}) built[id] = build_piece(column, find_piece(event, id)->values);
  const Form form = form_of(event, {"p1", "p2"}, tables);
  const Event chosen = with_field(event, form, tables, "pattern", Value::of_text(Kind::choice, "rows"));
  const Event begun = with_rows_begun(chosen, form, tables, "pattern", built);
  // By hand: of three colours on four balloons the one that is there twice lies opposite itself, ABAC; a spiral is that row
  // over and over.
  CHECK(find_piece(begun, "p1")->values.at("rows").text == "ABAC");
  CHECK(find_piece(begun, "p2")->values.at("rows").text == "AABB");  // what somebody typed stays
  CHECK(build_piece(column, find_piece(begun, "p1")->values)->status == Status::ok);
  // Another choice, another field, and pieces that are not built type nothing.
  CHECK(with_rows_begun(event, form, tables, "pattern", built) == event);
  CHECK(with_rows_begun(chosen, form, tables, "hand", built) == chosen);
  CHECK(with_rows_begun(chosen, form, tables, "pattern", {}) == chosen);
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
