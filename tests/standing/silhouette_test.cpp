// The outline that the wind sees, against circle geometry and a brute-force raster.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "sdk/random.hpp"
#include "studio/standing/silhouette.hpp"
#include "studio/standing/standing_case.hpp"
#include "studio/standing/wind.hpp"
#include "tests/standing/case_pieces.hpp"

namespace quadrille {
namespace {

double sum(const std::vector<double>& numbers) { return std::accumulate(numbers.begin(), numbers.end(), 0.0); }

/// Area of the union by counting squares of side `step`.
double counted_area(const std::vector<WindDisc>& discs, double step) {
  double least_x = 1e9, least_y = 1e9, most_x = -1e9, most_y = -1e9;
  for (const WindDisc& disc : discs) {
    least_x = std::min(least_x, disc.x - disc.radius);
    most_x = std::max(most_x, disc.x + disc.radius);
    least_y = std::min(least_y, disc.y - disc.radius);
    most_y = std::max(most_y, disc.y + disc.radius);
  }
  const auto columns = static_cast<std::size_t>((most_x - least_x) / step) + 1;
  const auto rows = static_cast<std::size_t>((most_y - least_y) / step) + 1;
  std::vector<char> hit(columns * rows, 0);
  for (const WindDisc& disc : discs)
    for (std::size_t row = 0; row < rows; ++row) {
      const double y = least_y + (static_cast<double>(row) + 0.5) * step - disc.y;
      if (std::abs(y) >= disc.radius) continue;
      const double half = std::sqrt(disc.radius * disc.radius - y * y);
      for (auto column = static_cast<std::size_t>(std::max(0.0, (disc.x - half - least_x) / step - 1));
           column < columns; ++column) {
        const double x = least_x + (static_cast<double>(column) + 0.5) * step - disc.x;
        if (x > half) break;
        if (x * x + y * y < disc.radius * disc.radius) hit[row * columns + column] = 1;
      }
    }
  return static_cast<double>(std::accumulate(hit.begin(), hit.end(), 0L)) * step * step;
}

TEST_CASE("a disc alone has its whole area, and one that hides another takes all of it") {
  CHECK(sum(union_shares({{3, -2, 0.5}})) == doctest::Approx(pi * 0.25).epsilon(1e-13));
  const auto two = union_shares({{0, 0, 0.5}, {0.1, 0, 0.2}});
  CHECK(two[0] == doctest::Approx(pi * 0.25).epsilon(1e-13));
  CHECK(two[1] == 0);
  CHECK(sum(union_shares({{0, 0, 0.5}, {0, 0, 0.5}, {0, 0, 0.5}})) == doctest::Approx(pi * 0.25).epsilon(1e-13));
}

TEST_CASE("two overlapping discs lose the lens between them once") {
  // Area of the lens of two circles of radius r at distance d: 2r² acos(d/2r) − d/2 √(4r² − d²). A handbook formula,
  // from memory.
  const double r = 0.14, d = 0.2;
  const double lens = 2 * r * r * std::acos(d / (2 * r)) - d / 2 * std::sqrt(4 * r * r - d * d);
  const auto shares = union_shares({{0, 0, r}, {d, 0, r}});
  CHECK(sum(shares) == doctest::Approx(2 * pi * r * r - lens).epsilon(1e-12));
  CHECK(shares[0] == doctest::Approx(shares[1]).epsilon(1e-12));
}

TEST_CASE("random heaps of discs have the area that counting squares gives") {
  Random random(7);
  for (const int many : {3, 40, 400, 3000}) {
    std::vector<WindDisc> discs;
    const double spread = many == 3000 ? 0.6 : 0.12 * std::sqrt(many);
    for (int i = 0; i < many; ++i)
      discs.push_back({random.within(0, spread), random.within(0, spread), random.within(0.03, 0.2)});
    const double step = 5e-4;
    CHECK(sum(union_shares(discs)) == doctest::Approx(counted_area(discs, step)).epsilon(2e-3));
    std::vector<WindDisc> turned(discs.rbegin(), discs.rend());
    CHECK(sum(union_shares(turned)) == doctest::Approx(sum(union_shares(discs))).epsilon(1e-10));
  }
}

Piece two_balloons_and_a_rod() {
  Piece piece;
  Balloon balloon;
  balloon.diameter_m = 0.3;
  balloon.centre = {0, 0, 1};
  piece.balloons.push_back(balloon);
  balloon.centre = {0, 2, 1};
  piece.balloons.push_back(balloon);
  piece.frame.nodes = {{0, 0, 0}, {0, 0, 2}};
  piece.frame.members.push_back({0, 1, Joint::rigid, Rest::as_drawn, 0.04, 0, 70e9, 2700, 1e8});
  return piece;
}

TEST_CASE("two balloons in line with the wind count once, side by side twice; the rod shows where no balloon is") {
  const Piece piece = two_balloons_and_a_rod();
  const double disc = pi * 0.15 * 0.15;
  const Silhouette onto_the_front = silhouette(piece, 90);
  CHECK(sum(onto_the_front.balloons_m2) == doctest::Approx(disc).epsilon(1e-12));
  CHECK(onto_the_front.bare_m.at(0) == doctest::Approx(1.7).epsilon(1e-12));
  CHECK(onto_the_front.total_m2 == doctest::Approx(disc + 1.7 * 0.04).epsilon(1e-12));
  CHECK(sum(silhouette(piece, 0).balloons_m2) == doctest::Approx(2 * disc).epsilon(1e-12));
  CHECK(sum(silhouette(piece, 270).balloons_m2) == doctest::Approx(disc).epsilon(1e-12));
}

TEST_CASE("the outline of every piece type is that of a raster, from 16 sides") {
  for (const char* type : {"arch", "column", "garland"}) {
    const Piece piece = built_of(type, {});
    for (const double direction : wind_directions()) {
      const Silhouette seen = silhouette(piece, direction);
      const Vec3 way = wind_way(direction), across(-way.y(), way.x(), 0);
      constexpr double step = 0.002;
      double least = 1e9, most = -1e9, high = 0;
      for (const Balloon& balloon : piece.balloons) {
        least = std::min(least, balloon.centre.dot(across) - balloon.diameter_m / 2);
        most = std::max(most, balloon.centre.dot(across) + balloon.diameter_m / 2);
        high = std::max(high, balloon.centre.z() + balloon.diameter_m / 2);
      }
      const auto columns = static_cast<std::size_t>((most - least) / step) + 1;
      const auto rows = static_cast<std::size_t>((high + 0.5) / step) + 1;
      std::vector<char> hit(columns * rows, 0);
      for (const Balloon& balloon : piece.balloons) {
        const double x = balloon.centre.dot(across) - least, y = balloon.centre.z() + 0.5, r = balloon.diameter_m / 2;
        for (auto row = static_cast<std::size_t>(std::max(0.0, (y - r) / step)); row < rows; ++row) {
          const double up = (static_cast<double>(row) + 0.5) * step - y;
          if (up > r) break;
          if (up < -r) continue;
          const double half = std::sqrt(r * r - up * up);
          const auto end = static_cast<std::size_t>(std::max(0.0, (x + half) / step + 0.5));
          for (auto column = static_cast<std::size_t>(std::max(0.0, (x - half) / step + 0.5));
               column < std::min(end, columns); ++column)
            hit[row * columns + column] = 1;
        }
      }
      const double counted = static_cast<double>(std::ranges::count(hit, 1)) * step * step;
      double shares = 0;
      for (const double share : seen.balloons_m2) shares += share;
      CHECK(shares == doctest::Approx(counted).epsilon(5e-3));
      CHECK(seen.total_m2 >= shares);
    }
  }
}

TEST_CASE("the far leg of an arch blown at from the side got no wind: what is far behind does not shelter") {
  const Piece piece = two_balloons_and_a_rod();  // 2 m behind each other, seen from the front
  const double disc = pi * 0.15 * 0.15;
  CHECK(sum(silhouette(piece, 90, 0.6).balloons_m2) == doctest::Approx(2 * disc).epsilon(1e-12));
  CHECK(sum(silhouette(piece, 90, 2.5).balloons_m2) == doctest::Approx(disc).epsilon(1e-12));
}

}  // namespace
}  // namespace quadrille
