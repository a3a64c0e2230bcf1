// Edits change what they name and share the rest.
#include "studio/model/edits.hpp"

#include <doctest/doctest.h>

#include <set>

#include "sample_event.hpp"
#include "studio/model/palette.hpp"

using namespace quadrille;

TEST_CASE("an edit leaves the event it was given as it was") {
  const Event start = sample_event(), before = deep_copy(start);
  moved(start, "p1", 5, 1);
  with_value(start, "p2", "span", Value::of_number(Kind::length, 3));
  without_piece(start, "p3");
  with_site(start, "a1", Site{});
  CHECK(start == before);
}

TEST_CASE("areas and pieces that an edit does not name stay shared") {
  const Event start = sample_event();
  const Event after = moved(start, "p1", 5, 1);
  CHECK(!after.areas[0].shares_with(start.areas[0]));
  CHECK(!after.areas[0]->pieces[0].shares_with(start.areas[0]->pieces[0]));
  CHECK(after.areas[0]->pieces[1].shares_with(start.areas[0]->pieces[1]));
  CHECK(after.areas[1].shares_with(start.areas[1]));

  const Event fewer = without_piece(start, "p1");
  CHECK(fewer.areas[0]->pieces[0].shares_with(start.areas[0]->pieces[1]));
  CHECK(fewer.areas[1].shares_with(start.areas[1]));
}

TEST_CASE("equality looks at values, not at what is shared") {
  const Event start = sample_event();
  CHECK(deep_copy(start) == start);
  CHECK(!deep_copy(start).areas[0].shares_with(start.areas[0]));
  CHECK(!(moved(start, "p4", 3, 0.001) == start));
  CHECK(moved(start, "p4", 3, 0) == start);  // where it stood already
}

TEST_CASE("an id that is not there leaves the event as it is") {
  const Event start = sample_event();
  const Value value = Value::of_number(Kind::length, 9);
  CHECK(moved(start, "p9", 1, 1) == start);
  CHECK(with_value(start, "p9", "span", value) == start);
  CHECK(without_value(start, "p9", "span") == start);
  CHECK(without_value(start, "p1", "height") == start);
  CHECK(with_colour(start, "p9", 0, {"garden", "sky"}) == start);
  CHECK(renamed(start, "p9", "Other") == start);
  CHECK(without_piece(start, "p9") == start);
  CHECK(with_piece(start, "a9", sample_piece("p5", 0)) == start);
  CHECK(with_site(start, "a9", Site{}) == start);
}

TEST_CASE("each edit does what its name says") {
  const Event start = sample_event();
  const PlacedPiece piece = *find_piece(moved(start, "p3", 1.5, 0.5), "p3");
  CHECK(piece.x_m == 1.5);
  CHECK(piece.y_m == 0.5);
  CHECK(find_piece(with_value(start, "p3", "clusters", Value::of_number(Kind::count, 33)), "p3")->values.size() == 2);
  CHECK(find_piece(without_value(start, "p3", "span"), "p3")->values.empty());
  CHECK(find_piece(renamed(start, "p3", "Gate"), "p3")->name == "Gate");
  CHECK(find_piece(without_piece(start, "p3"), "p3") == nullptr);
  const Event more = with_piece(start, "a2", sample_piece("p5", 6));
  CHECK(more.areas[1]->pieces.back()->id == "p5");
  Site windy;
  windy.gust_m_s = 12;
  CHECK(with_site(start, "a2", windy).areas[1]->site.gust_m_s == 12.0);
  CHECK(with_area(start, Area{}).areas.size() == 3);
}

TEST_CASE("a colour beyond the slots there are leaves empty ones between") {
  const Event event = with_colour(sample_event(), "p1", 3, {"garden", "sky"});
  const auto& colours = find_piece(event, "p1")->colours;
  REQUIRE(colours.size() == 4);
  CHECK(colours[1].colour == "poppy");
  CHECK(colours[2] == ColourReference{});
  CHECK(colours[3].colour == "sky");
}

TEST_CASE("a free id is one that nothing bears, with the least number") {
  Event event = sample_event();
  CHECK(free_id(event, "p") == "p5");
  CHECK(free_id(without_piece(event, "p2"), "p") == "p2");
  CHECK(free_id(event, "a") == "a3");
  CHECK(free_id(event, "w") == "w1");
  event.areas[0].edit([](Area& area) {
    area.walkways.resize(1);
    area.walkways[0].id = "w1";
    area.structures.resize(1);
    area.structures[0].id = "p5";
  });
  CHECK(free_id(event, "w") == "w2");
  CHECK(free_id(event, "p") == "p6");
}

TEST_CASE("a colour is found by palette and colour, and only there") {
  Colour fern, sand;
  fern.key = "fern";
  fern.name = "Fern";
  sand.key = "sand";
  const std::vector<Palette> palettes{{"garden", "Garden", "USD", {fern}}, {"shore", "Shore", "USD", {sand}}};
  REQUIRE(find_colour(palettes, {"garden", "fern"}) != nullptr);
  CHECK(find_colour(palettes, {"garden", "fern"})->name == "Fern");
  CHECK(find_colour(palettes, {"garden", "sand"}) == nullptr);
  CHECK(find_colour(palettes, {"meadow", "fern"}) == nullptr);
}

TEST_CASE("ticking a line of the checklist and clearing it again is no change, and what is ticked twice is ticked") {
  const Event start = sample_event();
  const Event ticked = with_tick(start, "p1/ladders", true);
  CHECK(ticked.ticked.contains("p1/ladders"));
  CHECK(ticked != start);
  CHECK(with_tick(ticked, "p1/ladders", true) == ticked);
  CHECK(with_tick(ticked, "p1/ladders", false) == start);
  CHECK(with_tick(start, "no-such-line", false) == start);
}
