// Adding to and taking from what stands in an area.
#include "studio/model/site_edits.hpp"

#include <doctest/doctest.h>

#include "sample_event.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/piece_edits.hpp"
#include "studio/model/securing.hpp"

using namespace quadrille;

namespace {

Piece tied_piece() {
  Piece piece;
  piece.tie_points = {{0, TiePurpose::back, {0, 0, 3}, "top"},
                      {0, TiePurpose::front, {0, 0, 3}, "top"},
                      {0, TiePurpose::side, {-1, 0, 2.31}, "left"}};
  return piece;
}

}  // namespace

TEST_CASE("what is added has an id and a name of its own, and taking it away leaves the event as it was") {
  const Event start = sample_event();
  const std::string area = start.areas[0]->id;
  const auto post = with_new_structure(start, area, {2, -1});
  REQUIRE(post);
  const auto second = with_new_structure(post->event, area, {3, -1});
  REQUIRE(second);
  const Area& there = *second->event.areas[0];
  CHECK(there.structures.back().name == "Post 2");
  CHECK(there.structures.back().id != there.structures[there.structures.size() - 2].id);
  CHECK(find_structure(there, post->object.id)->x_m == 2);
  CHECK(find_structure(there, post->object.id)->allowed_by.empty());  // nobody has allowed anything yet
  CHECK(without_object(without_object(second->event, area, second->object), area, post->object) == start);
  const auto walkway = with_new_walkway(start, area, {4, -3});
  REQUIRE(walkway);
  const Walkway& strip = walkway->event.areas[0]->walkways.back();
  CHECK(strip.x_m + strip.width_m / 2 == doctest::Approx(4));
  CHECK(strip.y_m + strip.depth_m / 2 == doctest::Approx(-3));
  CHECK(without_object(walkway->event, area, walkway->object) == start);
  CHECK(!with_new_structure(start, "no-such-area", {0, 0}));
}

TEST_CASE("lines are added at tie points that have none: to the front, to the back, aside") {
  Event event = sample_event();
  const std::string area = event.areas[0]->id, piece = event.areas[0]->pieces[0]->id;
  event.areas[0].edit([](Area& it) { it.site.ground = Ground::grass; });
  event = with_lines(event, piece, {});
  const Piece built = tied_piece();
  for (const char* tie : {"front-1", "back-1", "side-1", "front-1"}) {
    const auto added = with_new_line(event, area, piece, built);
    REQUIRE(added);
    event = added->event;
    const SecuringLine& line = find_piece(event, piece)->lines.back();
    CHECK(line.tie == tie);
    CHECK(line.anchor == AnchorKind::stake);
    CHECK(added->object == SiteObject{SiteObjectKind::line, piece, find_piece(event, piece)->lines.size() - 1});
  }
  const std::vector<SecuringLine>& lines = find_piece(event, piece)->lines;
  // As far out as the tie point is high: 45°.
  CHECK(lines[0].y_m == -3);
  CHECK(lines[1].y_m == 3);
  CHECK(lines[2].x_m == doctest::Approx(-1 - 2.4));  // 2.31 m, to the next 10 cm
  event.areas[0].edit([](Area& it) { it.site.ground = Ground::concrete; });
  const auto heavy = with_new_line(event, area, piece, built);
  CHECK(find_piece(heavy->event, piece)->lines.back().anchor == AnchorKind::dead_weight);
  CHECK(find_piece(heavy->event, piece)->lines.back().mass_kg > 0);
  CHECK(!with_new_line(event, area, piece, Piece{}));
  const auto there = with_new_line(moved(event, piece, 2, 1), area, piece, built, SitePlace{1.5, -2});
  CHECK(find_piece(there->event, piece)->lines.back().x_m == -0.5);  // from the piece's place
  CHECK(find_piece(there->event, piece)->lines.back().y_m == -3);
  CHECK(!with_new_line(event, area, "p99", built));
}

TEST_CASE("a line that ends at something else gets what that needs, and can run") {
  Area area;
  area.structures = {{"s1", "Post", StructureKind::post, 2, 0, 0.9, "", {}}};
  const Piece built = tied_piece();
  SecuringLine line;
  line.tie = "front-1", line.y_m = -2;
  const SecuringLine tied = with_anchor(line, AnchorKind::structure, area, &built);
  CHECK(tied.structure == "s1");
  CHECK(tied.height_m == 0.9);  // no higher than it reaches
  CHECK(run_of(tied, PlacedPiece{}, built, area));
  const SecuringLine weight = with_anchor(line, AnchorKind::dead_weight, area, &built);
  CHECK(weight.y_m == -2);
  CHECK(weight.mass_kg > 0);
  const SecuringLine back = with_anchor(tied, AnchorKind::stake, area, &built);
  CHECK(back.structure.empty());
  CHECK(back.y_m == -3);
  CHECK(run_of(back, PlacedPiece{}, built, area));
}

TEST_CASE("one inflates in the middle between the outermost pieces") {
  Area area;
  CHECK(work_place(area) == SitePlace{0, 0});
  area.wall_width_m = 9;
  CHECK(work_place(area) == SitePlace{4.5, 0});
  PlacedPiece left, right;
  left.x_m = 1, left.y_m = -1, right.x_m = 6, right.y_m = 2;
  area.pieces = {left, right};
  CHECK(work_place(area) == SitePlace{3.5, 0.5});
}
