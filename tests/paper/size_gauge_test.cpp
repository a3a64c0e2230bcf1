// The gauge in the PDF, measured in the picture that poppler makes of it: true size to 0.2 mm.
#include "studio/paper/size_gauge.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "studio/paint/output.hpp"
#include "studio/paper/page_frame.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/sheets.hpp"

using namespace quadrille;

namespace {

constexpr int dpi = 508;  // 20 pixels to the millimetre
constexpr double per_mm = dpi / 25.4;

std::vector<Page> gauge(std::vector<SizerLine> sizes, Paper paper) {
  const sample::Job job = sample::one_arch();
  const EventCount count = job.count();
  const SheetInput input{job.event, job.built, count, job.palettes};
  const SheetOptions options;
  const Setting setting{input, options, Units::metric, paper};
  std::vector<GaugeUse> uses;
  for (const SizerLine& size : sizes) uses.push_back({size, "Arch"});
  return gauge_pages(uses, setting);
}

SizerLine size(double nominal_in, double sizer_m) { return {nominal_in, sizer_m, sizer_m, pi * sizer_m, 1}; }

/// First and last dark pixel of a row or column, in mm.
struct Reach {
  double first = -1, last = -1;
  double length() const { return last - first; }
};

Reach dark_in_row(const Picture& picture, double y_mm) {
  Reach reach;
  const int y = static_cast<int>(y_mm * per_mm);
  for (int x = 0; x < picture.width; ++x)
    if (picture.at(x, y).green < 128) {
      if (reach.first < 0) reach.first = x / per_mm;
      reach.last = (x + 1) / per_mm;
    }
  return reach;
}

Reach dark_in_column(const Picture& picture, double x_mm, double from_mm, double to_mm) {
  Reach reach;
  const int x = static_cast<int>(x_mm * per_mm);
  for (int y = static_cast<int>(from_mm * per_mm); y < static_cast<int>(to_mm * per_mm); ++y)
    if (picture.at(x, y).green < 128) {
      if (reach.first < 0) reach.first = y / per_mm;
      reach.last = (y + 1) / per_mm;
    }
  return reach;
}

Picture drawn(const Folder& folder, const Page& page) {
  return pdf_picture(folder, *to_pdf(std::span(&page, 1), {"Gauge", "2027-06-19"}), dpi);
}

constexpr double pen = 0.25;  // mm: the line's width, half of it on either side of the circle

}  // namespace

TEST_CASE("a circle of the gauge measures what it says, to 0.2 mm, on every paper") {
  const Folder folder;
  for (const Paper paper : {Paper::a4, Paper::letter, Paper::a3, Paper::tabloid}) {
    CAPTURE(static_cast<int>(paper));
    const auto pages = gauge({size(5, 0.127)}, paper);
    REQUIRE(pages.size() == 1);
    const Picture picture = drawn(folder, pages[0]);
    Rect circle;
    for (const Mark& mark : pages[0].marks)
      if (const Rect r = bounds(mark); mark.part == Part::drawing && r.width > 120) circle = r;
    const double across = dark_in_row(picture, circle.middle().y).length() - pen;
    CHECK(std::abs(across - 127) < 0.2);
    // Off the vertical through its middle, past the label: 40 mm aside the chord is 2 √(63.5² − 40²) = 98.6 mm.
    const double chord = dark_in_column(picture, circle.middle().x + 40, circle.y - 1, circle.bottom() + 1).length();
    CHECK(std::abs(chord - pen * 63.5 / 49.3 - 98.64) < 0.2);
  }
}

TEST_CASE("a quarter of a circle has the radius it says, and the mark of 100 mm its length") {
  const Folder folder;
  const auto pages = gauge({size(11, 0.28)}, Paper::a4);
  REQUIRE(pages.size() == 1);
  const Page& page = pages[0];
  const Picture picture = drawn(folder, page);
  Point2 corner;
  double mark_y = 0;
  for (const Mark& mark : page.marks) {
    const Rect r = bounds(mark);
    if (mark.part == Part::drawing && r.height == 0 && r.width > 100) corner = {r.x, r.y};
    if (mark.part == Part::scale_bar && r.height == 0) mark_y = r.y;
  }
  // Along the level leg, just above it: the arc crosses at √(140² − 2²) = 139.99 mm from the corner.
  const double radius = dark_in_row(picture, corner.y - 2).last - pen / 2 - corner.x;
  CHECK(std::abs(radius - 139.99) < 0.2);
  const Reach mark = dark_in_row(picture, mark_y);
  CHECK(std::abs(mark.length() - 0.18 - 100) < 0.2);
}

