// The scene of an area: what stands where, in which order, and what becomes of what cannot be built.
#include "studio/drawing/elevation.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "studio/drawing/scene_marks.hpp"
#include "studio/drawing/view.hpp"
#include "tests/drawing/sample.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

Scene scene_of_job(const sample::Job& job) { return scene_of(*job.event.areas[0], job.built, job.palettes); }

Piece one_balloon(Vec3 centre, double diameter, std::uint32_t slot) {
  Piece piece;
  piece.balloons.push_back({centre, centre, diameter, 11, slot, 0, 0, Role::body});
  return piece;
}

sample::Job job_with(std::vector<std::pair<PlacedPiece, Piece>> pieces) {
  sample::Job job;
  Area area;
  area.id = "a", area.name = "Hall";
  for (auto& [placed, built] : pieces) {
    job.built[placed.id] = sample::built(std::move(built));
    area.pieces.push_back(placed);
  }
  job.event.areas.push_back(area);
  return job;
}

std::size_t balloons_in(const Scene& scene) {
  return static_cast<std::size_t>(std::count_if(scene.items.begin(), scene.items.end(), [](const SceneItem& item) {
    return std::holds_alternative<SceneBalloon>(item.shape);
  }));
}

}  // namespace

TEST_CASE("what is farther away is painted first, the piece's own depth counted in") {
  const sample::Job arch = sample::one_arch();
  const Scene scene = scene_of_job(arch);
  CHECK(balloons_in(scene) == 76);
  for (std::size_t i = 1; i < scene.items.size(); ++i)
    CHECK(scene.items[i - 1].depth_m >= scene.items[i].depth_m - 1e-6);

  // A red ball stands 2 m behind a white one, although its own y is nearer to the audience.
  PlacedPiece far = sample::placed("far", "Far", 0, {"rosewood"}), near = sample::placed("near", "Near", 0, {"chalk"});
  far.y_m = 2;
  const sample::Job job =
      job_with({{near, one_balloon({0, 0.5, 1}, 0.5, 0)}, {far, one_balloon({0.1, -0.5, 1}, 0.5, 0)}});
  const Scene two = scene_of_job(job);
  REQUIRE(two.items.size() == 2);
  CHECK(two.items[0].depth_m == doctest::Approx(1.5));
  const View view{100, 150, 200};
  BalloonStamps stamps;
  const Picture picture = painted(300, 250, [&](cairo_t* cairo) { paint_scene(cairo, two, view, 300, {}, stamps); });
  const Rgb& both = picture.at(155, 100);  // x 0.05 m: inside both
  CHECK(both.green > 180);
  CHECK(both.red > 180);
  const Rgb& alone = picture.at(182, 100);  // x 0.32 m: only in the far one
  CHECK(alone.red > alone.green + 30);
}

TEST_CASE("equal depths keep the order of building, so that the picture never depends on the last bits") {
  Piece piece;
  for (std::uint32_t i = 0; i < 20; ++i)
    piece.balloons.push_back({{0.1 * i, (i % 2 ? 1e-12 : -1e-12), 1}, {0, 0, 1}, 0.3, 11, 0, i + 1, 0, Role::body});
  const Scene scene = scene_of_job(job_with({{sample::placed("p", "Row", 0, {"chalk"}), piece}}));
  for (std::uint32_t i = 0; i < 20; ++i) CHECK(std::get<SceneBalloon>(scene.items[i].shape).cluster == i + 1);
}

TEST_CASE("hidden pieces are left out; a missing type is a box of its last size, a refused one a dashed box") {
  sample::Job job = sample::one_arch();
  PlacedPiece hidden = sample::placed("h", "Hidden", 3, {});
  hidden.hidden = true;
  PlacedPiece missing = sample::placed("m", "Ribbon wall", 6, {"lagoon"});
  missing.type = "ribbon-wall", missing.last_built = LastBuilt{2.4, 2.0, 0.3, 12, {{11, 0.25, 0, 48}}};
  const PlacedPiece refused = sample::placed("r", "Too wide", 9, {});
  auto failed = std::make_shared<BuiltPiece>();
  failed->status = Status::bad_parameter;
  failed->piece.messages = {{Severity::refusal, "span", "The span is longer than the rod."}};
  job.built["r"] = failed;
  job.event.areas[0].edit([&](Area& area) {
    for (const PlacedPiece& p : {hidden, missing, refused}) area.pieces.push_back(p);
  });

  const Scene scene = scene_of_job(job);
  REQUIRE(scene.pieces.size() == 3);
  CHECK(scene.pieces[1].shown == Shown::missing);
  CHECK(scene.pieces[1].extent == Extent{4.8, 7.2, 0, 2.0});
  CHECK(scene.pieces[2].shown == Shown::refused);
  CHECK_FALSE(scene.pieces[2].size_known);
  CHECK(scene.pieces[2].note.find("longer than the rod") != std::string::npos);

  const Marks marks = scene_marks(scene, {50, {20, 200}}, {}, 0, 500);
  std::size_t hatches = 0, dashed = 0;
  for (const Mark& mark : marks) {
    if (const auto* hatch = std::get_if<HatchMark>(&mark.shape)) {
      ++hatches;
      // x 4.8 m and 7.2 m at 50 mm a metre, from 20 mm.
      CHECK(hatch->outline.front().x == doctest::Approx(260));
      CHECK(hatch->outline[1].x == doctest::Approx(380));
    }
    if (const auto* path = std::get_if<PathMark>(&mark.shape))
      for (const Pen& pen : path->stroke) dashed += pen.dashes.empty() ? 0u : 1u;
  }
  CHECK(hatches == 1);
  CHECK(dashed == 1);
}

