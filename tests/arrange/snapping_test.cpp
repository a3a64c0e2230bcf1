// Where a dragged body comes to lie. Expected places are worked out by hand from the sizes of the blocks.
#include "studio/arrange/moving.hpp"
#include "studio/model/history.hpp"
#include "venue.hpp"

using namespace quadrille;
using namespace quadrille::testing;

namespace {

std::vector<std::string> words(const std::vector<Guide>& guides) {
  std::vector<std::string> all;
  for (const Guide& guide : guides) all.push_back(guide.words);
  return all;
}

Moved drag(const Venue& venue, const PieceIds& pieces, double right, double tolerance = 0.05) {
  return dragged(venue.event, pieces, venue.built, {right, 0}, {true, tolerance, false});
}

}  // namespace

TEST_CASE("edges and centres of other pieces draw") {
  Venue venue;
  venue.block("p", 0, 0.4).block("q", 5, 1);  // q from 4.5 to 5.5
  // p's right edge to q's left one: 4.5 - 0.2 = 4.3
  CHECK(find_piece(drag(venue, {"p"}, 4.27).event, "p")->x_m == doctest::Approx(4.3).epsilon(1e-12));
  // left edge to left edge: 4.7; the middles are farther away, at 5
  CHECK(drag(venue, {"p"}, 4.68).right_m == doctest::Approx(4.7).epsilon(1e-12));
  CHECK(words(drag(venue, {"p"}, 5.04).guides) == std::vector<std::string>{"middle of Piece q"});
  CHECK(drag(venue, {"p"}, 5.04).right_m == doctest::Approx(5).epsilon(1e-12));
  CHECK(drag(venue, {"p"}, 3.2).right_m == 3.2);  // nothing is near
  CHECK(drag(venue, {"p"}, 3.2).guides.empty());
}

TEST_CASE("with snapping off, or no tolerance, a drag goes where the pointer goes") {
  Venue venue;
  venue.block("p", 0, 0.4).block("q", 5, 1);
  const Moved off = dragged(venue.event, {"p"}, venue.built, {4.27, 0}, {false, 0.05, false});
  CHECK(off.right_m == 4.27);
  CHECK(off.guides.empty());
  CHECK(drag(venue, {"p"}, 4.27, 0).right_m == 4.27);
}

TEST_CASE("the wall's ends and its middle draw") {
  Venue venue;
  venue.block("p", 1, 0.4);
  Area area = venue.area();
  area.wall_width_m = 8;
  venue.event.areas[0] = area;
  CHECK(find_piece(drag(venue, {"p"}, 3.02).event, "p")->x_m == doctest::Approx(4).epsilon(1e-12));
  CHECK(words(drag(venue, {"p"}, 3.02).guides) == std::vector<std::string>{"middle of the wall"});
  CHECK(find_piece(drag(venue, {"p"}, -0.83).event, "p")->x_m == doctest::Approx(0.2).epsilon(1e-12));
  CHECK(find_piece(drag(venue, {"p"}, 6.83).event, "p")->x_m == doctest::Approx(7.8).epsilon(1e-12));
}

TEST_CASE("without a wall the middle between the other pieces draws") {
  Venue venue;
  venue.block("l", 0, 1).block("r", 7, 1).block("p", 2, 0.4);
  const Moved moved = drag(venue, {"p"}, 1.53);
  CHECK(moved.right_m == doctest::Approx(1.5).epsilon(1e-12));
  // There the gaps are equal as well: 3.5 - 0.2 - 0.5 = 2.8 on either side.
  CHECK(words(moved.guides) == std::vector<std::string>{"middle of the pieces", "same gap 2.80 m"});
}

