// Text: where lines break, and where marks beside a line belong.
#include "studio/paint/text.hpp"

#include <doctest/doctest.h>

using namespace quadrille;

namespace {

std::string shown(std::string text) {
  for (const std::size_t at : blanks_in_measures(text)) text[at] = '_';
  return text;
}

}  // namespace

TEST_CASE("a number and its unit are one word, and so are feet and inches") {
  CHECK(shown("Rod 20 mm, section of 1.50 m") == "Rod 20_mm, section of 1.50_m");
  CHECK(shown("8' 6 1/2\" wide, 11\" high") == "8'_6_1/2\" wide, 11\" high");
  CHECK(shown("tube, 25 x 1.5 mm") == "tube, 25_x_1.5_mm");
  CHECK(shown("22.5 °C, 83 %.") == "22.5_°C, 83_%.");
  CHECK(shown("33 clusters, 132 balloons in 4 colours") == "33_clusters, 132_balloons in 4 colours");
  CHECK(shown("pushes with 11 lbf: keep people from it; 50 N") == "pushes with 11_lbf: keep people from it; 50_N");
  CHECK(shown("10 mph (Beaufort 3)") == "10_mph (Beaufort_3)");
  CHECK(shown("Frame in metres") == "Frame in metres");
  CHECK(shown("5  m ") == "5  m ");
  CHECK(shown(" m").size() == 2);
  CHECK(shown("").empty());
}

TEST_CASE("\"8\" stood at the end of a line and its \"mm\" on the next") {
  const TextStyle style;
  // As wide as "tube 88": the break that fits best would part the number from its unit.
  const double width = text_width("tube 88", style);
  const SetText set = set_text({{0, 0, width, 20}, "tube 88 mm", style});
  CHECK(set.lines == 2);
  // The wider of "tube" and "88 mm" is then the ink's width; parted, the first line would be as wide as the box.
  CHECK(set.ink.width < width - 0.5);
}

TEST_CASE("a mark beside a line belongs to the middle of its capitals") {
  for (const double size : {7.5, 9.0, 18.0}) {
    TextStyle style;
    style.size_pt = size;
    const SetText set = set_text({{3, 5, 40, 20}, "E", style});
    CHECK(capital_middle(style) == doctest::Approx(set.ink.middle().y - 5).epsilon(0.02));
  }
}
