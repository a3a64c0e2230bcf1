// Seats of fillers against solid geometry: a ball on three and on four others, in the hole between four.
#include "plugins/garland/seats.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <optional>

using namespace quadrille;
using namespace quadrille::garland;

namespace {

struct Sphere {
  Vec3 centre;
  double radius;
};

/// Of the two seats of a ball of this radius on three others the one on the given side of z = 0.
std::optional<Vec3> seat(const Sphere& a, const Sphere& b, const Sphere& c, double radius, double side) {
  const auto both =
      seats_on_three(a.centre, a.radius + radius, b.centre, b.radius + radius, c.centre, c.radius + radius);
  if (!both) return std::nullopt;
  return (*both)[0].z() * side > (*both)[1].z() * side ? (*both)[0] : (*both)[1];
}

/// Three spheres that touch each other, their centres in the plane z = 0.
std::array<Sphere, 3> touching(double a, double b, double c) {
  // Sides of the triangle of the centres are sums of radii; the third corner by the law of cosines.
  const double ab = a + b, ac = a + c, bc = b + c, x = (ab * ab + ac * ac - bc * bc) / (2 * ab);
  return {Sphere{{0, 0, 0}, a}, Sphere{{ab, 0, 0}, b}, Sphere{{x, std::sqrt(ac * ac - x * x), 0}, c}};
}

/// Radius of the sphere that touches four which touch each other, inside the hole between them: Soddy–Gosset,
/// (Σk)² = 3 Σk² over the five curvatures k = 1/r (Soddy, Nature 137, 1936).
double soddy_gosset(double a, double b, double c, double d) {
  double sum = 0, squares = 0;
  for (const double r : {a, b, c, d}) sum += 1 / r, squares += 1 / (r * r);
  // 2k² − 2 sum k + 3 squares − sum² = 0; the larger k is the sphere inside.
  return 1 / ((sum + std::sqrt(sum * sum - 2 * (3 * squares - sum * sum))) / 2);
}

}  // namespace

TEST_CASE("a ball rests on three and on four others at the height of solid geometry") {
  // R = 0.14, ρ = 0.065: on three touching √((R+ρ)² − 4R²/3) = 0.1260621540, on a square of four √((R+ρ)² − 2R²) =
  // 0.0531507291. Source: solid geometry, recomputed from coordinates.
  constexpr double R = 0.14, rho = 0.065;
  const auto [a, b, c] = touching(R, R, R);
  CHECK(seat(a, b, c, rho, 1)->z() == doctest::Approx(0.1260621540).epsilon(1e-9));
  CHECK(seat(a, b, c, rho, -1)->z() == doctest::Approx(-0.1260621540).epsilon(1e-9));

  const Sphere p{{0, 0, 0}, R}, q{{2 * R, 0, 0}, R}, r{{0, 2 * R, 0}, R}, s{{2 * R, 2 * R, 0}, R};
  const auto on_four = seat(p, q, r, rho, 1);
  REQUIRE(on_four.has_value());
  CHECK(on_four->z() == doctest::Approx(0.0531507291).epsilon(1e-8));
  CHECK((*on_four - s.centre).norm() == doctest::Approx(R + rho).epsilon(1e-12));
}

TEST_CASE("a filler seated in the hole between four balls touches the fourth: Soddy and Gosset") {
  // Inner spheres: of four unit spheres √1.5 − 1 = 0.2247448714; of 1, 1, 1, 2: 0.2613247726. Source: the formula by
  // hand, confirmed by coordinates.
  CHECK(soddy_gosset(1, 1, 1, 1) == doctest::Approx(0.2247448714).epsilon(1e-9));
  CHECK(soddy_gosset(1, 1, 1, 2) == doctest::Approx(0.2613247726).epsilon(1e-9));
  const double mixes[][4] = {{1, 1, 1, 1}, {1, 1, 1, 2}, {0.165, 0.12, 0.12, 0.165}, {0.165, 0.12, 0.05, 0.12}};
  for (const auto& mix : mixes) {
    const auto [a, b, c] = touching(mix[0], mix[1], mix[2]);
    const auto top = seat(a, b, c, mix[3], 1);  // the fourth ball, on the three
    REQUIRE(top.has_value());
    const double filler = soddy_gosset(mix[0], mix[1], mix[2], mix[3]);
    const auto hole = seat(a, b, c, filler, 1);
    REQUIRE(hole.has_value());
    CHECK((*hole - *top).norm() == doctest::Approx(mix[3] + filler).epsilon(1e-9));
  }
}

TEST_CASE("a ball too small for the hole between three falls through") {
  // Between three touching circles of radius R the inner one has R (2/√3 − 1) = 0.1547005384 R (Descartes).
  const auto [a, b, c] = touching(1, 1, 1);
  CHECK_FALSE(seat(a, b, c, 0.1547, 1).has_value());
  REQUIRE(seat(a, b, c, 0.1548, 1).has_value());
  CHECK(seat(a, b, c, 0.1548, 1)->z() < 0.02);
}

TEST_CASE("a ball on two others touches both, in its plane or as far out as it goes") {
  const Vec3 a(0, 0, 0), b(0.3, 0.05, 0.1), normal = Vec3(1, 2, 3).normalized();
  const auto both = seats_on_two(a, 0.2, b, 0.25, normal, 0.1);
  REQUIRE(both.has_value());
  for (const Vec3& p : *both) {
    CHECK((p - a).norm() == doctest::Approx(0.2).epsilon(1e-12));
    CHECK((p - b).norm() == doctest::Approx(0.25).epsilon(1e-12));
    CHECK(normal.dot(p) == doctest::Approx(0.1).epsilon(1e-12));
  }
  CHECK_FALSE(seats_on_two(a, 0.2, b, 0.25, normal, 0.5).has_value());  // the plane passes by
  CHECK_FALSE(seats_on_two(a, 0.1, b, 0.1, normal, 0.1).has_value());   // too far apart for both

  const Vec3 out(0.2, -1, 0.4);
  const auto rim = outermost_on_two(a, 0.2, b, 0.25, out);
  REQUIRE(rim.has_value());
  CHECK((*rim - a).norm() == doctest::Approx(0.2).epsilon(1e-12));
  CHECK((*rim - b).norm() == doctest::Approx(0.25).epsilon(1e-12));
  for (double level = -0.3; level < 0.3; level += 0.01)
    if (const auto others = seats_on_two(a, 0.2, b, 0.25, normal, level))
      for (const Vec3& p : *others) CHECK(out.dot(p) <= out.dot(*rim) + 1e-12);
}
