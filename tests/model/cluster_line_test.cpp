// Line to cut, by hand.
#include "studio/model/cluster_line.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace quadrille {
namespace {

/// A column of quads: balloons of 0.25 m with their centres 0.165 m from the pole, a cluster every 0.2 m.
Piece column_of(std::uint32_t clusters) {
  Piece piece;
  for (std::uint32_t number = 1; number <= clusters; ++number) {
    const double z = 0.2 * number;
    piece.clusters.push_back({number, z, Vec3(0, 0, z), Vec3::UnitZ(), 0});
    for (int place = 0; place < 4; ++place) {
      Balloon balloon;
      balloon.centre = Vec3(0.165 * std::cos(place * pi / 2), 0.165 * std::sin(place * pi / 2), z);
      balloon.diameter_m = 0.25;
      balloon.cluster = number;
      piece.balloons.push_back(balloon);
    }
  }
  return piece;
}

TEST_CASE("a line is cut a tenth longer than it runs, with two knots") {
  // By hand: 1.1 · 3 + 0.6 = 3.9 (common practice, no source).
  CHECK(line_to_cut_m(3) == doctest::Approx(3.9));
  CHECK(line_to_cut_m(0) == 0);
  CHECK(line_to_cut_m(-1) == 0);
}

TEST_CASE("the line through the clusters runs from one to the next and once round each") {
  // By hand: 10 clusters, 9 steps of 0.2 m = 1.8 m; balloons begin 0.165 − 0.125 = 0.04 m from the pole, 10 turns of
  // 2π · 0.04 = 2.5133 m; 1.1 · 4.3133 + 0.6 = 5.3446 m.
  CHECK(clusters_together_m(column_of(10)) == doctest::Approx(5.3446).epsilon(1e-4));
  CHECK(clusters_together_m(column_of(1)) == 0);
  CHECK(clusters_together_m({}) == 0);
}

TEST_CASE("the order in which a piece tells its clusters does not matter") {
  Piece turned = column_of(7);
  std::swap(turned.clusters.front(), turned.clusters.back());
  CHECK(clusters_together_m(turned) == clusters_together_m(column_of(7)));
}

TEST_CASE("balloons that press on the pole leave the turn its least width") {
  // By hand: 2 clusters, 0.2 m + 2 · 2π · 0.02 = 0.4513 m; 1.1 · 0.4513 + 0.6 = 1.0965 m.
  Piece piece = column_of(2);
  for (Balloon& balloon : piece.balloons) balloon.diameter_m = 0.4;
  CHECK(clusters_together_m(piece) == doctest::Approx(1.0965).epsilon(1e-4));
}

}  // namespace
}  // namespace quadrille