TEST_CASE("a slot without a colour, and one that no palette has, are light grey") {
  const Scene scene = scene_of_job(job_with({{sample::placed("p", "P", 0, {"no-such"}), one_balloon({0, 0, 1}, 0.3, 0)},
                                             {sample::placed("q", "Q", 1, {}), one_balloon({0, 0, 1}, 0.3, 5)}}));
  for (const SceneItem& item : scene.items) {
    const Ink& ink = std::get<SceneBalloon>(item.shape).ink;
    CHECK(ink.red == doctest::Approx(ink.blue).epsilon(0.02));
    CHECK(ink.red > 0.8);
  }
}

TEST_CASE("numbers that are not finite leave out their balloon or member, nothing else") {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  Piece piece = one_balloon({0, 0, 1}, 0.3, 0);
  piece.balloons.push_back({{nan, 0, 0}, {0, 0, 0}, 0.3, 11, 0, 0, 0, Role::body});
  piece.balloons.push_back({{0, 0, 1}, {0, 0, 0}, inf, 11, 0, 0, 0, Role::body});
  piece.balloons.push_back({{0, 0, 1}, {0, 0, 0}, -1, 11, 0, 0, 0, Role::body});
  piece.frame.nodes = {{0, 0, 0}, {0, 0, nan}, {0, 0, 1}};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.02, 0, 1, 1, 1},
                         {0, 2, Joint::rigid, Rest::as_drawn, 0.02, 0, 1, 1, 1},
                         {0, 9, Joint::rigid, Rest::as_drawn, 0.02, 0, 1, 1, 1}};
  sample::Job job = job_with({{sample::placed("p", "P", 0, {"chalk"}), one_balloon({0, 0, 1}, 0.3, 0)}});
  auto made = std::make_shared<BuiltPiece>(*job.built["p"]);
  made->piece = piece;
  job.built["p"] = made;
  CHECK(scene_of_job(job).items.size() == 2);
}

TEST_CASE("rods are drawn in their true width and hit within reach") {
  Piece piece;
  piece.frame.nodes = {{0, 0, 0}, {0, 0, 1}, {0, 0, 2}};
  piece.frame.members = {{0, 1, Joint::rigid, Rest::as_drawn, 0.04, 0, 1, 1, 1},
                         {1, 2, Joint::rigid, Rest::as_drawn, 0.04, 0, 1, 1, 1}};
  const Scene scene = scene_of_job(job_with({{sample::placed("p", "Pole", 1, {}), piece}}));
  REQUIRE(scene.items.size() == 1);  // two members in line are one run
  CHECK(std::get<SceneRod>(scene.items[0].shape).points_m.size() == 3);
  const Marks marks = scene_marks(scene, {20, {0, 100}}, {}, 0, 100);
  bool found = false;
  for (const Mark& mark : marks)
    if (const auto* path = std::get_if<PathMark>(&mark.shape))
      if (path->stroke.size() == 3) {
        found = true;
        CHECK(path->stroke[0].width == doctest::Approx(0.8));  // 0.04 m × 20
      }
  CHECK(found);
}

