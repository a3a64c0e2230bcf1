// Sections, feet, lines, running marks and stretches, by hand.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "studio/making/anchored_line.hpp"
#include "studio/making/feet.hpp"
#include "studio/making/frame_sections.hpp"
#include "studio/making/loose_balloons.hpp"
#include "studio/making/spine_place.hpp"
#include "studio/making/stretches.hpp"

using namespace quadrille;

namespace {

FrameMember member(std::uint32_t from, std::uint32_t to, Joint joint = Joint::rigid) {
  FrameMember m;
  m.from = from, m.to = to, m.joint_from = joint, m.outer_m = 0.025, m.inner_m = 0.022;
  return m;
}

/// A gate 2 m wide and 2 m high, of posts in two halves and a straight lintel on elbows, its spine all along.
Piece gate() {
  Piece piece;
  piece.frame.nodes = {{-1, 0, 0}, {-1, 0, 1}, {-1, 0, 2}, {1, 0, 2}, {1, 0, 1}, {1, 0, 0}};
  piece.frame.members = {member(0, 1), member(1, 2, Joint::sleeve), member(2, 3, Joint::sleeve),
                         member(3, 4, Joint::sleeve), member(4, 5, Joint::hinge)};
  for (std::uint32_t i = 0; i < 6; ++i) {
    const double before = i == 0 ? 0 : (piece.frame.nodes[i] - piece.frame.nodes[i - 1]).norm();
    piece.spine.push_back({i == 0 ? 0 : piece.spine.back().at_m + before, piece.frame.nodes[i]});
  }
  Support plate;
  plate.node = 5, plate.width_m = 0.4;
  piece.supports.push_back(plate);
  plate.node = 0;
  piece.supports.push_back(plate);
  piece.tie_points = {{2, TiePurpose::front, {-1, 0, 2}, "left corner, to the front"}};
  return piece;
}

}  // namespace

TEST_CASE("a section ends at every joint") {
  const FrameSections frame = frame_sections(gate().frame);
  REQUIRE(frame.sections.size() == 5);
  CHECK(frame.sections[0].length_m == doctest::Approx(1));
  CHECK(frame.sections[2].length_m == doctest::Approx(2));
  REQUIRE(frame.joints.size() == 4);
  CHECK(frame.joints[3].kind == Joint::hinge);
  for (const FrameSection& section : frame.sections) CHECK_FALSE(section.bent);
  CHECK(print_tube(frame.sections[0]) == "25 x 1.5 mm");
}

TEST_CASE("a section is bent where it is carried bent, and springs where it is bent on the place") {
  Frame frame;
  for (int i = 0; i <= 8; ++i) frame.nodes.emplace_back(std::sin(i * pi / 16), 0, std::cos(i * pi / 16));
  for (std::uint32_t i = 0; i < 8; ++i) frame.members.push_back(member(i, i + 1));
  const FrameSections drawn = frame_sections(frame);
  REQUIRE(drawn.sections.size() == 1);
  CHECK(drawn.sections[0].bent);
  // A quarter circle of radius 1 in eight chords: 16 sin(180°/32).
  CHECK(drawn.sections[0].length_m == doctest::Approx(16 * std::sin(pi / 32)));
  for (FrameMember& m : frame.members) m.rest = Rest::straight;
  CHECK_FALSE(frame_sections(frame).sections[0].bent);
  CHECK(frame_sections(frame).sections[0].springs);
}

namespace {

/// One section of `length_m`, straight up for `straight_m` and then an arc of `radius_m` to the right, its nodes 0.1 m apart.
Frame up_and_over(double straight_m, double radius_m, double length_m) {
  Frame frame;
  const int count = static_cast<int>(std::lround(length_m / 0.1));
  for (int i = 0; i <= count; ++i) {
    const double at = length_m * i / count, angle = std::max(0.0, at - straight_m) / radius_m;
    frame.nodes.emplace_back(radius_m * (1 - std::cos(angle)), 0,
                             std::min(at, straight_m) + radius_m * std::sin(angle));
  }
  for (std::uint32_t i = 0; i + 1 < frame.nodes.size(); ++i) frame.members.push_back(member(i, i + 1));
  return frame;
}

}  // namespace

