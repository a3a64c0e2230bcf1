// A balloon's picture: its colour, its light, its finish; stamps against the ball drawn directly.
#include "studio/paint/balloon_look.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "studio/paint/balloon_stamps.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

constexpr int size = 240;
constexpr double radius = 100;

Picture ball(const Ink& ink, Finish finish, double ground = 1, char letter = 0) {
  return painted(
      size, size,
      [&](cairo_t* cairo) {
        cairo_translate(cairo, size / 2.0, size / 2.0);
        cairo_scale(cairo, radius, radius);
        paint_ball(cairo, ink, finish, letter, 0.6);
      },
      ground);
}

Picture stamped(const BalloonMark& mark) {
  return painted(size, size, [&](cairo_t* cairo) {
    BalloonStamps stamps;
    stamps.paint(cairo, mark);
  });
}

struct Statistics {
  Rgb mean;
  double spread = 0, upper_left = 0, lower_right = 0, brightest = 0;
};

double grey(const Rgb& p) { return (p.red + p.green + p.blue) / 3; }

Statistics statistics(const Picture& picture) {
  Statistics s;
  double count = 0, lit = 0, dark = 0, square = 0, sum = 0;
  for (int y = 0; y < size; ++y)
    for (int x = 0; x < size; ++x) {
      const double dx = x + 0.5 - size / 2.0, dy = y + 0.5 - size / 2.0;
      if (std::hypot(dx, dy) > radius) continue;
      const Rgb& p = picture.at(x, y);
      s.mean.red += p.red, s.mean.green += p.green, s.mean.blue += p.blue;
      const double g = grey(p);
      sum += g, square += g * g, count += 1, s.brightest = std::max(s.brightest, g);
      if (dx < 0 && dy < 0) s.upper_left += g, lit += 1;
      if (dx > 0 && dy > 0) s.lower_right += g, dark += 1;
    }
  s.mean = {s.mean.red / count, s.mean.green / count, s.mean.blue / count};
  s.spread = std::sqrt(square / count - sum / count * (sum / count));
  s.upper_left /= lit, s.lower_right /= dark;
  return s;
}

const Ink swatches[] = {{0.59, 0.20, 0.27, 1}, {0.16, 0.59, 0.63, 1}, {0.75, 0.59, 0.27, 1},
                        {0.96, 0.95, 0.93, 1}, {0.12, 0.13, 0.21, 1}, {0.30, 0.55, 0.25, 1}};

}  // namespace

TEST_CASE("the mean colour of a balloon is near its swatch, so that the key can be trusted") {
  for (const Ink& ink : swatches)
    for (Finish finish : {Finish::matte, Finish::pearl, Finish::metallic}) {
      CAPTURE(ink.red);
      CAPTURE(static_cast<int>(finish));
      const Rgb mean = statistics(ball(ink, finish)).mean;
      // A tenth of the range: the shade of one balloon must not read as another colour of the palette.
      CHECK(std::abs(mean.red - ink.red * 255) < 26);
      CHECK(std::abs(mean.green - ink.green * 255) < 26);
      CHECK(std::abs(mean.blue - ink.blue * 255) < 26);
    }
}

TEST_CASE("the light comes from the upper left on every finish") {
  for (const Ink& ink : swatches)
    for (Finish finish : {Finish::matte, Finish::pearl, Finish::metallic, Finish::clear}) {
      const Statistics s = statistics(ball(ink, finish));
      CHECK(s.upper_left > s.lower_right + 2);
    }
}

