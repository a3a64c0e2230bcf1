// Whose measure a line states, which piece is which, and what else a decorator missed in the drawings.
#include <doctest/doctest.h>

#include <algorithm>

#include "sdk/units.hpp"
#include "studio/paper/elevation_panel.hpp"
#include "studio/paper/panel_dimensions.hpp"
#include "studio/paper/piece_groups.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

Scene scene_of_job(const sample::Job& job) { return scene_of(*job.event.areas[0], job.built, job.palettes); }

PanelPlan plan_of(const Scene& scene) { return plan_panel(scene, {0, 0, 260, 180}, Units::metric); }

/// A row of balloons of 0.2 m from -half to half, its middle at `high_m`: its underside hangs at high_m - 0.1.
Piece swag(double half_m, double high_m) {
  Piece piece;
  const int count = static_cast<int>(half_m / 0.1);
  for (int i = 0; i < count; ++i) {
    const double x = -half_m + 0.1 + i * (2 * half_m - 0.2) / (count - 1);
    Balloon b;
    b.centre = b.neck = Vec3(x, 0, high_m), b.diameter_m = 0.2, b.nominal_in = 9;
    piece.balloons.push_back(b);
  }
  return piece;
}

sample::Job with_pieces(const std::vector<std::pair<Piece, PlacedPiece>>& pieces) {
  return changed([&](sample::Job& job, Area& area) {
    area.pieces.clear();
    for (const auto& [piece, placed] : pieces) {
      area.pieces.push_back(placed);
      job.built[placed.id] = sample::built(piece);
    }
  });
}

/// Swags one behind another, `count` of them, each 2 cm wider than the last.
sample::Job swags(int count) {
  std::vector<std::pair<Piece, PlacedPiece>> pieces;
  for (int i = 0; i < count; ++i) {
    PlacedPiece placed = sample::placed(numbered("g", i), numbered("Swag ", i), 9, {"lagoon"});
    placed.y_m = 0.9 * i;
    pieces.push_back({swag(4 + 0.01 * i, 3), placed});
  }
  return with_pieces(pieces);
}

std::vector<std::string> rings_in(const Marks& marks, Part part) {
  std::vector<std::string> rings;
  for (const Mark& mark : marks)
    if (const auto* text = std::get_if<TextMark>(&mark.shape); text && mark.part == part) rings.push_back(text->text);
  return rings;
}

std::vector<Rect> lines_in(const Marks& marks) {
  std::vector<Rect> lines;
  for (const Mark& mark : marks)
    if (mark.part == Part::line) lines.push_back(bounds(mark));
  return lines;
}

}  // namespace

// Five swags behind each other had five width lines, 16.50 to 16.56 m, and only three heights.
TEST_CASE("pieces that lie over each other share one width and one height, with all their numbers") {
  const Scene scene = scene_of_job(swags(5));
  const PanelPlan plan = plan_of(scene);
  const auto widths = width_lines(scene, plan).lines;
  // 8.00 to 8.08 m by construction (in steps of 2 cm), and the width over all.
  REQUIRE(widths.size() == 2);
  CHECK(widths[0].label.text == "8.00 m to 8.08 m");
  CHECK(widths[0].label.ring == "1–5");
  CHECK(widths[1].label.text == "8.08 m overall");
  const HeightLines heights = height_lines(scene, plan, {});
  CHECK(heights.complete);
  REQUIRE(heights.beside.size() == 2);
  CHECK(heights.beside[0].text == "3.10 m");
  CHECK(heights.beside[0].ring == "1–5");
  CHECK(heights.beside[1].text == "2.90 m beneath");
  // How deep each hangs tells them apart where the picture cannot.
  const std::string text = all_text(sheet(swags(5), in_metres()));
  CHECK(has(text, "1.80 m behind the front line"));
}

TEST_CASE("alike pieces share one width that says each, and a piece of another width has its own") {
  std::vector<std::pair<Piece, PlacedPiece>> pieces;
  for (int i = 0; i < 4; ++i)
    pieces.push_back({sample::column(2, i == 2 ? 0.3 : 0.2), sample::placed(numbered("c", i), "Column", 1.5 * i, {})});
  const Scene scene = scene_of_job(with_pieces(pieces));
  std::vector<std::string> told;
  for (const WidthLine& line : width_lines(scene, plan_of(scene)).lines)
    told.push_back(line.label.ring + " " + line.label.text);
  const auto width = [&](std::size_t i) { return print_length(scene.pieces[i].extent.width(), LengthStyle::metres); };
  CHECK(std::ranges::count(told, "1, 2, 4 " + width(0) + " each") == 1);
  CHECK(std::ranges::count(told, "3 " + width(2)) == 1);
  CHECK(told.size() == 3);  // and the width over all
}

