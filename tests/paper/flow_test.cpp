// Rows through columns.
#include "studio/paper/flow.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

namespace {

Row row(double height, std::vector<Rect>* seen) {
  return {height, [seen](Marks&, const Rect& at) { seen->push_back(at); }};
}

}  // namespace

TEST_CASE("rows fill a column, go on in the next, and say so there") {
  std::vector<Rect> heads, rows, again;
  Block block;
  block.head = {row(4, &heads)}, block.head_again = {row(4, &again)};
  for (int i = 0; i < 5; ++i) block.rows.push_back(row(5, &rows));
  const std::vector<Block> blocks{block};
  Marks marks;
  // 4 + 3 × 5 = 19 fill the first column of 20; the second holds the head and two rows.
  const std::vector<Rect> columns{{0, 10, 30, 20}, {40, 10, 30, 20}};
  const FlowPlace end = flow(blocks, {}, columns, &marks);
  CHECK(end.block == 1);
  REQUIRE(rows.size() == 5);
  CHECK(heads.size() == 1);
  CHECK(again.size() == 1);  // which says that the rows go on
  CHECK(rows[2] == Rect{0, 24, 30, 5});
  CHECK(rows[3] == Rect{40, 14, 30, 5});
  // One column of the same height stops after three rows, and the rest follows from there.
  const FlowPlace half = flow(blocks, {}, std::span(columns).first(1), nullptr);
  CHECK(half.block == 0);
  CHECK(half.row == 3);
  CHECK(flow(blocks, half, std::span(columns).first(1), nullptr).block == 1);
}

TEST_CASE("a head never stands alone at the foot of a column") {
  std::vector<Rect> heads, rows;
  Block first, second;
  first.rows = {row(12, &rows)};
  second.head = {row(4, &heads)}, second.rows = {row(6, &rows)}, second.gap = 2;
  const std::vector<Block> blocks{first, second};
  Marks marks;
  // 12 + 2 + 4 leave 2 of 20: too little for the row of 6.
  flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks);
  REQUIRE(heads.size() == 1);
  CHECK(heads[0].x == 38);
  CHECK(heads[0].y == 0);
}

TEST_CASE("the least height of columns is found") {
  std::vector<Rect> seen;
  Block block;
  for (int i = 0; i < 10; ++i) block.rows.push_back(row(5, &seen));
  const std::vector<Block> blocks{block};
  // Ten rows of 5 that belong together need 50, however many columns there are, unless none may be as high as that.
  CHECK(flow_height(blocks, {}, 2, 100) == doctest::Approx(50).epsilon(0.01));
  CHECK(flow_height(blocks, {}, 2, 40) == doctest::Approx(25).epsilon(0.01));
  CHECK(flow_height(blocks, {}, 3, 40) == doctest::Approx(20).epsilon(0.01));
  CHECK(flow_height(blocks, {}, 1, 30) == 30);
}

TEST_CASE("a block that fits into a column is not split") {
  // A key of four rows was split over two columns under the same heading twice: it read as two arches of 132 balloons.
  std::vector<Rect> heads, rows, again;
  Block first, second;
  first.rows = {row(8, &rows)};
  second.head = {row(4, &heads)}, second.head_again = {row(4, &again)}, second.gap = 2;
  for (int i = 0; i < 3; ++i) second.rows.push_back(row(5, &rows));
  const std::vector<Block> blocks{first, second};
  Marks marks;
  // 8 + 2 leave 10 of 20: room for the head and a row, but 4 + 3 × 5 = 19 go into the second column in one piece.
  const FlowPlace end = flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks);
  CHECK(end.block == 2);
  REQUIRE(heads.size() == 1);
  CHECK(heads[0].x == 38);
  CHECK(again.empty());
  // Columns are not made so short that a block must be split which a column of the full height could hold.
  const std::vector<Block> alone{second};
  CHECK(flow_height(alone, {}, 2, 100) == doctest::Approx(19).epsilon(0.01));
}

// The sum of a long table stood in a column of its own, under a heading that said that the table goes on.
TEST_CASE("a row that stays with the one before it never begins a column") {
  std::vector<Rect> rows;
  Block block;
  for (int i = 0; i < 5; ++i) block.rows.push_back(row(5, &rows));
  block.rows.back().with_before = true;
  const std::vector<Block> blocks{block};
  // Four rows fill a column of 20; the fourth must go on with the fifth.
  Marks marks;
  CHECK(flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks).block == 1);
  REQUIRE(rows.size() == 5);
  CHECK(rows[2].x == 0);
  CHECK(rows[3].x == 38);
  CHECK(rows[3].y == 0);
  CHECK(rows[4].y == 5);
  // Three columns of 5 hold a row each; the last two together never fit, and nothing is drawn over the edge.
  const FlowPlace end = flow(blocks, {}, columns_in({0, 0, 100, 5}, 6), nullptr);
  CHECK(end.block == 0);
  CHECK(end.row == 3);
}

