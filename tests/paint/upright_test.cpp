// Pages on a printer's paper: always upright, in true size.
#include <doctest/doctest.h>

#include "studio/paint/painter.hpp"
#include "studio/paint/style.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

/// Around all dark pixels.
Rect dark_in(const Picture& picture) {
  int left = picture.width, right = -1, top = picture.height, bottom = -1;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x)
      if (picture.at(x, y).red < 128) {
        left = std::min(left, x), right = std::max(right, x + 1);
        top = std::min(top, y), bottom = std::max(bottom, y + 1);
      }
  return {double(left), double(top), double(right - left), double(bottom - top)};
}

/// A page with a line 100 mm long from (20, 50) mm to the right, painted upright at ten pixels to the millimetre.
Rect printed_line(double width, double height) {
  Page page;
  page.width = width, page.height = height;
  page.marks.push_back(line_mark(Part::drawing, {20, 50}, {120, 50}, 0.4, {0, 0, 0, 1}));
  const double paper_width = std::min(width, height), paper_height = std::max(width, height);
  Rect dark = dark_in(painted(int(paper_width * 10), int(paper_height * 10), [&](cairo_t* cairo) {
    BalloonStamps stamps;
    paint_upright(cairo, page, stamps, 10);
  }));
  for (double* n : {&dark.x, &dark.y, &dark.width, &dark.height}) *n /= 10;
  return dark;
}

}  // namespace

TEST_CASE("an upright page is printed as it is, 100 mm long where it says so") {
  for (const auto& [width, height] : {std::pair(210.0, 297.0), std::pair(215.9, 279.4), std::pair(297.0, 420.0)}) {
    const Rect line = printed_line(width, height);
    CHECK(std::abs(line.width - 100) <= 0.2);
    CHECK(std::abs(line.x - 20) <= 0.2);
    CHECK(std::abs(line.middle().y - 50) <= 0.2);
  }
}

TEST_CASE("a lying page is turned by a quarter: its top at the left of the paper, in true size") {
  for (const auto& [width, height] : {std::pair(297.0, 210.0), std::pair(279.4, 215.9), std::pair(431.8, 279.4)}) {
    const Rect line = printed_line(width, height);
    CHECK(std::abs(line.height - 100) <= 0.2);
    // 50 mm below the page's top; from 20 to 120 mm off its left edge, which comes to the paper's foot.
    CHECK(std::abs(line.middle().x - 50) <= 0.2);
    CHECK(std::abs(line.y - (width - 120)) <= 0.2);
  }
}