TEST_CASE("finishes can be told apart: metallic has the strongest contrast, clear lets the ground through") {
  for (const Ink& ink : swatches) {
    const Statistics matte = statistics(ball(ink, Finish::matte)), metallic = statistics(ball(ink, Finish::metallic));
    CHECK(metallic.spread > matte.spread * 1.25);
    CHECK(metallic.brightest >= matte.brightest);
    const Statistics pearl = statistics(ball(ink, Finish::pearl));
    // Pearl: the rim is lighter than that of matte, seen half way down the right edge.
    const int x = size / 2 + static_cast<int>(radius * 0.93), y = size / 2;
    CHECK(grey(ball(ink, Finish::pearl).at(x, y)) > grey(ball(ink, Finish::matte).at(x, y)));
    CHECK(pearl.spread > 0);
    const int middle = size / 2 + 20;
    const double through =
        grey(ball(ink, Finish::clear, 1).at(middle, middle)) - grey(ball(ink, Finish::clear, 0).at(middle, middle));
    const double at_rim = grey(ball(ink, Finish::clear, 1).at(x, y)) - grey(ball(ink, Finish::clear, 0).at(x, y));
    CHECK(through > 60);
    CHECK(at_rim < through);
    CHECK(grey(ball(ink, Finish::matte, 0).at(middle, middle)) ==
          doctest::Approx(grey(ball(ink, Finish::matte, 1).at(middle, middle))));
  }
}

TEST_CASE("nothing is painted beyond the reach") {
  const Picture picture = ball({0, 0, 0, 1}, Finish::metallic);
  for (int y = 0; y < size; ++y)
    for (int x = 0; x < size; ++x)
      if (std::hypot(x + 0.5 - size / 2.0, y + 0.5 - size / 2.0) > radius * balloon_reach + 1)
        REQUIRE(grey(picture.at(x, y)) == 255);
}

TEST_CASE("a stamp looks like the ball drawn directly, at whole and at broken pixels and radii") {
  for (double shift : {0.0, 0.37})
    for (double r : {6.0, 31.1, 80.3}) {
      BalloonMark mark;
      mark.centre = mark.neck = {size / 2.0 + shift, size / 2.0 - shift};
      mark.radius = r;
      mark.ink = swatches[0];
      const Picture direct = painted(size, size, [&](cairo_t* cairo) {
        cairo_translate(cairo, mark.centre.x, mark.centre.y);
        cairo_scale(cairo, r, r);
        paint_ball(cairo, mark.ink, mark.finish, 0, 0);
      });
      CHECK(mean_difference(direct, stamped(mark)) < 1);  // the radius is rounded to a quarter of a pixel
      const Centroid a = red_centroid(direct), b = red_centroid(stamped(mark));
      CHECK(std::hypot(a.x - b.x, a.y - b.y) < 0.1);
    }
}

TEST_CASE("a tied balloon is the hull of its ball and its neck") {
  BalloonMark mark;
  mark.ink = swatches[0];
  mark.centre = {80, 120}, mark.radius = 50, mark.neck = {150, 120};
  const Picture picture = stamped(mark);
  const auto is_painted = [&](int x, int y) { return grey(picture.at(x, y)) < 200; };
  // Tangents from the neck, 70 from the centre: half their opening angle is asin(50/70) = 45.6°, so 10 before the neck
  // the hull reaches 10 tan 45.6° = 10.2 to either side.
  CHECK(is_painted(140, 120));
  CHECK(is_painted(140, 127));
  CHECK(is_painted(140, 113));
  CHECK_FALSE(is_painted(140, 135));
  CHECK_FALSE(is_painted(140, 105));
  CHECK_FALSE(is_painted(156, 120));
  mark.neck = {100, 120};
  CHECK(mean_difference(stamped(mark), [&] {
          BalloonMark plain = mark;
          plain.neck = plain.centre;
          return stamped(plain);
        }()) == 0);
}

TEST_CASE("a letter stands on the ball in the ink that can be read on it") {
  for (const Ink& ink : swatches) {
    const Picture with = ball(ink, Finish::matte, 1, 'B'), without = ball(ink, Finish::matte, 1, 0);
    CHECK(mean_difference(with, without) > 1);
    const Ink text = contrasting(ink);
    const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
    const auto luminance = [&](const Ink& i) {
      return 0.2126 * linear(i.red) + 0.7152 * linear(i.green) + 0.0722 * linear(i.blue);
    };
    const double a = luminance(ink), b = luminance(text);
    // WCAG 2.1, success criterion 1.4.3 (from memory): 4.5 : 1 for text.
    CHECK((std::max(a, b) + 0.05) / (std::min(a, b) + 0.05) > 4.3);
  }
}
