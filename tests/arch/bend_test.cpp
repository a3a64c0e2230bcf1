// The bounds that an arch states hold when they are typed, and what cannot be checked is said.
#include <doctest/doctest.h>

#include <cmath>

#include "plugins/arch/topple.hpp"
#include "sdk/number.hpp"
#include "tests/arch/built_arch.hpp"

using namespace quadrille;

TEST_CASE(
    "a span of 5.88 m was said to be reachable and then refused for the rod's bend: now the bounds stated build") {
  for (const double length : {4.0, 6.0, 9.0})
    for (const double diameter : {0.004, 0.008, 0.01}) {
      CAPTURE(length);
      CAPTURE(diameter);
      ValueMap values{{"rod-length", length_of(length)},
                      {"rod-diameter", length_of(diameter)},
                      {"span", length_of(length)},
                      {"balloon", Value::of_number(Kind::balloon, 5)}};  // small ones keep off the floor
      const auto refused = build(values);
      REQUIRE(refused->status == Status::infeasible);
      const std::string text = text_of(*refused, "span");
      const bool from = text.find("spans from ") != std::string::npos;
      const double least = from ? advised_m(text, "spans from ") : 0,
                   greatest = advised_m(text, from ? ") to " : "spans up to ");
      CHECK(greatest < length);
      for (const double span : {least, greatest}) {
        values["span"] = length_of(span);
        CAPTURE(span);
        CHECK(build(values)->status == Status::ok);
      }
      values["span"] = length_of(greatest + 0.02);
      CHECK(build(values)->status == Status::infeasible);
    }
  const auto stiff = build({{"rod-diameter", length_of(0.05)}, {"span", length_of(7)}});
  CHECK(text_of(*stiff, "span").find("bears no span") != std::string::npos);
}

TEST_CASE("a very flat arch got neither a limit nor a warning: now it is said that toppling was not checked") {
  const auto checked =
      build({{"rod-length", length_of(10)}, {"span", length_of(8.6)}, {"rod-diameter", length_of(0.003)}});
  REQUIRE(checked->status == Status::ok);
  CHECK(text_of(*checked, "rod-diameter").find("flops over") != std::string::npos);
  const auto flat =
      build({{"rod-length", length_of(10)}, {"span", length_of(8.9)}, {"rod-diameter", length_of(0.003)}});
  REQUIRE(flat->status == Status::ok);
  REQUIRE(warns(*flat, "span"));
  CHECK(text_of(*flat, "span").starts_with("Not checked whether the arch flops over"));
  CHECK(advised_m(text_of(*flat, "span"), "at most ") == doctest::Approx(8.7));
}

TEST_CASE("the sideways limit is found over all of the range that it states") {
  double before = 0;
  for (double span = 0; span <= 0.87; span += 0.01) {
    CAPTURE(span);
    const auto limit = arch::sideways_limit(span);
    REQUIRE(limit.has_value());
    CHECK(*limit > before);  // the flatter, the more it bears: see the table of published values
    before = *limit;
  }
}

TEST_CASE("the weight at which an arch flops over was told in newtons per metre: now in kilograms and pounds") {
  // 6 mm: EI = 41.4e9 π/64 0.006⁴ = 2.63375 N·m²; over 2.4 m of 6 m the limit is 73.27028 EI/L³ = 0.893416 N/m,
  // 0.0911 kg/m or 0.0612 lb/ft.
  const auto built = build({{"rod-diameter", length_of(0.006)}});
  const std::string text = text_of(*built, "rod-diameter");
  CHECK(text.find("N/m") == std::string::npos);
  CHECK(text.find("flops over sideways above 0.091 kg per metre (0.061 lb per foot)") != std::string::npos);
}

TEST_CASE("a material's name stood with a capital inside a sentence") {
  CHECK(text_of(*build({{"rod-diameter", length_of(0.03)}}), "rod-diameter").find("in glass fibre bears") !=
        std::string::npos);
  const auto pvc = build({{"rod-diameter", length_of(0.06)}, {"rod-material", choice_of("pvc")}});
  CHECK(text_of(*pvc, "rod-diameter").find("in PVC bears") != std::string::npos);
}

TEST_CASE("a half circle 1.2045 m high was refused as lower than 1.20 m: least heights are rounded up, radii down") {
  ValueMap half{{"frame", choice_of("half-circle")}, {"span", length_of(2.409)}, {"height", length_of(1.2)}};
  const std::string text = text_of(*build(half), "height");
  half["height"] = length_of(advised_m(text, " is "));
  CHECK(build(half)->status == Status::ok);
  ValueMap square{{"frame", choice_of("square")}, {"span", length_of(1.199)}, {"corner-radius", length_of(0.7)}};
  square["corner-radius"] = length_of(advised_m(text_of(*build(square), "corner-radius"), "at most "));
  CHECK(build(square)->status == Status::ok);
}

TEST_CASE("what the mathematics library computes is rounded, so that it is the same on every machine") {
  for (const char* frame : {"flexible-rod", "half-circle", "half-ellipse", "square"}) {
    const auto built = build({{"frame", choice_of(frame)}, {"corner-radius", length_of(0.3)}});
    REQUIRE(built->status == Status::ok);
    CAPTURE(frame);
    for (const char* key : {"height_m", "widest_m"}) CHECK(fact(*built, key) == to_twelve_digits(fact(*built, key)));
    CHECK(fact(*built, "span_m") == 2.4);  // as asked, to the last digit
    const double length = fact(*built, "rod_length_m");
    CHECK(std::abs(length - to_nanometre(length)) < 1e-14);
    CHECK(built->piece.spine.back().at_m == doctest::Approx(length).epsilon(1e-15));
  }
  const auto rod = build({});
  for (const char* key : {"foot_push_n", "foot_moment_nm", "widest_at_m", "bend_radius_m", "bend_stress_pa",
                          "bend_energy_j", "topple_weight_n_per_m"})
    CHECK(fact(*rod, key) == to_twelve_digits(fact(*rod, key)));
}
