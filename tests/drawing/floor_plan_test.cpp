// An area from above: what lies where, what is under the pointer, and that labels keep out of each other's way. Places are
// reckoned by hand.
#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <memory>

#include "studio/drawing/floor_plan.hpp"
#include "studio/drawing/floor_plan_marks.hpp"
#include "studio/drawing/room.hpp"

using namespace quadrille;

namespace {

struct Yard {
  Area area;
  BuiltEvent built;

  Yard() {
    PlacedPiece pole;
    pole.id = "p1", pole.name = "Pole", pole.x_m = 3, pole.y_m = 0.5;
    SecuringLine stake, tied;
    stake.tie = "front-1", stake.x_m = 0.25, stake.y_m = -2;
    tied.tie = "back-1", tied.anchor = AnchorKind::structure, tied.structure = "s1", tied.height_m = 1;
    pole.lines = {stake, tied};
    area.pieces = {pole};
    area.structures = {{"s1", "Post", StructureKind::post, 5, 1.5, 2, "", {}, 0.2, 0.3}};
    area.walkways = {{"w1", "Path", 0, -4, 8, 1.5, {}}};
    area.site.outlet_m = 4;
    auto made = std::make_shared<BuiltPiece>();
    made->status = Status::ok;
    made->box = {Vec3(-0.5, -0.25, 0), Vec3(0.5, 0.25, 2)};
    made->piece.frame.nodes = {Vec3(0, 0, 0), Vec3(0, 0, 2)};
    Support plate;
    plate.width_m = 0.4, plate.depth_m = 0.6;
    made->piece.supports = {plate};
    made->piece.tie_points = {{1, TiePurpose::front, {0, 0, 2}, ""}, {1, TiePurpose::back, {0, 0, 2}, ""}};
    built["p1"] = made;
  }
  FloorPlan plan() const { return floor_plan_of(area, built); }
};

/// 100 pixels a metre, x = 0 and depth 0 at (500, 500).
const View view{100, 500, 500};

std::optional<PlanHit> hit(const FloorPlan& plan, double x_m, double y_m) {
  return plan_hit(plan, view, 500 + 100 * x_m, 500 - 100 * y_m);
}

}  // namespace

TEST_CASE("pieces lie on the plan with their feet and lines, from tie point to anchor") {
  const FloorPlan plan = Yard().plan();
  REQUIRE(plan.pieces.size() == 1);
  CHECK(plan.pieces[0].body == Extent{2.5, 3.5, 0.25, 0.75});
  REQUIRE(plan.pieces[0].feet.size() == 1);
  const Extent& foot = plan.pieces[0].feet[0];
  CHECK(foot.width() == doctest::Approx(0.4));
  CHECK(foot.height() == doctest::Approx(0.6));
  CHECK((foot.left + foot.right) / 2 == doctest::Approx(3));
  REQUIRE(plan.lines.size() == 2);
  CHECK(plan.lines[0].runs);
  CHECK(plan.lines[0].from == Point2{3, 0.5});
  CHECK(plan.lines[0].to == Point2{3.25, -1.5});
  CHECK(plan.lines[1].to == Point2{5, 1.5});
  CHECK(plan.structures[0].body.left == doctest::Approx(4.9));
  CHECK(plan.structures[0].size_known);
  CHECK(plan.walkways[0].body == Extent{0, 8, -4, -2.5});
  REQUIRE(plan.outlet);
  CHECK(plan.outlet->grip() == Point2{7, 0.5});
  CHECK(!plan.wall);
}

TEST_CASE("the wall stands behind everything") {
  Yard yard;
  yard.area.wall_width_m = 6;
  const FloorPlan plan = yard.plan();
  REQUIRE(plan.wall);
  CHECK(plan.wall->width() == 6);
  for (const PlanPiece& piece : plan.pieces) CHECK(plan.wall->floor > piece.body.top);
  for (const PlanStructure& it : plan.structures) CHECK(plan.wall->floor > it.body.top);
  CHECK(plan.extent.top >= plan.wall->top);
}