TEST_CASE("pages were left half empty before a long checklist: a list that may be split begins where three rows fit") {
  std::vector<Rect> heads, rows, again;
  Block first, list;
  first.rows = {row(8, &rows)};
  list.head = {row(2, &heads)}, list.head_again = {row(2, &again)}, list.gap = 0, list.may_split = true;
  for (int i = 0; i < 5; ++i) list.rows.push_back(row(3, &rows));
  const std::vector<Block> blocks{first, list};
  Marks marks;
  // 8 leave 12 of 20: the head and three rows are 11.
  CHECK(flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks).block == 2);
  REQUIRE(heads.size() == 1);
  CHECK(heads[0].x == 0);
  CHECK(again.size() == 1);
  CHECK(rows[3].x == 0);
  CHECK(rows[4].x == 38);
  // 10 of 18 are too few for the head and three rows; two would look lost.
  heads.clear(), again.clear();
  CHECK(flow(blocks, {}, columns_in({0, 0, 68, 18}, 2), &marks).block == 2);
  CHECK(heads.at(0).x == 38);
  CHECK(again.empty());
}

TEST_CASE("half a page was left before charts of three strips: one strip suffices to begin with") {
  std::vector<Rect> rows;
  Block first, chart;
  first.rows = {row(8, &rows)};
  chart.gap = 0, chart.may_split = true, chart.beginning = 1;
  for (int i = 0; i < 3; ++i) chart.rows.push_back(row(6, &rows));
  const std::vector<Block> blocks{first, chart};
  Marks marks;
  // 8 leave 12 of 20: two strips of 6; with three to begin with all would stand in the second column.
  CHECK(flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks).block == 2);
  REQUIRE(rows.size() == 4);
  CHECK(rows[1] == Rect{0, 8, 30, 6});
  CHECK(rows[2] == Rect{0, 14, 30, 6});
  CHECK(rows[3] == Rect{38, 0, 30, 6});
}

TEST_CASE("a last page held nothing but lines to sign on: such a block takes what stands before it along") {
  std::vector<Rect> rows, heads, signs;
  Block words, sign;
  words.head = {row(2, &heads)}, words.head_again = words.head, words.gap = sign.gap = 0;
  for (int i = 0; i < 3; ++i) words.rows.push_back(row(4, &rows));
  sign.rows = {row(5, &signs)}, sign.with_before = true;
  Block before;
  before.rows = {row(4, &heads)};
  Marks marks;
  // 4 + 14 + 5 do not go into 20; 14 + 5 do, in the second column.
  const std::vector<Block> blocks{before, words, sign};
  CHECK(flow(blocks, {}, columns_in({0, 0, 68, 20}, 2), &marks).block == 3);
  CHECK(rows.at(0).x == 38);
  CHECK(signs.at(0).x == 38);
  // Where the two are more than a column, the last two rows go along.
  rows.clear(), signs.clear();
  words.rows.push_back(row(4, &rows));
  const std::vector<Block> longer{words, sign};
  CHECK(flow(longer, {}, columns_in({0, 0, 68, 20}, 2), &marks).block == 2);
  REQUIRE(rows.size() == 4);
  CHECK(rows[1].x == 0);
  CHECK(rows[2].x == 38);
  CHECK(signs.at(0).x == 38);
  CHECK(flow(longer, {}, columns_in({0, 0, 68, 23}, 2), &marks).block == 2);
  CHECK(signs.at(1).x == 0);
}

TEST_CASE("the last row of a long table stood alone under its heading: one more goes along") {
  std::vector<Rect> rows;
  Block block;
  for (int i = 0; i < 6; ++i) block.rows.push_back(row(5, &rows));
  Marks marks;
  // Five rows would fill the first column of 25.
  CHECK(flow(std::span(&block, 1), {}, columns_in({0, 0, 68, 25}, 2), &marks).block == 1);
  REQUIRE(rows.size() == 6);
  CHECK(rows[3].x == 0);
  CHECK(rows[4] == Rect{38, 0, 30, 5});
  CHECK(rows[5] == Rect{38, 5, 30, 5});
  // Columns of one row leave no choice.
  CHECK(flow(std::span(&block, 1), {}, columns_in({0, 0, 300, 5}, 6), nullptr).block == 1);
}