// A tube that is straight for 1.1 m and bends over its last 0.4 m was listed as straight: it is hardly longer than its chord.
TEST_CASE("a bend at the end of a section is told, with its radius and what is straight before it") {
  for (const double straight : {0.0, 0.3, 0.85, 0.9}) {
    CAPTURE(straight);
    const FrameSection up = frame_sections(up_and_over(straight, 1.8, 1.5)).sections.at(0);
    CHECK(up.bent);
    CHECK(up.radius_m == doctest::Approx(1.8).epsilon(0.01));
    CHECK(up.straight_before_m == doctest::Approx(straight).epsilon(0.03));
    CHECK(up.straight_after_m == 0);
    // The same from the other end.
    Frame turned = up_and_over(straight, 1.8, 1.5);
    std::ranges::reverse(turned.nodes);
    const FrameSection down = frame_sections(turned).sections.at(0);
    CHECK(down.straight_after_m == doctest::Approx(straight).epsilon(0.03));
    CHECK(down.straight_before_m == 0);
  }
  // The rise of an arc of length s and radius r is r (1 − cos s/2r), its chord 2r sin s/2r: 0.154 m and 1.457 m.
  const FrameSection arc = frame_sections(up_and_over(0, 1.8, 1.5)).sections.at(0);
  CHECK(arc.rise_m == doctest::Approx(1.8 * (1 - std::cos(1.5 / 3.6))).epsilon(0.01));
  CHECK(arc.chord_m == doctest::Approx(3.6 * std::sin(1.5 / 3.6)).epsilon(0.01));
  CHECK_FALSE(frame_sections(up_and_over(1.5, 1.8, 1.5)).sections.at(0).bent);
  // Over 0.2 m it comes aside by no more than 0.2²/(2 · 1.8) = 11 mm: less than a tube gives by itself.
  CHECK_FALSE(frame_sections(up_and_over(1.3, 1.8, 1.5)).sections.at(0).bent);
  // Two arcs, the tighter one last: no one radius would make it.
  Frame two = up_and_over(0, 1.8, 0.8);
  const Frame more = up_and_over(0, 0.5, 0.6);
  const Vec3 end = two.nodes.back();
  for (std::size_t i = 1; i < more.nodes.size(); ++i) {
    const double a = 0.8 / 1.8, x = more.nodes[i].x(), z = more.nodes[i].z();
    two.nodes.emplace_back(end.x() + x * std::cos(a) + z * std::sin(a), 0, end.z() - x * std::sin(a) + z * std::cos(a));
    const auto to = static_cast<std::uint32_t>(two.nodes.size() - 1);
    two.members.push_back(member(to - 1, to));
  }
  CHECK(frame_sections(two).sections.at(0).bent);
  CHECK(frame_sections(two).sections.at(0).radius_m == 0);
}

TEST_CASE("a section shorter than what its rod is carried in is cut from that") {
  Piece piece = gate();
  const FrameSections frame = frame_sections(piece.frame);
  // The lintel of 2 m is the longest of that tube.
  CHECK(stock_length_m(piece, frame, frame.sections[0]) == doctest::Approx(2));
  piece.supplies.push_back({"rod-aluminium-25mmx1.5mm-2500mm", "Aluminium tube", "piece", 5});
  CHECK(stock_length_m(piece, frame, frame.sections[0]) == doctest::Approx(2.5));
  piece.supplies.back().key = "rod-of-a-stranger";
  CHECK(stock_length_m(piece, frame, frame.sections[0]) == doctest::Approx(2));
}