// "9'  (2)" was read as two of nine feet, and a line without a number as that of the piece beside it.
TEST_CASE("a height bears the number of its piece in a ring wherever there are several pieces") {
  const sample::Job job = with_pieces({{sample::column(1.5, 0.2), sample::placed("a", "Low", 2, {})},
                                       {sample::column(2.2, 0.2), sample::placed("b", "High", 5, {})}});
  const Scene scene = scene_of_job(job);
  const HeightLines heights = height_lines(scene, plan_of(scene), {});
  REQUIRE(heights.beside.size() == 2);
  for (const HeightLine& line : heights.beside) CHECK(line.ring == (line.text == "1.50 m" ? "1" : "2"));
  CHECK_FALSE(has(all_text(sheet(job, in_metres())), "m  ("));
  // A single piece needs none.
  const Scene one = scene_of_job(sample::one_arch());
  for (const HeightLine& line : height_lines(one, plan_of(one), {}).beside) CHECK(line.ring.empty());
}

TEST_CASE("the ring before a turned figure lies in the line's room, at its foot") {
  const HeightLine line{20, 120, 50, "2.10 m", {}, "14–18"};
  Marks marks;
  add_height_dimension(marks, line, {1, 1, 1, 1});
  const Rect room = room_of(line);
  std::vector<Rect> texts;
  for (const Mark& mark : marks)
    if (std::holds_alternative<TextMark>(mark.shape)) texts.push_back(bounds(mark));
  REQUIRE(texts.size() == 2);
  for (const Rect& text : texts) {
    CHECK(text.x >= room.x);
    CHECK(text.right() <= 50);
  }
  CHECK(texts[0].y >= texts[1].bottom());
}

// Nothing in the picture told which column was number five.
TEST_CASE("every piece has its number in the picture, at the piece") {
  std::vector<std::pair<Piece, PlacedPiece>> pieces;
  for (int i = 0; i < 6; ++i)
    pieces.push_back({sample::column(2, 0.2), sample::placed(numbered("c", i), "Column", 1.2 * i, {})});
  const Scene scene = scene_of_job(with_pieces(pieces));
  const PanelPlan plan = plan_of(scene);
  const Marks marks = panel_marks(scene, plan, false);
  CHECK(rings_in(marks, Part::drawing) == std::vector<std::string>{"1", "2", "3", "4", "5", "6"});
  for (const Mark& mark : marks)
    if (const auto* text = std::get_if<TextMark>(&mark.shape); text && mark.part == Part::drawing) {
      const ScenePiece& piece = scene.pieces[static_cast<std::size_t>(std::stoi(text->text)) - 1];
      const Rect body = plan.placement.rect(piece.body()), ring = bounds(mark);
      CHECK(ring.middle().x > body.x - 4);
      CHECK(ring.middle().x < body.right() + 4);
    }
  const Scene together = scene_of_job(swags(3));
  CHECK(rings_in(panel_marks(together, plan_of(together), false), Part::drawing) == std::vector<std::string>{"1–3"});
  const Scene one = scene_of_job(sample::one_arch());
  CHECK(rings_in(panel_marks(one, plan_of(one), false), Part::drawing).empty());
}

// A garland along a table showed no table, and how high it hung stood nowhere.
TEST_CASE("a table is drawn as wide and high as it is, and a garland states what is free beneath it") {
  sample::Job job = with_pieces({{swag(2, 2), sample::placed("g", "Garland", 4, {"lagoon"})}});
  Area area = *job.event.areas[0];
  Structure table;
  table.id = "t", table.name = "Long table", table.kind = StructureKind::table;
  table.x_m = 4, table.y_m = 0.5, table.height_m = 0.75, table.width_m = 3.6, table.depth_m = 0.9;
  area.structures = {table};
  job.event.areas[0] = area;
  const Scene scene = scene_of_job(job);
  REQUIRE(scene.structures.size() == 1);
  CHECK(scene.structures[0].extent() == Extent{2.2, 5.8, 0, 0.75});
  const std::string text = all_text(sheet(job, in_metres()));
  CHECK(has(text, "Long table, 3.60 m wide, 0.75 m high"));
  CHECK(has(text, "1.90 m free beneath it"));
}

namespace {

SecuringLine side_line(double x_m, double y_m = 0) {
  SecuringLine line;
  line.tie = "side-1", line.x_m = x_m, line.y_m = y_m;
  return line;
}

/// Has the job's first piece be this one, which may be tied at `tie_x_m`, 1.2 m up, and has these lines.
void tie(sample::Job& job, Area& area, Piece piece, double tie_x_m, const std::vector<SecuringLine>& lines) {
  TiePoint point;
  point.point = Vec3(tie_x_m, 0, 1.2), point.purpose = TiePurpose::side;
  piece.tie_points = {point};
  job.built["p1"] = sample::built(piece);
  area.pieces[0].edit([&](PlacedPiece& placed) { placed.lines = lines; });
}

}  // namespace

