// Structures and walkways in the drawing: where they stand, and that their labels keep out of the way.
#include <doctest/doctest.h>

#include <algorithm>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/drawing/view.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

Structure structure(std::string name, StructureKind kind, double x_m, double height_m) {
  Structure s;
  s.id = "s-" + name, s.name = std::move(name), s.kind = kind, s.x_m = x_m, s.height_m = height_m;
  return s;
}

Scene scene_with(const std::vector<Structure>& structures, const std::vector<Walkway>& walkways = {}) {
  const auto job = changed([&](sample::Job&, Area& area) { area.structures = structures, area.walkways = walkways; });
  return scene_of(*job.event.areas[0], job.built, job.palettes);
}

/// Around all marks of the site.
Rect site_bounds(const Marks& marks) {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
  for (const Mark& mark : marks)
    if (mark.part == Part::site && std::holds_alternative<PathMark>(mark.shape)) {
      const Rect r = bounds(mark);
      left = std::min(left, r.x), right = std::max(right, r.right());
      top = std::min(top, r.y), bottom = std::max(bottom, r.bottom());
    }
  return {left, top, right - left, bottom - top};
}

}  // namespace

TEST_CASE("a gate post of the site stands in the drawing at its place and height, with its name") {
  // Posts and walkway were in the file and not in the drawing.
  const Scene scene = scene_with({structure("Gate post", StructureKind::post, 4, 2.1)});
  REQUIRE(scene.structures.size() == 1);
  CHECK(scene.extent.right >= 4);
  const Rect post = site_bounds(scene_marks(scene, {50, {20, 300}}, {}, 0, 500));
  CHECK(post.middle().x == doctest::Approx(20 + 4 * 50));
  CHECK(post.y == doctest::Approx(300 - 2.1 * 50));
  CHECK(post.bottom() == doctest::Approx(300));
  const auto job = changed(
      [](sample::Job&, Area& area) { area.structures.push_back(structure("Gate post", StructureKind::post, 4, 2.1)); });
  CHECK(has(all_text(sheet(job, in_metres())), "Gate post, 2.10 m"));
}

TEST_CASE("a walkway is a strip in the ground as wide as it is") {
  Walkway way;
  way.id = "w", way.name = "Way in", way.x_m = 1.5, way.y_m = -2, way.width_m = 1.6, way.depth_m = 4;
  const Scene scene = scene_with({}, {way});
  const Rect strip = site_bounds(scene_marks(scene, {50, {20, 300}}, {}, 0, 500));
  CHECK(strip.x == doctest::Approx(20 + 1.5 * 50));
  CHECK(strip.width == doctest::Approx(1.6 * 50));
  CHECK(strip.y == doctest::Approx(300));
  const auto job = changed([&](sample::Job&, Area& area) { area.walkways.push_back(way); });
  CHECK(has(all_text(sheet(job, in_metres())), "Way in, 1.60 m wide"));
}

TEST_CASE("a tall tree is broken off, and what is far away is said, so that neither makes the drawing small") {
  const Scene plain = scene_with({});
  const Scene scene = scene_with({structure("Linden", StructureKind::tree, 4, 18),
                                  structure("Oak", StructureKind::tree, plain.extent.right + 12, 9)});
  REQUIRE(scene.structures.size() == 1);
  CHECK(scene.structures[0].is_broken_off());
  CHECK(scene.extent.top <= plain.extent.top + 1 + 1e-9);
  REQUIRE(scene.far_off.size() == 1);
  CHECK(scene.far_off[0].beyond_m == doctest::Approx(12));
  const auto job = changed([&](sample::Job&, Area& area) {
    area.structures = {structure("Oak", StructureKind::tree, plain.extent.right + 12, 9),
                       structure("Shed", StructureKind::wall, plain.extent.left - 7.5, 2)};
  });
  const std::string text = all_text(sheet(job, in_metres()));
  CHECK(has(text, "Oak: 12.00 m further to the right"));
  CHECK(has(text, "Shed: 7.50 m further to the left"));
}

TEST_CASE("structures are painted among the pieces by their depth") {
  for (const double y : {-1.0, 1.0}) {
    Structure post = structure("Post", StructureKind::post, 2, 2.1);
    post.y_m = y;
    const Scene scene = scene_with({post});
    const auto at = std::ranges::find_if(
        scene.items, [](const SceneItem& item) { return std::holds_alternative<SceneStanding>(item.shape); });
    REQUIRE(at != scene.items.end());
    // The arch stands on the front line, y = 0.
    CHECK((y < 0 ? at == scene.items.end() - 1 : at == scene.items.begin()));
  }
}