TEST_CASE("a body comes to lie midway between its neighbours, which need not be of one size") {
  Venue venue;
  venue.block("l", 0, 1).block("r", 6, 3).block("far", 20, 1).block("p", 2, 0.4);
  // l ends at 0.5, r begins at 4.5: 4 m less 0.4 m are two gaps of 1.8 m; p's middle is at 0.5 + 1.8 + 0.2 = 2.5.
  const Moved moved = drag(venue, {"p"}, 0.47);
  CHECK(find_piece(moved.event, "p")->x_m == doctest::Approx(2.5).epsilon(1e-12));
  REQUIRE(moved.guides.size() == 1);
  const Guide& guide = moved.guides[0];
  CHECK(guide.kind == GuideKind::gap);
  CHECK(guide.words == "same gap 1.80 m");
  REQUIRE(guide.gaps.size() == 2);
  CHECK(guide.gaps[0].from_m == doctest::Approx(0.5));
  CHECK(guide.gaps[0].to_m == doctest::Approx(2.3));
  CHECK(guide.gaps[1].from_m == doctest::Approx(2.7));
  CHECK(guide.gaps[1].to_m == doctest::Approx(4.5));
}

TEST_CASE("a body takes up the gap that the next pair has") {
  Venue venue;
  // Columns of 0.4 m at 0 and 1.6: a gap of 1.2 m. The next one goes to 1.6 + 0.2 + 1.2 + 0.2 = 3.2.
  venue.block("a", 0, 0.4).block("b", 1.6, 0.4).block("p", 2.5, 0.4);
  const Moved moved = drag(venue, {"p"}, 0.72);
  CHECK(find_piece(moved.event, "p")->x_m == doctest::Approx(3.2).epsilon(1e-12));
  CHECK(words(moved.guides) == std::vector<std::string>{"same gap 1.20 m"});
  venue.event.units = Units::feet;  // 1.2 m is 47.24 in, to the nearest half inch 47
  CHECK(words(drag(venue, {"p"}, 0.72).guides) == std::vector<std::string>{"same gap 3' 11\""});
  // And to the left of the pair, at -1.6.
  CHECK(find_piece(drag(venue, {"p"}, -4.08).event, "p")->x_m == doctest::Approx(-1.6).epsilon(1e-12));
}

TEST_CASE("structures draw by their middle and, where their width is known, by their edges") {
  Venue venue;
  venue.block("p", 0, 0.4);
  Area area = venue.area();
  Structure table;
  table.id = "s1", table.name = "Cake table", table.x_m = 3, table.width_m = 1.8, table.y_m = 1;
  area.structures = {table};
  venue.event.areas[0] = area;
  const Moved middle = drag(venue, {"p"}, 3.03);
  CHECK(middle.right_m == doctest::Approx(3).epsilon(1e-12));
  CHECK(words(middle.guides) == std::vector<std::string>{"middle of Cake table"});
  CHECK(drag(venue, {"p"}, 4.08).right_m == doctest::Approx(4.1).epsilon(1e-12));  // 3 + 0.9 + 0.2
  const Moved deep = dragged(venue.event, {"p"}, venue.built, {0, 0.97}, {true, 0.05, true});
  CHECK(deep.back_m == doctest::Approx(1).epsilon(1e-12));
  CHECK(words(deep.guides) == std::vector<std::string>{"in line with Cake table"});
}

TEST_CASE("in depth the front line and the depth of other pieces draw, and only where depth is dragged") {
  Venue venue;
  venue.block("p", 0, 0.4, 0.5).block("q", 5, 1, -0.7);
  const auto back = [&](double by) {
    return dragged(venue.event, {"p"}, venue.built, {0, by}, {true, 0.05, true}).back_m;
  };
  CHECK(back(-0.52) == doctest::Approx(-0.5).epsilon(1e-12));
  CHECK(back(-1.17) == doctest::Approx(-1.2).epsilon(1e-12));
  CHECK(dragged(venue.event, {"p"}, venue.built, {0, -0.52}, {true, 0.05, false}).back_m == -0.52);
}

