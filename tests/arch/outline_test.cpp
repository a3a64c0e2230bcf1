// Outlines of rigid frames, and clusters laid along them.
#include "plugins/arch/outline.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "plugins/arch/dressing.hpp"
#include "sdk/overlap.hpp"
#include "sdk/rod.hpp"

using namespace quadrille;
using namespace quadrille::arch;

namespace {

/// Largest deviation from walking along the outline at even pace, and from the tangent it claims; corners left out.
double unevenness(const Outline& outline) {
  constexpr int steps = 4000;
  const double h = outline.length_m / steps;
  double worst = 0;
  for (int i = 0; i < steps; ++i) {
    const double from = i * h, to = (i + 1) * h;
    const bool at_corner =
        std::ranges::any_of(outline.corners, [&](const Corner& c) { return c.from_m - h < to && c.to_m + h > from; });
    if (at_corner) continue;
    const Vec3 step = outline.at(to).point - outline.at(from).point;
    worst = std::max(
        {worst, std::abs(step.norm() / h - 1), (step.normalized() - outline.at((from + to) / 2).tangent).norm()});
  }
  return worst;
}

DressingPlan quads(double inflated) {
  DressingPlan plan;
  plan.make.inflated_m = inflated;
  return plan;
}

}  // namespace

TEST_CASE("every outline starts and ends at the feet and is walked at even pace") {
  const Outline outlines[] = {bent_rod(Elastica(Feet::upright, 0.4), 6),
                              half_circle(2.4, 2.4),
                              half_ellipse(2.4, 2.9),
                              half_ellipse(3, 1),
                              square(2.4, 2.2, 0),
                              square(2.4, 2.2, 0.4)};
  for (const Outline& outline : outlines) {
    CAPTURE(outline.length_m);
    CHECK(outline.at(0).point.isApprox(Vec3(-outline.widest_m / 2, 0, 0), 0.01));
    CHECK(std::abs(outline.at(0).point.x() + outline.at(outline.length_m).point.x()) < 1e-9);
    CHECK(std::abs(outline.at(outline.length_m).point.z()) < 1e-9);
    CHECK(outline.at(outline.length_m / 2).point.z() == doctest::Approx(outline.height_m).epsilon(1e-9));
    CHECK(unevenness(outline) < 2e-3);
  }
}

TEST_CASE("lengths of rigid outlines are those of geometry") {
  CHECK(half_circle(2, 1).length_m == doctest::Approx(pi));
  CHECK(half_circle(2, 1.5).length_m == doctest::Approx(pi + 1));
  CHECK(square(2, 3, 0).length_m == doctest::Approx(8));
  CHECK(square(2, 3, 0.5).length_m == doctest::Approx(8 - 4 * 0.5 + pi * 0.5));
  // Perimeter of the ellipse with semi-axes 2 and 1: 9.688448220547675 (8 E(√3/2); value from memory, and Ramanujan's
  // second approximation agrees to 2e-5), to the nanometre.
  CHECK(std::abs(half_ellipse(4, 1).length_m - 9.688448220547675 / 2) < 0.6e-9);
  CHECK(std::abs(half_ellipse(2, 2).length_m - 9.688448220547675 / 2) < 0.6e-9);
}

TEST_CASE("as many clusters as fit are laid, each on one spacing, what is left shared by both feet") {
  const Outline outline = half_circle(2, 1.5);
  DressingPlan plan = quads(0.25);
  plan.bare_m = 0.1;
  int most = 0;
  const auto stations = cluster_stations(outline, plan, most);
  const double spacing = 0.25 * std::pow(2.0, -0.25);
  CHECK(most == static_cast<int>(std::floor((pi + 1 - 0.2) / spacing)));
  REQUIRE(stations.size() == static_cast<std::size_t>(most));
  for (std::size_t i = 1; i < stations.size(); ++i) CHECK(std::abs(stations[i] - stations[i - 1] - spacing) < 1e-12);
  CHECK(stations.front() == doctest::Approx(outline.length_m - stations.back()));
  plan.clusters = 5;
  CHECK(cluster_stations(outline, plan, most).size() == 5);
}

TEST_CASE("balloons clear each other round sharp and round corners") {
  for (const double corner : {0.0, 0.1, 0.2, 0.3, 0.35, 0.6})
    for (int n = 2; n <= 6; ++n) {
      CAPTURE(corner);
      CAPTURE(n);
      DressingPlan plan = quads(0.23);
      plan.make.size = plan.pattern.cluster_size = n;
      const Dressing dressing = dress(square(2.4, 2.2, corner), plan);
      CHECK(dressing.clusters.size() > 20);
      CHECK(deepest_overlap(dressing.balloons).share < 0.3);
    }
}

TEST_CASE("a rod is cut into sections that add up to it") {
  CHECK(section_lengths(6, 1.5) == std::vector<double>{1.5, 1.5, 1.5, 1.5});
  const auto cut = section_lengths(5, 1.5);
  REQUIRE(cut.size() == 4);
  CHECK(cut.back() == doctest::Approx(0.5));
  CHECK(section_lengths(1, 1.5) == std::vector<double>{1});
}