TEST_CASE("each size is on the gauge once, as a quarter, a part or a circle by what the paper allows") {
  const std::vector<SizerLine> sizes{size(36, 0.9), size(16, 0.34), size(11, 0.28), size(11, 0.28), size(5, 0.12)};
  const auto a4 = gauge(sizes, Paper::a4);
  // The small ones had a page of their own, and a whole circle each.
  CHECK(a4.size() == 1);
  const std::string text = all_text(a4);
  for (const char* label : {"16 in blown to 34.0 cm", "11 in blown to 28.0 cm\n", "5 in blown to 12.0 cm\n"}) {
    CHECK(has(text, label));
    CHECK(text.find(label) == text.rfind(label));
  }
  // π · 0.9 = 2.83 m for a tape.
  CHECK(has(text, "36 in blown to 90.0 cm, 2.83 m around\n"));
  CHECK(gauge({}, Paper::a4).empty());
}

TEST_CASE("the gauge says which pieces use a curve") {
  const sample::Job job = sample::one_arch();
  const EventCount count = job.count();
  const SheetInput input{job.event, job.built, count, job.palettes};
  const SheetOptions options;
  const Setting setting{input, options, Units::metric, Paper::a4};
  const std::string text = all_text(gauge_pages(
      {{size(11, 0.28), "Arch"}, {size(11, 0.279), "Column"}, {size(9, 0.24), "Garland"}, {size(11, 0.28), "Arch"}},
      setting));
  CHECK(has(text, "27.9–28.0 cm\nArch; Column\n24.0 cm\nGarland\n"));
}

TEST_CASE("one curve is for what nobody tells apart on a sizer, in the middle of those that share it") {
  const auto pages = gauge({size(11, 0.2275), size(11, 0.23), size(11, 0.24), size(12, 0.2405)}, Paper::a4);
  const std::string text = all_text(pages);
  CHECK(has(text, "11 in blown to 22.8–23.0 cm\n"));
  CHECK(has(text, "11 in, 12 in blown to 24.0–24.1 cm\n"));
  std::vector<double> radii;
  for (const Mark& mark : pages.at(0).marks)
    if (const Rect r = bounds(mark); mark.part == Part::drawing && r.width > 100 && r.height > 100)
      radii.push_back(r.width);
  REQUIRE(radii.size() == 2);
  CHECK(std::abs(std::max(radii[0], radii[1]) - 240.25 / 2) < 0.2);
  CHECK(std::abs(std::min(radii[0], radii[1]) - 228.75 / 2) < 0.2);
}

// Labels lay on their curves and blanked them for centimetres, at places that one had to look for.
TEST_CASE("a quarter's label ends at its foot, and no label lies on a curve or a leader") {
  std::vector<SizerLine> sizes;
  for (const double diameter : {0.27, 0.266, 0.262, 0.25, 0.245, 0.241, 0.23, 0.2, 0.13, 0.1})
    sizes.push_back(size(11, diameter));
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const auto pages = gauge(sizes, paper);
    REQUIRE(pages.size() == 1);
    Point2 corner;
    std::vector<double> radii;
    std::vector<Rect> labels, leaders;
    for (const Mark& mark : pages[0].marks) {
      const Rect r = bounds(mark);
      if (mark.part != Part::drawing) continue;
      if (const auto* text = std::get_if<TextMark>(&mark.shape)) {
        labels.push_back(text->box);
      } else if (r.height == 0) {
        corner = {r.x, r.y};
      } else if (r.width == 0) {
        leaders.push_back(r);
      } else {
        radii.push_back(r.width);
      }
    }
    REQUIRE(radii.size() == sizes.size());
    for (const Rect& label : labels) {
      for (const double radius : radii) {
        const double x = std::max(0.0, label.x - corner.x), y = corner.y - label.bottom();  // its nearest corner
        const double far = std::hypot(label.right() - corner.x, corner.y - label.y);
        CHECK_FALSE((y > 0 && std::hypot(x, y) < radius && radius < far));
      }
      for (const Rect& leader : leaders)
        CHECK_FALSE((label.x < leader.x && leader.x < label.right() && leader.y < label.bottom() &&
                     label.y < leader.bottom() && leader.y >= corner.y - 0.01));
    }
    // Each curve has a label that ends a millimetre before its foot.
    for (const double radius : radii)
      CHECK(std::ranges::count_if(labels, [&](const Rect& label) {
              return std::abs(label.right() + 1 - corner.x - radius) < 0.05;
            }) == 1);
  }
}