TEST_CASE("several pieces move as a body, locked ones stay, and neither draws the others of the body") {
  Venue venue;
  venue.block("p", 0, 0.4).block("q", 1, 0.4).block("r", 6, 0.4).block("locked", 12, 0.4);
  venue.event = with_lock(venue.event, {"locked"}, true);
  // The body is from -0.2 to 1.2; its right edge comes to r's left one at 5.8.
  const Moved moved = drag(venue, {"p", "q", "locked"}, 4.62);
  CHECK(find_piece(moved.event, "p")->x_m == doctest::Approx(4.6).epsilon(1e-12));
  CHECK(find_piece(moved.event, "q")->x_m == doctest::Approx(5.6).epsilon(1e-12));
  CHECK(find_piece(moved.event, "locked")->x_m == 12);
  CHECK(movable(venue.event, {"p", "locked", "nobody"}) == PieceIds{"p"});
}

TEST_CASE("hidden pieces draw nothing") {
  Venue venue;
  venue.block("p", 0, 0.4).block("q", 5, 1);
  venue.event = with_hidden(venue.event, {"q"}, true);
  CHECK(drag(venue, {"p"}, 4.27).right_m == 4.27);
}

TEST_CASE("snapping never takes a body farther than the tolerance, keeps its shape, and is reached again from there") {
  CHECK(rc::check("snapping never takes a", [] {
    const Venue venue = any_blocks(2, 8);
    const PieceIds ids = all_ids(venue);
    const PieceIds body(ids.begin(),
                        ids.begin() + *rc::gen::inRange<std::ptrdiff_t>(1, static_cast<std::ptrdiff_t>(ids.size())));
    const Way way{any(-8, 8), any(-2, 2)};
    const SnapRules rules{true, any(0, 0.3), true};
    const Moved moved = dragged(venue.event, body, venue.built, way, rules);
    RC_ASSERT(std::abs(moved.right_m - way.right_m) <= rules.tolerance_m + 1e-9);
    RC_ASSERT(std::abs(moved.back_m - way.back_m) <= rules.tolerance_m + 1e-9);
    for (const std::string& id : body) {
      RC_ASSERT(std::abs(find_piece(moved.event, id)->x_m - venue.piece(id).x_m - moved.right_m) < 1e-9);
      RC_ASSERT(std::abs(find_piece(moved.event, id)->y_m - venue.piece(id).y_m - moved.back_m) < 1e-9);
    }
    // What it came to lie against holds it: from there it is drawn no farther.
    const Moved again = dragged(venue.event, body, venue.built, {moved.right_m, moved.back_m}, rules);
    RC_ASSERT(std::abs(again.right_m - moved.right_m) < 1e-6);
    RC_ASSERT(std::abs(again.back_m - moved.back_m) < 1e-6);
  }));
}

TEST_CASE("moved there and back again is where it was") {
  CHECK(rc::check("moved there and back", [] {
    const Venue venue = any_blocks(1, 6);
    const Way way{any(-50, 50), any(-9, 9)};
    const SnapRules off{false, 0, true};
    const Moved there = dragged(venue.event, all_ids(venue), venue.built, way, off);
    const Moved back = dragged(there.event, all_ids(venue), venue.built, {-way.right_m, -way.back_m}, off);
    for (const auto& piece : venue.area().pieces) {
      RC_ASSERT(std::abs(find_piece(back.event, piece->id)->x_m - piece->x_m) < 1e-9);
      RC_ASSERT(std::abs(find_piece(back.event, piece->id)->y_m - piece->y_m) < 1e-9);
    }
  }));
}

TEST_CASE("a drag is one step however often the mouse moves, and undone it never was") {
  CHECK(rc::check("a drag is one", [] {
    const Venue venue = any_blocks(2, 6);
    History history(venue.event);
    const PieceIds body{"p1", "p2"};
    const int moves = *rc::gen::inRange(1, 20);
    for (int i = 0; i < moves; ++i)
      history.amend("Move", dragged(venue.event, body, venue.built, {any(-5, 5), any(-1, 1)}, {true, 0.1, true}).event);
    const Event last = history.event();
    history.settle();
    if (history.can_undo()) history.undo();
    RC_ASSERT(history.event() == venue.event);
    RC_ASSERT(!history.can_undo());
    if (history.can_redo()) history.redo();
    RC_ASSERT(history.event() == last);
  }));
}
