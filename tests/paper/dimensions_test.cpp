// Which measures stand on a sheet, and where their lines begin and end.
#include <doctest/doctest.h>

#include <algorithm>

#include "sdk/units.hpp"
#include "studio/paper/elevation_panel.hpp"
#include "studio/paper/panel_dimensions.hpp"
#include "studio/takeoff/opening.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

std::string metres(double m) { return print_length(m, LengthStyle::metres); }

Scene scene_of_job(const sample::Job& job) { return scene_of(*job.event.areas[0], job.built, job.palettes); }

PanelPlan plan_of(const Scene& scene) { return plan_panel(scene, {0, 0, 260, 180}, Units::metric); }

/// Two columns of different height, 3 m apart, before a wall.
sample::Job two_columns() {
  return changed([](sample::Job& job, Area& area) {
    area.wall_width_m = 8, area.wall_height_m = 3;
    area.pieces.clear();
    area.pieces.push_back(sample::placed("low", "Low", 2, {"lagoon"}));
    area.pieces.push_back(sample::placed("high", "High", 5, {"brass"}));
    job.built["low"] = sample::built(sample::column(1.5, 0.2));
    job.built["high"] = sample::built(sample::column(2.2, 0.2));
  });
}

}  // namespace

TEST_CASE("an arch's clear opening is on the sheet, as the takeoff measures it") {
  const sample::Job job = sample::one_arch();
  const auto opening = opening_of(job.built.at("p1")->piece);
  REQUIRE(opening);
  const std::string text = all_text(sheet(job, in_metres()));
  CHECK(has(text, metres(opening->between_plates_m()) + " clear"));
  CHECK(has(text, metres(*opening->height_m) + " clear"));
  CHECK(has(text, "Opening " + metres(opening->width_m()) + " wide"));
  // A column has none.
  CHECK_FALSE(has(all_text(sheet(two_columns())), "clear"));
}

TEST_CASE("base plates that stand out are in the scene and in the widths") {
  // The width stopped at the balloons: a frame was given as 1.43 m wide whose plates took 1.65 m of the floor.
  const sample::Job job = changed([](sample::Job& j, Area&) {
    Piece piece = sample::arch(1.2, 19, 0.23);
    for (Support& support : piece.supports) support.width_m = 1.0;
    j.built["p1"] = sample::built(piece);
  });
  const Scene scene = scene_of_job(job);
  // Feet at x = 2 ± 1.2 m, plates of 1 m: from 0.3 m to 3.7 m.
  REQUIRE(scene.pieces[0].plates);
  CHECK(scene.pieces[0].standing().left == doctest::Approx(0.3));
  CHECK(scene.pieces[0].standing().right == doctest::Approx(3.7));
  CHECK(scene.extent.left <= 0.3 + 1e-9);
  CHECK(scene.pieces_extent->width() == doctest::Approx(3.4));
  CHECK(has(all_text(sheet(job, in_metres())), "3.40 m with plates"));
  // Those of the plain arch reach no further than its balloons.
  CHECK_FALSE(has(all_text(sheet(sample::one_arch())), "with plates"));
}

TEST_CASE("each piece of its own height has a line of its own that begins at its top") {
  // Only the tallest had one, and its extension line began in mid-air at the piece's left edge.
  const sample::Job job = two_columns();
  const Scene scene = scene_of_job(job);
  const PanelPlan plan = plan_of(scene);
  const HeightLines lines = height_lines(scene, plan, {});
  CHECK(lines.complete);
  for (const ScenePiece& piece : scene.pieces) {
    const auto line = std::ranges::find(lines.beside, metres(piece.extent.height()), &HeightLine::text);
    REQUIRE(line != lines.beside.end());
    CHECK(line->top == doctest::Approx(plan.placement.on_page(0, piece.extent.top).y));
    CHECK(line->bottom == doctest::Approx(plan.placement.origin.y));
    // The pole's top is the highest point of a column and stands over its middle; 1.2 mm of air.
    const double pole = plan.placement.on_page((piece.extent.left + piece.extent.right) / 2, 0).x;
    REQUIRE(line->from_x.size() == 1);
    CHECK(std::abs(line->from_x[0] - pole) == doctest::Approx(1.2));
  }
  for (std::size_t i = 0; i < lines.beside.size(); ++i)
    for (std::size_t j = i + 1; j < lines.beside.size(); ++j) {
      const Rect a = room_of(lines.beside[i]), b = room_of(lines.beside[j]);
      CHECK((a.right() <= b.x || b.right() <= a.x || a.bottom() <= b.y || b.bottom() <= a.y));
    }
}

