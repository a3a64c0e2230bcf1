// The gauge in the PDF, measured in the picture that poppler makes of it: true size to 0.2 mm.
#include "studio/paper/size_gauge.hpp"

#include <doctest/doctest.h>

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
  return gauge_pages(sizes, setting);
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
    // Off the vertical through its middle, where the label stands: 40 mm aside the chord is 2 √(63.5² − 40²) = 98.6 mm.
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

TEST_CASE("each size is on the gauge once, as a circle, a quarter or a piece by what the paper allows") {
  const std::vector<SizerLine> sizes{size(36, 0.9), size(16, 0.34), size(11, 0.28), size(11, 0.28), size(5, 0.12)};
  const auto a4 = gauge(sizes, Paper::a4);
  CHECK(a4.size() == 2);  // the piece over the quarters, then the circle
  const std::string text = all_text(a4);
  for (const char* label : {"16 in blown to 34.0 cm\n", "11 in blown to 28.0 cm\n", "5 in blown to 12.0 cm\n"}) {
    CHECK(has(text, label));
    CHECK(text.find(label) == text.rfind(label));
  }
  // π · 0.9 = 2.83 m for a tape.
  CHECK(has(text, "36 in blown to 90.0 cm, 2.83 m around\n"));
  CHECK(gauge({}, Paper::a4).empty());
}

TEST_CASE(
    "the gauge had a curve and a label for each millimetre, across one another: one curve is for what no hand tells "
    "apart") {
  const auto pages = gauge({size(11, 0.229), size(11, 0.23), size(11, 0.24), size(12, 0.2405)}, Paper::a4);
  const std::string text = all_text(pages);
  CHECK(has(text, "11 in blown to 22.9 to 23.0 cm\n"));
  CHECK(has(text, "11 in, 12 in blown to 24.0 to 24.1 cm\n"));
  std::vector<double> radii;
  for (const Mark& mark : pages.at(0).marks)
    if (const Rect r = bounds(mark); mark.part == Part::drawing && r.width > 100 && r.height > 100)
      radii.push_back(r.width);
  // In the middle of those that share it.
  REQUIRE(radii.size() == 2);
  CHECK(std::abs(std::max(radii[0], radii[1]) - 240.25 / 2) < 0.2);
  CHECK(std::abs(std::min(radii[0], radii[1]) - 229.5 / 2) < 0.2);
}

TEST_CASE("two sizes that hardly differ had labels across both curves: one did not see which was whose") {
  for (const double larger : {0.1, 0.23}) {
    const auto pages = gauge({size(11, larger), size(11, larger - 0.003)}, Paper::a4);
    REQUIRE(pages.size() == 1);
    std::vector<Rect> labels;
    Point2 centre;
    for (const Mark& mark : pages[0].marks) {
      if (const auto* text = std::get_if<TextMark>(&mark.shape); text && has(text->text, "blown to"))
        labels.push_back(text->box);
      const Rect r = bounds(mark);
      // The middle of the circles; of quarters the corner, where the two legs meet.
      if (mark.part == Part::drawing && larger < 0.2 && r.width > 90) centre = r.middle();
      if (mark.part == Part::drawing && larger > 0.2 && r.height == 0 && r.width > 90) centre = {r.x, r.y};
    }
    REQUIRE(labels.size() == 2);
    // The larger stands outside both, the smaller inside.
    const auto reach = [&](const Rect& box, bool least) {
      double found = least ? 1e9 : 0;
      for (int i = 0; i <= 100; ++i)
        for (const double y : {box.y, box.bottom()}) {
          const double d = std::hypot(box.x + box.width * i / 100 - centre.x, y - centre.y);
          found = least ? std::min(found, d) : std::max(found, d);
        }
      return found;
    };
    CHECK(std::max(reach(labels[0], true), reach(labels[1], true)) > larger / 2 * 1000);
    CHECK(std::min(reach(labels[0], false), reach(labels[1], false)) < (larger - 0.003) / 2 * 1000);
  }
}
