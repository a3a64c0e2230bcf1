// How rigid frames hold themselves upright sideways.
#include "plugins/arch/sway.hpp"

#include <doctest/doctest.h>

#include "sdk/dressing.hpp"
#include "tests/arch/built_arch.hpp"

using namespace quadrille;
using namespace quadrille::arch;

namespace {

/// How far the crown of a square frame of span 2a and height h gives way to a unit push, EI = 1, GJ = t. By symmetry each
/// leg takes half of the push, bends as a cantilever of length h (its top, and with it the beam, tilts freely), and is
/// twisted by the end of the beam; half the beam of length a bends under ½x + m, with m so that its middle does not turn:
/// a²/4 + m a + (a/2 + m) h/t = 0.
double square_gives(double a, double h, double t) {
  const double m = -(a * a / 4 + a * h / (2 * t)) / (a + h / t);
  const double leg = h * h * h / 6, beam = a * a * a / 6 + m * a * a / 2, twist = (a / 2 + m) * a * h / t;
  return leg + beam + twist;
}

ValueMap rigid(const char* frame) { return {{"frame", choice_of(frame)}}; }

}  // namespace

TEST_CASE("a square frame gives way to a push as worked out by hand") {
  for (const auto& [span, height] : {std::pair(2.4, 2.4), std::pair(0.2, 3.0), std::pair(6.0, 2.0)}) {
    const Sway sway = sway_of(square(span, height, 0), 1);
    CHECK(1 / sway.stiffness_n_per_m == doctest::Approx(square_gives(span / 2, height, 1 / 1.3)).epsilon(2e-3));
  }
}

TEST_CASE("half a circle gives way to a push as worked out by hand") {
  // Radius 1, angle p from the crown, EI = 1, GJ = t; sin p aside of the crown and z = 1 - cos p below it. Half of the
  // push gives the moments -z/2 about x and ½ sin p + m about z; along the line (cos p, sin p) and across it they bend
  // with -½ sin p - m cos p and twist with ½ (1 - cos p) + m sin p. As ∫ ½ sin cos = ∫ ½ (1 - cos) sin = ¼ and
  // ∫ cos² = ∫ sin² = π/4 over p = 0 … π/2, the energy is least for m = -1/π, whatever t. Then ∫ bending² is
  // π/16 + m/2 + m² π/4, and ∫ torsion² is ¼ (3π/4 - 2) + m/2 + m² π/4.
  const double t = 1 / 1.3, m = -1 / pi;
  const double energy = pi / 16 + m / 2 + m * m * pi / 4 + ((3 * pi / 4 - 2) / 4 + m / 2 + m * m * pi / 4) / t;
  const Sway sway = sway_of(half_circle(2, 1), 1);
  CHECK(1 / sway.stiffness_n_per_m == doctest::Approx(2 * energy).epsilon(1e-4));
}

TEST_CASE("two uprights close together lean over by themselves as a pole does") {
  // A pole held at its foot, of height h: w h³/EI = 7.837 (Greenhill's problem, from memory). The short beam adds a load at
  // the top: by Dunkerley 1/w = h³/7.837 + (a h²)/(π²/4), a lower bound; Rayleigh's quotient is an upper one.
  const double a = 0.1, h = 4;
  const double low = 1 / (h * h * h / 7.837 + a * h * h * 4 / (pi * pi));
  const double limit = sway_of(square(2 * a, h, 0), 1).limit_n_per_m;
  CHECK(limit > low);
  CHECK(limit < 1.05 * low);
}

TEST_CASE("stiffness grows as EI and falls as the cube of the size, the limit of the weight too") {
  const Sway one = sway_of(half_ellipse(2, 2.4), 1), twice = sway_of(half_ellipse(4, 4.8), 3);
  CHECK(twice.stiffness_n_per_m == doctest::Approx(3 * one.stiffness_n_per_m / 8).epsilon(1e-5));
  CHECK(twice.limit_n_per_m == doctest::Approx(3 * one.limit_n_per_m / 8).epsilon(1e-5));
}

TEST_CASE("weight magnifies what a push does, up to where the frame leans over by itself") {
  const Sway sway{50, 8};
  CHECK(sway_under_push_m(sway, 0) == doctest::Approx(named_push_n / 50));
  CHECK(sway_under_push_m(sway, 4) == doctest::Approx(2 * named_push_n / 50));
  CHECK_FALSE(sway_under_push_m(sway, 8).has_value());
}

TEST_CASE("a rigid frame of a thin glass-fibre rod was called sound: now it is warned of, with what would do") {
  for (const char* frame : {"half-circle", "half-ellipse", "square"}) {
    CAPTURE(frame);
    ValueMap values = rigid(frame);
    values["rod-diameter"] = length_of(0.008);
    const auto thin = build(values);
    REQUIRE(warns(*thin, "rod-diameter"));
    const std::string text = text_of(*thin, "rod-diameter");
    ValueMap thicker = values, tube = values;
    thicker["rod-diameter"] = length_of(advised_m(text, "a rod diameter of at least ") / 1000);
    CHECK_FALSE(warns(*build(thicker), "rod-diameter"));
    CHECK(text.find("aluminium tube, 25 x 1.5 mm") != std::string::npos);
    tube["rod-material"] = choice_of("aluminium");
    tube["rod-diameter"] = length_of(0.025);
    tube["rod-wall"] = length_of(0.0015);
    const auto sound = build(tube);
    CHECK_FALSE(warns(*sound, "rod-diameter"));
    CHECK(fact(*sound, "topple_weight_n_per_m") > fact(*sound, "weight_n_per_m"));
  }
}

TEST_CASE("a frame whose feet turn is told of its feet, not of its rod") {
  ValueMap values = rigid("half-circle");
  values["feet"] = choice_of("pinned");
  const auto built = build(values);
  CHECK(warns(*built, "feet"));
  CHECK_FALSE(warns(*built, "rod-diameter"));
}

TEST_CASE(
    "a thin flexible rod that a push of one newton lays over was called sound: now it is told which rod would do") {
  ValueMap values{{"rod-diameter", length_of(0.008)}};
  const auto thin = build(values);
  REQUIRE(warns(*thin, "rod-diameter"));
  const std::string text = text_of(*thin, "rod-diameter");
  CHECK(text.find("lay the bent glass fibre rod, 8 mm over sideways") != std::string::npos);
  values["rod-diameter"] = length_of(advised_m(text, "a rod diameter of at least ") / 1000);
  const auto sound = build(values);
  CHECK_FALSE(warns(*sound, "rod-diameter"));
  CHECK(named_push_n / fact(*sound, "sway_n_per_m") < most_sway_share * fact(*sound, "height_m"));
  values["rod-diameter"] = length_of(advised_m(text, "a rod diameter of at least ") / 1000 - 0.001);
  CHECK(warns(*build(values), "rod-diameter"));
  // A PVC rod of 22 mm would bear 22 mm / 2 / 0.0104 = 1.06 m, and this one is bent to 1.02 m (6 m / 5.897): no rod that
  // can be bent so would do, and only lines are advised.
  const auto soft = build({{"rod-material", choice_of("pvc")}, {"rod-diameter", length_of(0.02)}});
  REQUIRE(warns(*soft, "rod-diameter"));
  CHECK(text_of(*soft, "rod-diameter").find("at least") == std::string::npos);
  CHECK(text_of(*soft, "rod-diameter").find("tie the crown") != std::string::npos);
}
