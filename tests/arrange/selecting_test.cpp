// What presses, clicks and keys select.
#include "studio/arrange/selecting.hpp"

#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

TEST_CASE("a press takes the frontmost, but keeps a selection that it hits, so that it can be dragged as a whole") {
  CHECK(pressed({}, {"a", "b"}, false) == PieceIds{"a"});
  CHECK(pressed({"c"}, {"a", "b"}, false) == PieceIds{"a"});
  CHECK(pressed({"c", "b"}, {"a", "b"}, false) == PieceIds{"c", "b"});  // what lies below was chosen before
  CHECK(pressed({"c"}, {"a"}, true) == PieceIds{"c", "a"});
  CHECK(pressed({"a", "c"}, {"a"}, true) == PieceIds{"a", "c"});
  CHECK(pressed({"c"}, {}, false) == PieceIds{"c"});
}

TEST_CASE("clicks at one place go down through what is covered, and begin again at the front") {
  const PieceIds under{"a", "b", "c"};
  PieceIds selected = clicked({}, under, false, false);
  CHECK(selected == PieceIds{"a"});
  for (const char* next : {"b", "c", "a", "b"}) {
    selected = clicked(selected, under, false, true);
    CHECK(selected == PieceIds{next});
  }
  CHECK(clicked({"b"}, under, false, false) == PieceIds{"a"});      // at another place
  CHECK(clicked({"b", "z"}, under, false, true) == PieceIds{"a"});  // out of several
  CHECK(clicked({"b"}, {}, false, false).empty());
}

TEST_CASE("with Shift or Ctrl a click puts the frontmost in or takes it out") {
  CHECK(clicked({"x"}, {"a", "b"}, true, false) == PieceIds{"x", "a"});
  CHECK(clicked({"x", "a"}, {"a", "b"}, true, true) == PieceIds{"x"});
  CHECK(clicked({"x"}, {}, true, false) == PieceIds{"x"});
  rc::check("twice is never", [] {
    const Venue venue = any_blocks(2, 8);
    const PieceIds all = all_ids(venue);
    const PieceIds before(all.begin() + 1, all.end());
    RC_ASSERT(clicked(clicked(before, all, true, false), all, true, false) == before);
  });
}

TEST_CASE("what is added to a selection comes behind it, each once") {
  CHECK(with_more({"a", "b"}, {"b", "c", "c"}) == PieceIds{"a", "b", "c"});
}

TEST_CASE("the keyboard goes from piece to piece as they stand from left to right, and leaves at the ends") {
  Venue venue;
  venue.block("right", 9, 1).block("left", 1, 1).block("middle-behind", 5, 1, 1).block("middle", 5, 1, 0);
  venue.block("unseen", 3, 1);
  venue.event = with_hidden(venue.event, {"unseen"}, true);
  venue.event = with_lock(venue.event, {"middle"}, true);  // can be selected all the same
  CHECK(shown_pieces(venue.area()) == PieceIds{"left", "middle", "middle-behind", "right"});
  CHECK(piece_beside(venue.area(), {}, 1) == "left");
  CHECK(piece_beside(venue.area(), {}, -1) == "right");
  CHECK(piece_beside(venue.area(), {"right", "left"}, 1) == "middle");  // from the one picked last
  CHECK(piece_beside(venue.area(), {"middle-behind"}, -1) == "middle");
  CHECK(piece_beside(venue.area(), {"right"}, 1).empty());
  CHECK(piece_beside(venue.area(), {"left"}, -1).empty());
  CHECK(piece_beside(venue.area(), {"unseen"}, 1) == "left");
  CHECK(piece_beside(Venue().area(), {}, 1).empty());
}
