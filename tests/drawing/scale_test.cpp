// Scales and scale bars.
#include "studio/drawing/scale.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "sdk/number.hpp"

using namespace quadrille;

TEST_CASE("the metric series holds that of ISO 5455 and steps between its scales") {
  // ISO 5455:1979, table of reduction scales (from memory): 1:10 1:20 1:50 1:100 1:200 1:500 1:1000 1:2000 1:5000
  // 1:10000.
  for (double scale : {10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0}) {
    // What is exactly 100 mm wide at this scale fits into 100 mm, at this scale and no smaller one.
    CHECK(fitting_scale(scale / 10, 0.001, 100, 100, Units::metric) == scale);
    CHECK(print_scale(scale, Units::metric) == "1:" + print_number(scale));
  }
  // 2.1 m in 100 mm need 1:21, 2.6 m 1:26, 3.1 m 1:31, 4.1 m 1:41: from 1:25 to 1:50 at once wasted half a sheet.
  CHECK(fitting_scale(2.1, 1, 100, 100, Units::metric) == 25);
  CHECK(fitting_scale(2.6, 1, 100, 100, Units::metric) == 30);
  CHECK(fitting_scale(1, 3.1, 100, 100, Units::metric) == 40);
  CHECK(fitting_scale(4.1, 1, 100, 100, Units::metric) == 50);
}

TEST_CASE("scales in feet are said as inches to the foot") {
  // 1/2 inch to a foot: 12 in / 0.5 in = 24; 3/16: 64; 1 in to 20 ft: 240; by definition.
  CHECK(print_scale(24, Units::feet) == "1/2\" = 1'  (1:24)");
  CHECK(print_scale(64, Units::feet) == "3/16\" = 1'  (1:64)");
  CHECK(print_scale(240, Units::feet) == "1\" = 20'  (1:240)");
  CHECK(print_scale(2400, Units::feet) == "1\" = 200'  (1:2400)");
  CHECK(fitting_scale(2.3, 1, 100, 100, Units::feet) == 24);
}

TEST_CASE("whatever the size, it fits, and the next finer scale would not by much") {
  for (double size = 0.3; size < 90000; size *= 1.37)
    for (Units units : {Units::metric, Units::feet}) {
      const double scale = fitting_scale(size, size / 3, 180, 120, units);
      CHECK(size * 1000 / scale <= 180 * (1 + 1e-6));
      if (scale > 10) CHECK(size * 1000 / scale > 180 / (units == Units::metric ? 1.51 : 2.55));
    }
}

TEST_CASE("a scale bar is as long as it says, at every scale") {
  for (Units units : {Units::metric, Units::feet})
    for (double size = 0.5; size < 2000; size *= 1.6) {
      const double scale = fitting_scale(size, size / 2, 180, 120, units);
      const ScaleBar bar = scale_bar(scale, units, {10, 20}, 120);
      CHECK(bar.length_mm * scale / 1000 == doctest::Approx(bar.length_m).epsilon(1e-12));
      CHECK(bar.length_mm <= 120);  // 5 ft at 1:8 came out 190 mm long
      // Whole metres, or whole feet (0.3048 m by definition): of five where five are not too long.
      const double five = 5 * 0.3048 * 1000 / scale <= 120 ? 5 : 1;
      const double units_long = bar.length_m / (units == Units::feet ? five * 0.3048 : 1);
      CHECK(units_long == doctest::Approx(std::round(units_long)).epsilon(1e-12));
      CHECK(units_long >= 0.999);
    }
}

TEST_CASE("a scale bar that may not be long is of parts of a metre or single feet") {
  // At 1:10 a metre is 100 mm, half a metre 50 mm, a fifth 20 mm; at 1:8 five feet are 190.5 mm, two 76.2, one 38.1.
  CHECK(scale_bar(10, Units::metric, {}, 99).length_m == 0.5);
  CHECK(scale_bar(10, Units::metric, {}, 40).length_m == 0.2);
  CHECK(scale_bar(10, Units::metric, {}, 100).length_m == 1);
  CHECK(scale_bar(8, Units::feet, {}, 120).length_m == doctest::Approx(2 * 0.3048));
  CHECK(scale_bar(8, Units::feet, {}, 40).length_m == doctest::Approx(0.3048));
  CHECK(scale_bar(8, Units::feet, {}, 200).length_m == doctest::Approx(5 * 0.3048));
}