TEST_CASE("securing lines run from their tie points to their anchors, dashed where these leave the plane") {
  const auto job = changed([](sample::Job& j, Area& area) {
    tie(j, area, j.built["p1"]->piece, 1, {side_line(2.5), side_line(2, -1.5)});
  });
  const Scene scene = scene_of_job(job);
  // The arch stands at x = 2 m: anchors at 4.5 and 4 m, the tie point at 3 m, 1.2 m high.
  CHECK(scene.extent.right >= 4.5 - 1e-9);
  const Marks marks = scene_marks(scene, {50, {20, 300}}, {}, 0, 500);
  const auto lines = lines_in(marks);
  REQUIRE(lines.size() == 2);
  for (const Rect& line : lines) {
    CHECK(line.x == doctest::Approx(20 + 3 * 50));
    CHECK(line.y == doctest::Approx(300 - 1.2 * 50));
    CHECK(line.bottom() == doctest::Approx(300));
  }
  std::size_t dashed = 0;
  for (const Mark& mark : marks)
    if (mark.part == Part::line) dashed += std::get<PathMark>(mark.shape).stroke.back().dashes.empty() ? 0 : 1;
  CHECK(dashed == 1);
  CHECK(has(all_text(sheet(job, in_metres())), "stake"));
}

TEST_CASE("the standing figure stood in a guy line: now it is beyond the anchor, and beyond a post beside that") {
  const auto with_line = [](double post_x_m) {
    return scene_of_job(changed([&](sample::Job& j, Area& area) {
      tie(j, area, j.built["p1"]->piece, 1, {side_line(2)});
      Structure post;
      post.id = "s1", post.name = "Post", post.kind = StructureKind::post, post.height_m = 2, post.x_m = post_x_m;
      if (post_x_m > 0) area.structures = {post};
    }));
  };
  // The arch stands at x = 2 m, so the line runs from 3 m to its anchor at 4 m.
  const double half = figure_width_m / 2, off_line = with_line(0).figure_x_m;
  CHECK((off_line - half > 4 || off_line + half < 3));
  const double post_x_m = off_line;  // just there
  const double off_post = with_line(post_x_m).figure_x_m;
  CHECK(std::abs(off_post - post_x_m) > half);
}

TEST_CASE("where it would widen the drawing beyond an anchor, the figure stands in the opening of a wide arch") {
  const auto with_arch = [](double radius_m, int clusters) {
    return scene_of_job(changed([&](sample::Job& j, Area& area) {
      tie(j, area, sample::arch(radius_m, clusters, 0.23), radius_m - 0.4, {side_line(radius_m + 1.1)});
    }));
  };
  const Scene scene = with_arch(2.4, 38);
  REQUIRE(scene.pieces[0].opening);
  CHECK(scene.figure_x_m - figure_width_m / 2 > scene.pieces[0].opening->middle_m());
  CHECK(scene.figure_x_m + figure_width_m / 2 < scene.pieces[0].opening->right_m);
  // By hand: the balloons of this one reach in to 1.9 m - 0.26 m about a middle 0.25 m high, so that at the figure's far
  // shoulder, 1.1 m from the middle, they come down to 0.25 m + sqrt(1.64² - 1.1²) m, or 1.47 m: it is 1.75 m tall.
  const Scene low = with_arch(1.9, 30);
  REQUIRE(low.pieces[0].opening);
  CHECK((low.figure_x_m > low.pieces[0].opening->right_m || low.figure_x_m < low.pieces[0].opening->left_m));
}

TEST_CASE("an anchor far away does not make the drawing small") {
  const auto job = changed([](sample::Job& j, Area& area) { tie(j, area, j.built["p1"]->piece, 1, {side_line(60)}); });
  const Scene plain = scene_of_job(sample::one_arch()), scene = scene_of_job(job);
  CHECK(scene.extent.right == doctest::Approx(plain.extent.right + 3));
}

// Upright paper was chosen for a run of 17 ft, and its picture took a third of the page.
TEST_CASE("a wide piece alone is drawn on lying paper") {
  for (const Paper paper : {Paper::letter, Paper::a4}) {
    const auto job = with_pieces({{swag(2.6, 2), sample::placed("g", "Garland", 4, {"lagoon"})}});
    SheetOptions options;
    options.paper = paper;
    const Page page = sheet(job, options).front();
    CHECK(page.width > page.height);
  }
}
