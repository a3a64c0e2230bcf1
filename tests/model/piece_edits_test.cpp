// Edits of one or several pieces, of areas and of what the event says.
#include "studio/model/piece_edits.hpp"

#include <doctest/doctest.h>

#include "sample_event.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/event_edits.hpp"

using namespace quadrille;

TEST_CASE("an edit of several pieces changes these and shares the others") {
  const Event start = sample_event();
  const PieceIds two{"p1", "p3", "p9"};
  const Event after = moved_by(start, two, 0.5, 0.25);
  CHECK(find_piece(after, "p1")->x_m == 0.5);
  CHECK(find_piece(after, "p3")->y_m == 0.25);
  CHECK(after.areas[0]->pieces[1].shares_with(start.areas[0]->pieces[1]));
  CHECK(find_piece(with_lock(start, two, true), "p3")->locked);
  CHECK_FALSE(find_piece(with_lock(start, two, true), "p2")->locked);
  CHECK(find_piece(with_hidden(start, two, true), "p1")->hidden);
  const Value span = Value::of_number(Kind::length, 3);
  CHECK(find_piece(with_values(start, two, "span", span), "p3")->values.at("span") == span);
  CHECK(find_piece(without_values(start, two, "span"), "p1")->values.empty());
  CHECK(find_piece(with_colours(start, two, 2, {"garden", "sky"}), "p3")->colours.at(2).colour == "sky");
  CHECK(without_pieces(start, two).areas[0]->pieces.size() == 1);
  CHECK(find_piece(without_pieces(start, two), "p4") != nullptr);
  CHECK(moved_by(start, {"p9"}, 1, 1) == start);
}

TEST_CASE("names count on") {
  Event event = sample_event();
  CHECK(free_name(event, "Column") == "Column");
  event = renamed(event, "p1", "Column");
  CHECK(free_name(event, "Column") == "Column 2");
  event = renamed(event, "p2", "Column 2");
  CHECK(free_name(event, "Column") == "Column 3");
  CHECK(free_name(event, "Column 2") == "Column 3");
  event = renamed(event, "p3", "2027");  // no name with a number behind it
  CHECK(free_name(event, "2027") == "2027 2");
  CHECK(free_name(event, "") == "");
}

TEST_CASE("lines are added, changed and taken away by their place") {
  const Event start = sample_event();
  SecuringLine line;
  line.tie = "front-1";
  const Event with = with_line(with_line(start, "p1", line), "p1", line);
  line.x_m = 2;
  const Event changed = with_changed_line(with, "p1", 1, line);
  CHECK(find_piece(changed, "p1")->lines[0].x_m == 0);
  CHECK(find_piece(changed, "p1")->lines[1].x_m == 2);
  CHECK(find_piece(without_line(changed, "p1", 0), "p1")->lines == std::vector<SecuringLine>{line});
  CHECK(with_changed_line(with, "p1", 2, line) == with);
  CHECK(without_line(with, "p1", 2) == with);
  CHECK(with_lines(with, "p1", {}) == start);
}

TEST_CASE("a piece goes to another area as it is") {
  const Event start = sample_event();
  const Event after = in_area(start, "p1", "a2");
  CHECK(after.areas[0]->pieces.size() == 1);
  REQUIRE(after.areas[1]->pieces.size() == 3);
  CHECK(*after.areas[1]->pieces.back() == *find_piece(start, "p1"));
  CHECK(in_area(start, "p1", "a1") == start);
  CHECK(in_area(start, "p1", "a9") == start);
}

TEST_CASE("areas are added, named, put in order and taken away") {
  const Event start = sample_event();
  const Event three = with_new_area(start, "Stairs");
  REQUIRE(three.areas.size() == 3);
  CHECK(three.areas[2]->name == "Stairs");
  CHECK(three.areas[2]->id != three.areas[0]->id);
  CHECK(three.areas[2]->id != three.areas[1]->id);
  CHECK(without_area(three, three.areas[2]->id) == start);
  CHECK(with_area_at(three, three.areas[2]->id, 0).areas[1]->id == "a1");
  CHECK(with_area_at(start, "a1", 99).areas[1]->id == "a1");
  CHECK(with_area_at(start, "a1", 0) == start);
  CHECK(find_area(renamed_area(start, "a2", "Garden"), "a2")->name == "Garden");
  CHECK(find_area(with_wall(start, "a1", 8.0, 3.0), "a1")->wall_width_m == 8.0);
  CHECK(find_area(start, "a9") == nullptr);
}

TEST_CASE("structures and walkways are added, replaced by id and taken away") {
  Structure tree;
  tree.name = "Oak";
  const Event with = with_structure(sample_event(), "a1", tree);
  REQUIRE(with.areas[0]->structures.size() == 1);
  tree = with.areas[0]->structures[0];
  CHECK_FALSE(tree.id.empty());
  tree.height_m = 9;
  const Event taller = with_structure(with, "a1", tree);
  REQUIRE(taller.areas[0]->structures.size() == 1);
  CHECK(taller.areas[0]->structures[0].height_m == 9);
  CHECK(without_structure(taller, "a1", tree.id) == sample_event());
  const Event paved = with_walkway(sample_event(), "a2", Walkway{});
  REQUIRE(paved.areas[1]->walkways.size() == 1);
  CHECK(without_walkway(paved, "a2", paved.areas[1]->walkways[0].id) == sample_event());
}

TEST_CASE("what the event says is changed without touching its areas") {
  const Event start = sample_event();
  EventFacts facts = facts_of(start);
  CHECK(with_facts(start, facts) == start);
  facts.client = "Ada Quill";
  facts.date = "2027-06-19";
  const Event after = with_facts(start, facts);
  CHECK(facts_of(after) == facts);
  CHECK(after.areas[0].shares_with(start.areas[0]));
  CHECK(with_palette(with_palette(start, "garden"), "garden").palettes == std::vector<std::string>{"garden"});
  CHECK(without_palette(with_palette(start, "garden"), "garden") == start);
  CHECK(without_assumption(with_assumption(start, "drag", 1.3), "drag") == start);
  CHECK(with_units(start, Units::metric).units == Units::metric);
}