TEST_CASE("the pointer takes anchors, the outlet, structures, pieces and walkways, these by their edges too") {
  const FloorPlan plan = Yard().plan();
  const auto is = [&](double x, double y, SiteObjectKind kind, SiteGrip grip = SiteGrip::whole) {
    const auto found = hit(plan, x, y);
    return found && found->object.kind == kind && found->grip == grip;
  };
  CHECK(is(3.25, -1.5, SiteObjectKind::line));
  CHECK(hit(plan, 3.25, -1.5)->object.line == 0);
  CHECK(is(7, 0.5, SiteObjectKind::outlet));
  CHECK(is(5, 1.5, SiteObjectKind::structure));  // not the end of the line that is tied to it
  CHECK(is(3.2, 0.5, SiteObjectKind::piece));
  CHECK(is(4, -3.2, SiteObjectKind::walkway));
  CHECK(is(0.03, -3.2, SiteObjectKind::walkway, SiteGrip::left));
  CHECK(is(7.97, -3.2, SiteObjectKind::walkway, SiteGrip::right));
  CHECK(is(4, -3.97, SiteObjectKind::walkway, SiteGrip::front));
  CHECK(is(4, -2.54, SiteObjectKind::walkway, SiteGrip::back));
  CHECK(!hit(plan, 1, 3));
  // A strip so narrow that its edges nearly meet is still taken by its middle.
  Yard narrow;
  narrow.area.walkways[0].depth_m = 0.04;
  CHECK(hit(narrow.plan(), 4, -3.98)->grip == SiteGrip::whole);
}

TEST_CASE("what is hidden is left out with its lines; what has no number that can be drawn too") {
  Yard yard;
  yard.area.pieces[0].edit([](PlacedPiece& piece) { piece.hidden = true; });
  yard.area.structures[0].x_m = std::numeric_limits<double>::quiet_NaN();
  yard.area.walkways[0].width_m = std::numeric_limits<double>::infinity();
  const FloorPlan plan = yard.plan();
  CHECK(plan.pieces.empty());
  CHECK(plan.lines.empty());
  CHECK(plan.structures.empty());
  CHECK(plan.walkways.empty());
  CHECK(std::isfinite(plan.extent.width()));
}

TEST_CASE("a line that cannot run is drawn from its piece to where its anchor would be, and is marked so") {
  Yard yard;
  yard.area.pieces[0].edit([](PlacedPiece& piece) { piece.lines[0].tie = "front-9"; });
  const FloorPlan plan = yard.plan();
  CHECK(!plan.lines[0].runs);
  CHECK(plan.lines[0].from == Point2{3, 0.5});
  CHECK(plan.lines[0].to == Point2{3.25, -1.5});
}

TEST_CASE("what lies far away does not make the plan small, and all that is near is in the view that fits") {
  Yard yard;
  const double before = yard.plan().extent.width();
  yard.area.structures.push_back({"s2", "Far tower", StructureKind::other, 300, 0, 9, "", {}});
  yard.area.site.outlet_m = 900;
  CHECK(yard.plan().extent.width() == before);
  const FloorPlan plan = yard.plan();
  const View fit = fit_plan(plan, 600, 250, 20);
  const Point2 corner = fit.to_pixels(plan.extent.left, plan.extent.top);
  const Point2 end = fit.to_pixels(plan.extent.right, plan.extent.floor);
  CHECK(corner.x >= 19.9);
  CHECK(corner.y >= 19.9);
  CHECK(end.x <= 580.1);
  CHECK(end.y <= 230.1);
}

TEST_CASE("labels lie in the room and not on each other; what is selected tells its measures") {
  Yard yard;
  yard.area.structures.push_back({"s2", "Post beside the post", StructureKind::post, 5.1, 1.5, 2, "", {}});
  const FloorPlan plan = yard.plan();
  PlanLook look{Units::metric, {0, 0, 160, 80}, SiteObject{SiteObjectKind::line, "p1", 0}, "Stake, 2.00 m front"};
  const View fit = fit_plan(plan, 160 * screen_pixels_per_mm, 80 * screen_pixels_per_mm, 24);
  const Marks marks = floor_plan_marks(plan, placement_of(fit), look);
  std::vector<Rect> boxes, bar;
  bool told = false;
  for (const Mark& mark : marks) {
    const auto* text = std::get_if<TextMark>(&mark.shape);
    if (text == nullptr) continue;
    if (mark.part == Part::scale_bar) {  // its own figures are close together
      bar.push_back(text->box);
      continue;
    }
    told = told || text->text == look.selected_text;
    CHECK(text->box.x >= -1e-9);
    CHECK(text->box.y >= -1e-9);
    CHECK(text->box.right() <= 160 + 1e-9);
    CHECK(text->box.bottom() <= 80 + 1e-9);
    CHECK_MESSAGE(!meets_any(text->box, boxes), text->text);
    boxes.push_back(text->box);
  }
  CHECK(told);
  CHECK(!bar.empty());
  for (const Rect& box : boxes) CHECK(!meets_any(box, bar));
  CHECK(boxes.size() >= 4);
}
