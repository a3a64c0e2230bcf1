// Steps and labels of the rulers, and the places that a drag lands on.
#include "studio/window/canvas/ruler.hpp"

#include <doctest/doctest.h>

#include "studio/drawing/view.hpp"

namespace quadrille {

TEST_CASE("labels are never closer than asked, and never a step further than needed") {
  for (const Units units : {Units::feet, Units::metric})
    for (double zoom = least_pixels_per_metre; zoom <= most_pixels_per_metre; zoom *= 1.07) {
      const RulerStep step = ruler_step(zoom, units, 56);
      CHECK(step.step_m * zoom >= 56);
      // Neighbouring steps of either ladder differ by at most 5/2, and the finest are 1 cm and 1 in.
      CHECK((step.step_m * zoom < 56 * 2.5001 || step.step_m <= 0.0254));
    }
}

TEST_CASE("a metric ruler is labelled in metres with as many decimals as its step needs") {
  // By hand: at 100 px/m a label every 56 px or more needs 0.56 m or more: the next of 1, 2, 5 is 1 m.
  const RulerStep metre = ruler_step(100, Units::metric, 56);
  CHECK(metre.step_m == doctest::Approx(1));
  CHECK(metre.divisions == 10);
  CHECK(ruler_label(3, metre, Units::metric) == "3");
  CHECK(ruler_label(-2, metre, Units::metric) == "-2");
  CHECK(ruler_label(0, metre, Units::metric) == "0");
  CHECK(ruler_label(3, {0.5, 5}, Units::metric) == "1.5");
  CHECK(ruler_label(3, {0.05, 5}, Units::metric) == "0.15");
}

TEST_CASE("a ruler in feet is labelled in feet and inches") {
  // By hand: at 300 px/m an inch is 7.62 px; 56 px are 7.35 in, and the next step of a tape measure is a foot.
  const RulerStep foot = ruler_step(300, Units::feet, 56);
  CHECK(foot.step_m == doctest::Approx(0.3048));
  CHECK(foot.divisions == 12);
  CHECK(ruler_label(8, foot, Units::feet) == "8'");
  CHECK(ruler_label(17, {0.1524, 6}, Units::feet) == "8' 6\"");
}

TEST_CASE("divisions that would run together are left out") {
  // By hand: at 2 px/m, the farthest zoom, the step is 50 m = 100 px, whose fifths are 20 px apart: they stay.
  CHECK(ruler_step(2, Units::metric, 56).divisions == 5);
  // At 57 px/m the step is 1 m = 57 px, and tenths of it 5.7 px apart; at 4 px or more they are kept.
  CHECK(ruler_step(57, Units::metric, 56).divisions == 10);
  // A step of 12 in at 190 px/m is 57.9 px, its inches 4.8 px apart.
  CHECK(ruler_step(190, Units::feet, 56).divisions == 12);
  // With labels allowed every 30 px a foot is 30.5 px at 100 px/m, its inches 2.5 px apart: a grey smear.
  CHECK(ruler_step(100, Units::feet, 30).divisions == 1);
}

TEST_CASE("places are rounded to what is shown: whole centimetres, half inches") {
  CHECK(rounded_place(2.3471829, Units::metric) == 2.35);
  CHECK(rounded_place(-0.004, Units::metric) == 0);
  // By hand: 1.9 m are 149.6 half inches; 150 of them, 75 in, are 1.905 m exactly as written.
  CHECK(rounded_place(1.9, Units::feet) == 1.905);
  for (int i = -300; i < 300; ++i) {
    const double place = i * 0.0371;
    for (const Units units : {Units::feet, Units::metric})
      CHECK(rounded_place(rounded_place(place, units), units) == rounded_place(place, units));
  }
}

}  // namespace quadrille