TEST_CASE("the standing figure is as tall as it says and stands clear of the pieces") {
  const Scene scene = scene_of_job(sample::one_arch());
  CHECK(scene.figure_x_m - figure_width_m / 2 > scene.pieces_extent->right);
  const Marks marks = scene_marks(scene, {100, {0, 500}}, {}, 0, 500);
  double top = 1e9, bottom = -1e9, left = 1e9, right = -1e9;
  for (const Mark& mark : marks)
    if (mark.part == Part::figure)
      for (const PathStep& step : std::get<PathMark>(mark.shape).steps)
        if (step.kind != PathStep::Kind::close) {
          top = std::min(top, step.to.y), bottom = std::max(bottom, step.to.y);
          left = std::min(left, step.to.x), right = std::max(right, step.to.x);
        }
  CHECK(bottom - top == doctest::Approx(figure_height_m * 100).epsilon(0.005));
  CHECK(right - left <= figure_width_m * 100);
}

TEST_CASE("fit shows everything; zooming keeps the point under the pointer and its bounds") {
  const Scene scene = scene_of_job(sample::one_arch());
  const View view = fit_view(scene, 900, 500);
  for (double x : {scene.extent.left, scene.extent.right})
    for (double z : {scene.extent.floor, scene.extent.top}) {
      const Point2 p = view.to_pixels(x, z);
      CHECK((p.x >= 23.99 && p.x <= 876.01));
      CHECK((p.y >= 23.99 && p.y <= 476.01));
    }
  const Point2 before = view.to_metres(333, 222);
  View nearer = zoomed(view, 1.7, 333, 222);
  CHECK(nearer.to_metres(333, 222).x == doctest::Approx(before.x));
  CHECK(nearer.to_metres(333, 222).y == doctest::Approx(before.y));
  for (int i = 0; i < 200; ++i) nearer = zoomed(nearer, 1.5, 10, 10);
  CHECK(nearer.pixels_per_metre == most_pixels_per_metre);
  for (int i = 0; i < 400; ++i) nearer = zoomed(nearer, 0.5, 10, 10);
  CHECK(nearer.pixels_per_metre == least_pixels_per_metre);
  CHECK(panned(view, 5, -7).origin_y_px == view.origin_y_px - 7);
}

TEST_CASE("the box of a piece that is missing is painted at its depth") {
  // Boxes lay over everything, so that one far behind hid what stood before it.
  for (const double y : {1.0, -1.0}) {
    sample::Job job = job_with({{sample::placed("ball", "Ball", 0, {"rosewood"}), one_balloon({0, 0, 1}, 0.5, 0)}});
    job.event.areas[0].edit([&](Area& area) {
      PlacedPiece missing = sample::placed("m", "Ribbon wall", 0, {});
      missing.type = "ribbon-wall", missing.y_m = y, missing.last_built = LastBuilt{2, 2, 0.3, 0, {}};
      area.pieces.push_back(missing);
    });
    const Scene scene = scene_of_job(job);
    REQUIRE(scene.items.size() == 2);
    CHECK(std::holds_alternative<SceneBox>(scene.items[y > 0 ? 0 : 1].shape));
  }
}

TEST_CASE("what is painted anew within a clip is what painting everything shows there") {
  // Balloons outside the clip are left out; their outlines and necks must not be missed at its edges.
  Piece piece;
  for (std::uint32_t i = 0; i < 40; ++i)
    piece.balloons.push_back({{0.11 * (i % 8), 0.02 * i, 0.2 + 0.13 * (i / 8)},
                              {0.11 * (i % 8) + 0.1, 0, 0.1},
                              0.16,
                              11,
                              0,
                              i + 1,
                              0,
                              Role::body});
  const Scene scene = scene_of_job(job_with({{sample::placed("p", "Row", 0, {"rosewood"}), piece}}));
  const View view{200, 40, 260};
  BalloonStamps stamps;
  const Rect kept{70, 60, 90, 110};
  const Picture all = painted(320, 300, [&](cairo_t* cairo) { paint_scene(cairo, scene, view, 320, {}, stamps); });
  const Picture part = painted(320, 300, [&](cairo_t* cairo) {
    cairo_rectangle(cairo, kept.x, kept.y, kept.width, kept.height);
    cairo_clip(cairo);
    paint_scene(cairo, scene, view, 320, {}, stamps);
  });
  // Within a clip Cairo rounds how much of a pixel an edge covers anew: by one step of 255.
  const auto near = [](double a, double b) { return std::abs(a - b) <= 1; };
  bool same = true;
  for (int y = static_cast<int>(kept.y); y < static_cast<int>(kept.bottom()); ++y)
    for (int x = static_cast<int>(kept.x); x < static_cast<int>(kept.right()); ++x) {
      const Rgb &a = all.at(x, y), &b = part.at(x, y);
      same = same && near(a.red, b.red) && near(a.green, b.green) && near(a.blue, b.blue);
    }
  CHECK(same);
}