TEST_CASE("feet are named from the left") {
  const auto feet = named_supports(gate());
  REQUIRE(feet.size() == 2);
  CHECK(feet[0].name == "left foot");
  CHECK(feet[0].support == 1);
  CHECK(feet[1].name == "right foot");
}

TEST_CASE("a line's length, its angle to the ground and where its anchor stands from the nearest foot") {
  PlacedPiece placed;
  SecuringLine line;
  line.tie = "front-1", line.x_m = -1.3, line.y_m = -1.5;
  placed.lines = {line};
  const Area area;
  const auto lines = anchored_lines(placed, gate(), area);
  REQUIRE(lines.size() == 1);
  // From (-1, 0, 2) to (-1.3, -1.5, 0): sqrt(0.09 + 2.25 + 4) = 2.518, and atan(2 / sqrt(2.34)) = 52.6°.
  CHECK(lines[0].length_m == doctest::Approx(2.5179).epsilon(1e-4));
  CHECK(lines[0].to_ground_rad * 180 / pi == doctest::Approx(52.59).epsilon(1e-3));
  CHECK(lines[0].foot == "left foot");
  CHECK(print_way(lines[0].right_m, lines[0].away_m, LengthStyle::metres) == "1.50 m out in front, 0.30 m to the left");
  CHECK(print_way(0.4, 2, LengthStyle::feet_inches) == "6' 6 1/2\" behind, 1' 3 1/2\" to the right");
  CHECK(print_way(0, 0, LengthStyle::metres) == "right there");
  CHECK(print_anchor(line, area, LengthStyle::metres) == "stake");
}

TEST_CASE("a line to a structure says which and how high, and one that cannot run is left out") {
  PlacedPiece placed;
  placed.lines.resize(2);
  placed.lines[0].tie = "front-7";
  SecuringLine& tied = placed.lines[1];
  tied.tie = "front-1", tied.anchor = AnchorKind::structure, tied.structure = std::string("s1"), tied.height_m = 1.6;
  placed.x_m = 3;
  Area area;
  Structure post;
  post.id = "s1", post.name = "Gate post", post.x_m = 1, post.y_m = 0.5, post.height_m = 2;
  area.structures = {post};
  const auto lines = anchored_lines(placed, gate(), area);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].line == 1);
  CHECK(lines[0].right_m == doctest::Approx(-1));  // 1 − 3 − (−1)
  CHECK(print_anchor(placed.lines[1], area, LengthStyle::metres) == "Gate post, 1.60 m up");
}

TEST_CASE("running marks name the nearest cluster, within the dressed part only") {
  Piece piece = gate();
  // Spine 6 m; clusters at 1.05, 1.30 … 4.80: by hand the nearest to 2 m is at 2.05 (number 5), to 3 m at 3.05 (number 9).
  for (std::uint32_t i = 0; i < 16; ++i)
    piece.clusters.push_back({i + 1, 1.05 + 0.25 * i, spine_point(piece, 1.05 + 0.25 * i), Vec3::UnitZ(), 0});
  const auto marks = running_marks(piece, cluster_chart(piece), 1);
  REQUIRE(marks.size() == 4);
  CHECK(marks[0].at_m == doctest::Approx(1));
  CHECK(marks[0].cluster == 1);
  CHECK(marks[1].cluster == 5);
  CHECK(marks[2].cluster == 9);
  CHECK(marks[3].cluster == 13);
  CHECK(marks[3].cluster_at_m == doctest::Approx(4.05));
}

