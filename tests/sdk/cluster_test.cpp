// Cluster geometry against the uniform antiprism, and the trade's balloons per foot.
#include "sdk/cluster.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "tests/reference_table.hpp"

using namespace quadrille;

TEST_CASE("ring radius and spacing of hard spheres are those of the uniform antiprism") {
  const ReferenceTable table("antiprism.csv");
  int checked = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const int n = static_cast<int>(table.number(row, "n_per_layer"));
    if (n < least_cluster || n > most_cluster) continue;
    ++checked;
    CAPTURE(n);
    // The table is printed to ten decimals.
    CHECK(hard_ring_radius(n, 1) == doctest::Approx(table.number(row, "ring_radius_over_d")).epsilon(1e-10));
    CHECK(hard_spacing(n, 1) == doctest::Approx(table.number(row, "layer_spacing_over_d")).epsilon(1e-10));
    // To the last digits by the formulas themselves: plane geometry of the n-gon and of the antiprism.
    CHECK(std::abs(hard_ring_radius(n, 0.28) - 0.28 / (2 * std::sin(pi / n))) < 1e-15);
    const double c = std::cos(pi / (2 * n));
    CHECK(std::abs(hard_spacing(n, 0.28) - 0.28 * std::sqrt(1 - 1 / (4 * c * c))) < 1e-15);
  }
  CHECK(checked == 5);
  CHECK(std::abs(hard_spacing(4, 1) - std::pow(2.0, -0.25)) < 1e-15);
}

TEST_CASE("hard clusters touch: each balloon its neighbours in the ring and two of the next ring, and none overlap") {
  for (int n = least_cluster; n <= most_cluster; ++n) {
    CAPTURE(n);
    ClusterMake make;
    make.size = n;
    make.inflated_m = 0.28;
    make.snug = 1;
    const std::vector<std::uint32_t> slots(static_cast<std::size_t>(n));
    const Cluster first{1, 0, Vec3::Zero(), Vec3::UnitZ(), 0};
    const Cluster second{2, 0, Vec3(0, 0, hard_spacing(n, 0.28)), Vec3::UnitZ(), pi / n};
    const auto below = ring_balloons(first, make, slots), above = ring_balloons(second, make, slots);
    for (const Balloon& balloon : above) {
      int touched = 0;
      for (const Balloon& other : below) {
        const double distance = (balloon.centre - other.centre).norm();
        CHECK(distance > 0.28 - 2e-9);  // centres are rounded to a nanometre
        touched += distance < 0.28 + 2e-9;
      }
      CHECK(touched == 2);
    }
    CHECK((below[0].centre - below[1].centre).norm() == doctest::Approx(0.28).epsilon(1e-8));
  }
}

TEST_CASE("a tight, snug cluster is the hard one times snug") {
  ClusterMake make;
  make.snug = 0.88;
  make.inflated_m = 0.25;
  const auto ring = ring_balloons({1, 0, Vec3(1, 2, 3), Vec3::UnitX(), 0.3}, make, {0, 1, 2, 3});
  for (const Balloon& balloon : ring) {
    CHECK((balloon.centre - Vec3(1, 2, 3)).norm() == doctest::Approx(0.88 * 0.25 / std::sqrt(2)).epsilon(1e-8));
    CHECK(balloon.centre.x() == doctest::Approx(1).epsilon(1e-9));
    CHECK(balloon.neck == Vec3(1, 2, 3));
  }
}

TEST_CASE("place 0 faces the audience and places run anticlockwise seen from the far end") {
  // An upright axis seen from above: from the front (-y) anticlockwise comes the right (+x).
  CHECK(direction_about(Vec3::UnitZ(), 0).isApprox(-Vec3::UnitY(), 1e-12));
  CHECK(direction_about(Vec3::UnitZ(), pi / 2).isApprox(Vec3::UnitX(), 1e-12));
  // A line that runs away from the audience has no front: up takes its place.
  CHECK(direction_about(Vec3::UnitY(), 0).isApprox(Vec3::UnitZ(), 1e-12));
}
