// Colours against published and independently computed values.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "studio/colour/difference.hpp"
#include "studio/colour/sight.hpp"
#include "tests/reference_table.hpp"

using namespace quadrille;

namespace {

std::uint8_t channel(const ReferenceTable& table, std::size_t row, const char* column) {
  return static_cast<std::uint8_t>(table.number(row, column));
}

Srgb any_colour() {
  return {*rc::gen::arbitrary<std::uint8_t>(), *rc::gen::arbitrary<std::uint8_t>(),
          *rc::gen::arbitrary<std::uint8_t>()};
}

}  // namespace

TEST_CASE("CIEDE2000 gives all 34 published pairs") {
  const ReferenceTable table("ciede2000.csv");
  REQUIRE(table.rows() == 34);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    CAPTURE(row + 1);
    const Lab one{table.number(row, "L1"), table.number(row, "a1"), table.number(row, "b1")};
    const Lab other{table.number(row, "L2"), table.number(row, "a2"), table.number(row, "b2")};
    CHECK(std::abs(ciede2000(one, other) - table.number(row, "dE00_published_4dp")) <= 1e-4);
    // Pairs of opposite hue depend on the last bit of an angle: there either neighbour of the published value counts.
    const double apart = std::abs(ciede2000(one, other) - table.number(row, "dE00_recomputed_50digit"));
    CHECK(apart <= (std::abs(table.number(row, "abs_hue_difference_deg") - 180) < 1e-9 ? 1e-4 : 1e-9));
    CHECK(std::abs(ciede2000(one, other) - ciede2000(other, one)) <= 1e-9);
  }
}

TEST_CASE("sRGB becomes Lab as computed elsewhere") {
  const ReferenceTable table("srgb_lab.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    CAPTURE(table.text(row, "name"));
    const Srgb colour{channel(table, row, "R"), channel(table, row, "G"), channel(table, row, "B")};
    const Lab lab = lab_of(colour);
    CHECK(std::abs(lab.lightness - table.number(row, "L_IEC_matrix_own_white")) <= 1e-5);
    CHECK(std::abs(lab.a - table.number(row, "a")) <= 1e-5);
    CHECK(std::abs(lab.b - table.number(row, "b")) <= 1e-5);
    // With seven digits in the matrix and another white the primaries move by some hundredths and no more.
    CHECK(std::abs(lab.a - table.number(row, "a7")) <= 0.03);
  }
  // IEC 61966-2-1, recomputed: the straight part ends between 10 and 11.
  CHECK(linear_of(10.0) == doctest::Approx(0.003035270).epsilon(1e-6));
  CHECK(linear_of(11.0) == doctest::Approx(0.003346536).epsilon(1e-6));
  CHECK(linear_of(188.0) == doctest::Approx(0.502886458).epsilon(1e-8));
}

TEST_CASE("Lab and sRGB go there and back") {
  CHECK(rc::check("there and back", [] {
    const Srgb colour = any_colour();
    RC_ASSERT(srgb_of(lab_of(colour)) == colour);
    RC_ASSERT(is_in_srgb(lab_of(colour)));
  }));
  CHECK_FALSE(is_in_srgb({50, 120, 0}));
  CHECK(srgb_of({150, 0, 0}) == Srgb{255, 255, 255});
  CHECK(srgb_of({-5, 0, 0}) == Srgb{0, 0, 0});
}

TEST_CASE("a difference is symmetric, nothing for the same, and never negative") {
  CHECK(rc::check("difference", [] {
    const Srgb one = any_colour(), other = any_colour();
    RC_ASSERT(ciede2000(one, one) == 0.0);
    RC_ASSERT(std::abs(ciede2000(one, other) - ciede2000(other, one)) < 1e-9);
    RC_ASSERT(one == other || ciede2000(one, other) > 0);
  }));
}

TEST_CASE("greys look the same to everybody; red and green do not") {
  for (int grey = 0; grey <= 255; grey += 17) {
    const double part = linear_of(1.0 * grey);
    for (const Sight sight : all_sights) {
      const LinearRgb seen = seen_by(sight, {part, part, part});
      // The published matrices have six decimals.
      CHECK(std::abs(seen.red - part) <= 2e-6);
      CHECK(std::abs(seen.green - part) <= 2e-6);
      CHECK(std::abs(seen.blue - part) <= 2e-6);
    }
  }
  // A red and a green of one lightness to eyes without middle cones: far apart as usual, close for them. The pair comes
  // from the matrix itself: (0.5, 0.15) and (0.15, 0.299) of red and green light give 0.3128 and 0.3124 of red.
  const Srgb red{188, 108, 0}, green{108, 149, 0};
  CHECK(difference_seen(Sight::usual, red, green) > 3 * difference_seen(Sight::deuteranopia, red, green));
  CHECK(difference_seen(Sight::deuteranopia, red, green) < 12);
  CHECK(difference_seen(Sight::tritanopia, red, green) > 30);
}

TEST_CASE("colours are read as they are written everywhere") {
  CHECK(parse_srgb("#1a2B3c") == Srgb{0x1a, 0x2b, 0x3c});
  CHECK(parse_srgb("ffffff") == Srgb{255, 255, 255});
  CHECK(parse_srgb("#f0a") == Srgb{0xff, 0, 0xaa});
  for (const char* const bad : {"", "#", "#12345", "#1234567", "#gggggg", "red", "12 456"})
    CHECK_MESSAGE(!parse_srgb(bad), bad);
}

TEST_CASE("a difference in words grows with the number") {
  // 1 is just seen side by side, 5 across a room: Sharma, Wu, Dalal 2005 for the measure; the words are by eye.
  CHECK(difference_in_words(0) == "the same to the eye");
  CHECK(difference_in_words(0.99) == "the same to the eye");
  CHECK(difference_in_words(1) == "hardly to be told apart");
  CHECK(difference_in_words(4.9) == "nearly alike");
  CHECK(difference_in_words(5) == "related");
  CHECK(difference_in_words(60) == "another colour");
}
