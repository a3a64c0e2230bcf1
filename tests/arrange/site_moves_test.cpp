// Dragging what stands in an area. Expected places are reckoned by hand: steps of 5 cm, or of 2 in.
#include "studio/arrange/site_moves.hpp"

#include <doctest/doctest.h>

#include <rapidcheck.h>

#include "studio/model/area_edits.hpp"

using namespace quadrille;

namespace {

Event event_with(Units units = Units::metric) {
  PlacedPiece piece;
  piece.id = "p1", piece.name = "Arch", piece.x_m = 3;
  SecuringLine stake, tied;
  stake.tie = "front-1", stake.x_m = 0.1, stake.y_m = -2;
  tied.tie = "back-1", tied.anchor = AnchorKind::structure, tied.structure = "s1", tied.height_m = 1;
  piece.lines = {stake, tied};
  Area area;
  area.id = "a1";
  area.structures = {{"s1", "Post", StructureKind::post, 6, 0.333, 2, "", {}}};
  area.walkways = {{"w1", "Path", 0, -4, 8, 1.5, {}}};
  area.site.outlet_m = 12;
  area.pieces = {piece};
  Event event;
  event.units = units;
  event.areas = {area};
  return event;
}

const SiteObject post{SiteObjectKind::structure, "s1"}, path{SiteObjectKind::walkway, "w1"},
    outlet{SiteObjectKind::outlet, {}}, stake{SiteObjectKind::line, "p1", 0}, tied{SiteObjectKind::line, "p1", 1},
    piece{SiteObjectKind::piece, "p1"};

Area dragged(const Event& event, const SiteObject& object, SiteGrip grip, const Way& way, bool fine = false) {
  return *dragged_object(event, "a1", object, grip, way, fine).areas[0];
}

}  // namespace

TEST_CASE("a structure lands on whole steps, and what is not moved keeps its odd place") {
  const Area moved = dragged(event_with(), post, SiteGrip::whole, {1.23, 0});
  CHECK(moved.structures[0].x_m == 7.25);   // 7.23
  CHECK(moved.structures[0].y_m == 0.333);  // no way in depth
  CHECK(dragged(event_with(), post, SiteGrip::whole, {1.234, 0}, true).structures[0].x_m == 7.23);
  // 6 m and 1.23 m are 284.6 in: 284 in.
  const double feet = dragged(event_with(Units::feet), post, SiteGrip::whole, {1.23, 0}).structures[0].x_m;
  CHECK(feet == doctest::Approx(284 * 0.0254).epsilon(1e-12));
}

TEST_CASE("a walkway is moved as a whole or pulled by an edge, and never turned inside out") {
  const Event event = event_with();
  CHECK(dragged(event, path, SiteGrip::whole, {1, -1}).walkways[0] == Walkway{"w1", "Path", 1, -5, 8, 1.5, {}});
  CHECK(dragged(event, path, SiteGrip::left, {1, 9}).walkways[0] == Walkway{"w1", "Path", 1, -4, 7, 1.5, {}});
  CHECK(dragged(event, path, SiteGrip::right, {1, 9}).walkways[0] == Walkway{"w1", "Path", 0, -4, 9, 1.5, {}});
  CHECK(dragged(event, path, SiteGrip::front, {9, -1}).walkways[0] == Walkway{"w1", "Path", 0, -5, 8, 2.5, {}});
  CHECK(dragged(event, path, SiteGrip::back, {9, 1}).walkways[0] == Walkway{"w1", "Path", 0, -4, 8, 2.5, {}});
  // What an edge is not pulled along keeps its odd figures.
  Event odd = event;
  odd.areas[0].edit([](Area& area) { area.walkways[0] = {"w1", "Path", 0.333, -4.444, 8.111, 1.511, {}}; });
  const Walkway as_it_was = odd.areas[0]->walkways[0];
  for (const SiteGrip across : {SiteGrip::left, SiteGrip::right})
    CHECK(dragged(odd, path, across, {0, 1}).walkways[0] == as_it_was);
  for (const SiteGrip in_depth : {SiteGrip::front, SiteGrip::back})
    CHECK(dragged(odd, path, in_depth, {1, 0}).walkways[0] == as_it_was);
  rc::check("any pull of any edge leaves a walkway at least a step wide and deep", [&] {
    const auto cm = [] { return *rc::gen::inRange(-2000, 2000) / 100.0; };
    const auto grip = static_cast<SiteGrip>(*rc::gen::inRange(0, 5));
    const Way way{cm(), cm()};
    const Walkway pulled = dragged(event, path, grip, way).walkways[0];
    RC_ASSERT(pulled.width_m > 0.0499);
    RC_ASSERT(pulled.depth_m > 0.0499);
    // The edge that is not held stays.
    if (grip == SiteGrip::left) RC_ASSERT(std::abs(pulled.x_m + pulled.width_m - 8) < 1e-9);
    if (grip == SiteGrip::back) RC_ASSERT(pulled.y_m == -4);
  });
}

TEST_CASE("a stake moves with its line; a line that is tied to a structure follows that alone") {
  const Event event = event_with();
  const SecuringLine moved = dragged(event, stake, SiteGrip::whole, {0.5, -0.5}).pieces[0]->lines[0];
  CHECK(moved.x_m == 0.6);
  CHECK(moved.y_m == -2.5);
  CHECK(dragged_object(event, "a1", tied, SiteGrip::whole, {1, 1}, false) == event);
}

TEST_CASE("the outlet's ring is pulled to another distance") {
  // Held 12 m to the right of the one piece: 4 m less to the right and 6 m back is 8 and 6 m away, which is 10.
  CHECK(*dragged(event_with(), outlet, SiteGrip::whole, {-4, 6}).site.outlet_m == 10);
}

TEST_CASE("a drag that leads back changes nothing, nor does one of what is locked or gone") {
  Event event = event_with();
  for (const SiteObject& object : {post, path, outlet, stake, piece})
    CHECK(dragged_object(event, "a1", object, SiteGrip::whole, {0, 0}, false) == event);
  CHECK(dragged_object(event, "a1", {SiteObjectKind::line, "p1", 7}, SiteGrip::whole, {1, 1}, false) == event);
  CHECK(dragged_object(event, "a2", post, SiteGrip::whole, {1, 1}, false) == event);
  CHECK(dragged(event, piece, SiteGrip::whole, {1, 2}).pieces[0]->y_m == 2);
  event.areas[0].edit([](Area& area) { area.pieces[0].edit([](PlacedPiece& it) { it.locked = true; }); });
  CHECK(dragged_object(event, "a1", piece, SiteGrip::whole, {1, 2}, false) == event);
}