TEST_CASE("every cluster and loose balloon is in one stretch, each with a name and a side") {
  Piece piece;
  piece.spine = {{0, {0, 0, 2}}, {4, {4, 0, 2}}};
  for (std::uint32_t i = 0; i < 8; ++i) {
    piece.clusters.push_back({i + 1, 0.25 + 0.5 * i, {0.25 + 0.5 * i, 0, 2}, Vec3::UnitX(), 0});
    piece.balloons.push_back({{0.25 + 0.5 * i, -0.1, 2}, {0.25 + 0.5 * i, 0, 2}, 0.2, 9, 0, i + 1, 0, Role::body});
  }
  const auto add = [&](double x, double y, double z, Role role) {
    piece.balloons.push_back({{x, y, z}, {x, 0, 2}, 0.12, 5, 1, 0, 0, role});
  };
  add(3.9, -0.2, 2, Role::filler), add(0.1, 0, 2.2, Role::accent), add(1.5, 0.2, 1.85, Role::filler);
  const auto loose = loose_balloons(piece);
  REQUIRE(loose.size() == 3);
  CHECK(loose[0].name == "f1");
  CHECK(loose[0].side == "above");
  CHECK(loose[1].side == "behind below");
  CHECK(loose[2].name == "f3");
  CHECK(loose[2].side == "front");
  const ClusterChart chart = cluster_chart(piece);
  const auto stretches = stretches_of(piece, chart, loose, 1.5);
  REQUIRE(stretches.size() == 3);
  CHECK(stretches[2].to_m == doctest::Approx(4));
  std::vector<int> times(8, 0), seen(3, 0);
  for (const MakingStretch& stretch : stretches) {
    for (const std::size_t i : stretch.clusters) {
      ++times[i];
      CHECK(chart.clusters[i].at_m >= stretch.from_m - 1e-9);
      CHECK(chart.clusters[i].at_m <= stretch.to_m + 1e-9);
    }
    for (const std::size_t i : stretch.loose) ++seen[i];
  }
  CHECK(times == std::vector<int>(8, 1));
  CHECK(seen == std::vector<int>(3, 1));
}

TEST_CASE("what sits past the upper end of a pole is on top") {
  Piece piece;
  piece.spine = {{0, {0, 0, 0}}, {2, {0, 0, 2}}};
  piece.balloons.push_back({{0, 0, 2.3}, {0, 0, 1.9}, 0.4, 16, 2, 0, 0, Role::topper});
  piece.balloons.push_back({{-0.2, 0, 0.1}, {0, 0, 0.1}, 0.12, 5, 2, 0, 0, Role::collar});
  const auto loose = loose_balloons(piece);
  CHECK(loose[0].name == "c1");
  CHECK(loose[0].side == "left");
  CHECK(loose[1].name == "t1");
  CHECK(loose[1].side == "on top");
}

// "f1: 11 D left" was drawn above the line: the picture is straight, the words were of the garland as it hangs.
TEST_CASE(
    "once the line is drawn straight its left side where it rises is above it, and its right side where it falls") {
  Piece rising, falling;
  rising.spine = {{0, {0, 0, 0}}, {2, {0, 0, 2}}}, falling.spine = {{0, {0, 0, 2}}, {2, {0, 0, 0}}};
  const auto side = [](const Piece& piece, const Vec3& point) {
    return print_straight_side(place_along(piece, point));
  };
  CHECK(side(rising, {-0.2, 0, 1}) == "above");
  CHECK(side(rising, {0.2, 0, 1}) == "below");
  CHECK(side(falling, {0.2, 0, 1}) == "above");
  CHECK(side(falling, {-0.2, 0, 1}) == "below");
  CHECK(side(rising, {-0.2, -0.2, 1}) == "front above");
  CHECK(side(falling, {0.05, -0.3, 1}) == "front");
  CHECK(side(rising, {0.02, 0.3, 1}) == "behind");
  // A level line as it hangs.
  Piece level;
  level.spine = {{0, {0, 0, 1}}, {2, {2, 0, 1}}};
  for (const Vec3& point : {Vec3(1, 0, 1.2), Vec3(1, -0.2, 0.8), Vec3(1, 0.3, 1), Vec3(1, -0.3, 1.05)})
    CHECK(side(level, point) == print_side(place_along(level, point)));
}
