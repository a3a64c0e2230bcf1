// The clear opening, against figures worked out by hand.
#include "studio/takeoff/opening.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace quadrille;

namespace {

Balloon ball(double x, double z, double diameter) {
  Balloon b;
  b.centre = b.neck = {x, 0, z};
  b.diameter_m = diameter;
  return b;
}

void add_foot(Piece& piece, double x, SupportKind kind, double plate_m = 0) {
  piece.supports.push_back(
      {kind, static_cast<std::uint32_t>(piece.frame.nodes.size()), false, plate_m, plate_m, 0, 0, 0});
  piece.frame.nodes.emplace_back(x, 0, 0);
}

/// Two stacks of balls of 0.3 m over feet at x = -1 and 1, and one ball over the middle with its centre 2.5 m up.
Piece gate() {
  Piece piece;
  for (double x : {-1.0, 1.0}) {
    add_foot(piece, x, SupportKind::socket);
    for (double z : {0.15, 0.45, 2.0}) piece.balloons.push_back(ball(x, z, 0.3));
  }
  piece.balloons.push_back(ball(0, 2.5, 0.3));
  return piece;
}

}  // namespace

TEST_CASE("an opening lies between the balloons at the floor and under the lowest at the middle") {
  const auto opening = opening_of(gate());
  REQUIRE(opening);
  // 2 m between the feet less a radius of 0.15 m on each side; 2.5 m less 0.15 m.
  CHECK(opening->width_m() == doctest::Approx(1.7));
  CHECK(opening->middle_m() == doctest::Approx(0));
  CHECK(*opening->height_m == doctest::Approx(2.35));
  CHECK(opening->between_plates_m() == doctest::Approx(1.7));
}

TEST_CASE("a ball beside the middle counts by the part of it that hangs there") {
  Piece piece = gate();
  // Its edge comes within 0.15 m of the middle at x = 0.15, which is 0.12 m from its centre: sqrt(0.15² - 0.12²) is
  // 0.09 (a triangle of 9, 12, 15), so it hangs down to 2.3 - 0.09 there.
  piece.balloons.push_back(ball(0.27, 2.3, 0.3));
  CHECK(*opening_of(piece)->height_m == doctest::Approx(2.21));
  // A ball whose edge is 0.2 m away does not.
  piece.balloons.back() = ball(0.35, 1.0, 0.3);
  CHECK(*opening_of(piece)->height_m == doctest::Approx(2.35));
}

TEST_CASE("a ball counts at the floor as far as it reaches into the lowest 0.3 m") {
  Piece piece = gate();
  // Centre at 0.39 m, 0.09 m over the slab: half its chord there is 0.12 (9, 12, 15 again), and it stands 0.1 m further
  // in than the stack.
  piece.balloons.push_back(ball(-0.9, 0.39, 0.3));
  CHECK(opening_of(piece)->left_m == doctest::Approx(-0.78));
  CHECK(opening_of(piece)->right_m == doctest::Approx(0.85));
  // Raised above the slab altogether it leaves the width alone.
  piece.balloons.back() = ball(-0.9, 0.46, 0.3);
  CHECK(opening_of(piece)->left_m == doctest::Approx(-0.85));
}

TEST_CASE("plates that reach in are told apart from the balloons") {
  Piece piece = gate();
  for (Support& support : piece.supports) support.kind = SupportKind::plate, support.width_m = 0.5;
  // A plate of 0.5 m reaches 0.25 m in from its foot: 2 - 0.5; the balloons only 0.15 m.
  CHECK(opening_of(piece)->between_plates_m() == doctest::Approx(1.5));
  CHECK(opening_of(piece)->width_m() == doctest::Approx(1.7));
  for (Support& support : piece.supports) support.width_m = 0.2;
  CHECK(opening_of(piece)->between_plates_m() == doctest::Approx(1.7));
}

TEST_CASE("bare poles bound an opening too, sloped ones by what stands near the floor") {
  Piece piece;
  add_foot(piece, -1, SupportKind::plate, 0.04);
  add_foot(piece, 1, SupportKind::plate, 0.04);
  piece.frame.nodes.emplace_back(0, 0, 3);
  FrameMember pole;
  pole.outer_m = 0.04;
  for (std::uint32_t foot : {0u, 1u}) pole.from = foot, pole.to = 2, piece.frame.members.push_back(pole);
  // Each pole leans in by 1 m over 3 m, so by 0.1 m over the lowest 0.3 m; then half its own width: 0.12 on each side.
  const auto opening = opening_of(piece);
  REQUIRE(opening);
  CHECK(opening->width_m() == doctest::Approx(1.76));
  // At 0.15 m from the middle the poles are 3 · 0.85 = 2.55 m up, and half their width lower.
  CHECK(*opening->height_m == doctest::Approx(2.53));
}

TEST_CASE("the widest of several openings counts") {
  Piece piece = gate();
  piece.balloons.push_back(ball(-0.4, 0.15, 0.3));  // a post in the way: gaps of 0.3 m and 1.1 m
  const auto opening = opening_of(piece);
  CHECK(opening->left_m == doctest::Approx(-0.25));
  CHECK(opening->right_m == doctest::Approx(0.85));
}

TEST_CASE("what has no two feet, or nothing between them, has no opening") {
  CHECK_FALSE(opening_of({}));
  Piece piece = gate();
  piece.supports.pop_back();
  CHECK_FALSE(opening_of(piece));
  piece = gate();
  for (Support& support : piece.supports) support.kind = SupportKind::hook;
  CHECK_FALSE(opening_of(piece));
  piece = gate();
  for (int i = 0; i < 20; ++i) piece.balloons.push_back(ball(-1 + i * 0.1, 0.15, 0.3));
  CHECK_FALSE(opening_of(piece));
  // Without a crown there is a width and no height.
  piece = gate();
  piece.balloons.pop_back();
  REQUIRE(opening_of(piece));
  CHECK_FALSE(opening_of(piece)->height_m);
}

TEST_CASE("numbers that are not finite leave out what they belong to") {
  constexpr double nan = std::numeric_limits<double>::quiet_NaN();
  Piece piece = gate();
  piece.balloons.push_back(ball(nan, 0.1, 0.3));
  piece.balloons.push_back(ball(0, 0.1, nan));
  piece.frame.nodes.emplace_back(nan, 0, 0);
  FrameMember lost;
  lost.from = 0, lost.to = 2, lost.outer_m = 0.02;
  piece.frame.members = {lost, {0, 99, Joint::rigid, Rest::as_drawn, 0.02, 0, 0, 0, 0}};
  piece.supports.push_back({SupportKind::plate, 2, false, 1, 1, 0, 0, 0});
  CHECK(opening_of(piece)->width_m() == doctest::Approx(1.7));
}