TEST_CASE("lines of one row do not meet, whatever stands there") {
  for (const HardCase& hard : hard_cases()) {
    if (hard.job.event.areas.empty() || hard.job.event.areas[0]->pieces.empty()) continue;
    CAPTURE(hard.name);
    const Scene scene = scene_of_job(hard.job);
    const PanelPlan plan = plan_of(scene);
    const WidthLines widths = width_lines(scene, plan);
    CHECK(widths.rows == plan.width_rows);
    for (std::size_t i = 0; i < widths.lines.size(); ++i)
      for (std::size_t j = i + 1; j < widths.lines.size(); ++j) {
        const WidthLine &a = widths.lines[i], &b = widths.lines[j];
        if (a.row == b.row) CHECK((a.to_m <= b.from_m || b.to_m <= a.from_m));
      }
  }
}

TEST_CASE("the number of a hundredth piece has a longer ring rather than smaller figures") {
  CHECK(ring_half_width("7") == doctest::Approx(2.1));
  CHECK(ring_half_width("128") > 2.1);
  Marks marks;
  add_ring(marks, Part::key, {10, 10}, "128");
  const Rect ring = bounds(marks[0]);
  CHECK(ring.width == doctest::Approx(2 * ring_half_width("128")));
  CHECK(ring.height == doctest::Approx(4.2));
  CHECK(ring.middle().x == doctest::Approx(10));
}

// A height stood half on the wall and half on the paper, in a box of the one's colour that showed on the other.
TEST_CASE("no height's figure lies across the edge of the wall") {
  for (double left = 0.3; left < 1.2; left += 0.05) {
    sample::Job job = two_columns();
    Area area = *job.event.areas[0];
    area.pieces[0].edit([&](PlacedPiece& piece) { piece.x_m = left; });
    area.pieces[1].edit([&](PlacedPiece& piece) { piece.x_m = 8 - left; });
    job.event.areas[0] = area;
    const Scene scene = scene_of_job(job);
    const PanelPlan plan = plan_of(scene);
    const Rect wall = plan.placement.rect(*scene.wall);
    const HeightLines lines = height_lines(scene, plan, {});
    CHECK_FALSE(lines.beside.empty());
    for (const HeightLine& line : lines.beside) {
      const Rect room = room_of(line);
      CAPTURE(line.text);
      CHECK((room.right() <= wall.x || room.x >= wall.right() || (room.x >= wall.x && room.right() <= wall.right())));
    }
  }
}

// A line of a lower row ran along the last letter of a figure as if it were part of it.
TEST_CASE("what passes behind a width's figure keeps off it at both sides") {
  Marks marks;
  add_width_dimension(marks, 10, 60, 40, 20, {"1.20 m", "3"}, {25, 45});
  const auto ground = std::ranges::find_if(marks, [](const Mark& mark) {
    const auto* path = std::get_if<PathMark>(&mark.shape);
    return path != nullptr && !path->fill.empty() && bounds(mark).height > 1 && bounds(mark).width > 1;
  });
  REQUIRE(ground != marks.end());
  CHECK(bounds(*ground).x < 25 - 0.5);
  CHECK(bounds(*ground).right() > 45 + 0.5);
}
