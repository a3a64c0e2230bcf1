// Pictures on a page: in place, cut, faded; in PDF and SVG as the file that they came as.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <fstream>
#include <iterator>

#include "studio/paint/output.hpp"
#include "studio/paint/painter.hpp"
#include "studio/paint/style.hpp"
#include "tests/paint/photos.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

StoredPicture stored(std::string bytes, int width, int height, PictureMedia media = PictureMedia::jpeg) {
  return {std::move(bytes), media, width, height};
}

/// A page of 100 × 80 mm with the picture on 60 × 40 mm at (20, 20) mm.
Page page_with(StoredPicture picture, double fade = 0) {
  Page page;
  page.width = 100, page.height = 80;
  const Rect box{20, 20, 60, 40};
  page.marks.push_back({Part::backdrop, PictureMark{box, box, std::move(picture), fade}});
  return page;
}

PictureMark& mark_of(Page& page) { return std::get<PictureMark>(page.marks.front().shape); }

bool is_near(const Rgb& a, const Rgb& b, double most = 12) {
  return std::abs(a.red - b.red) <= most && std::abs(a.green - b.green) <= most && std::abs(a.blue - b.blue) <= most;
}

constexpr Rgb red{220, 30, 30}, green{20, 170, 40}, blue{30, 60, 210}, white{255, 255, 255};

/// The quarters' middles and the paper around them, at four pixels to the millimetre.
void check_in_place(const Picture& picture, double scale) {
  const auto at = [&](double x_mm, double y_mm) {
    return picture.at(static_cast<int>(x_mm * scale), static_cast<int>(y_mm * scale));
  };
  CHECK(is_near(at(35, 30), red));
  CHECK(is_near(at(65, 30), green));
  CHECK(is_near(at(35, 50), blue));
  CHECK(is_near(at(65, 50), white));
  // Half a millimetre inside and outside each edge.
  CHECK(is_near(at(20.6, 25), red, 30));
  CHECK(is_near(at(19.4, 25), white, 2));
  CHECK(is_near(at(35, 20.6), red, 30));
  CHECK(is_near(at(35, 19.4), white, 2));
  CHECK(is_near(at(79.4, 25), green, 30));
  CHECK(is_near(at(80.6, 25), white, 2));
  CHECK(is_near(at(35, 59.4), blue, 30));
  CHECK(is_near(at(35, 60.6), white, 2));
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

std::string contents(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

TEST_CASE("a picture lies where its box is, in PNG, in PDF by poppler and in SVG by librsvg") {
  const Folder folder;
  const Page page = page_with(stored(jpeg_of_quarters(600, 400), 600, 400));
  constexpr int dpi = 102;
  const auto png = to_png(page, dpi), pdf = to_pdf({&page, 1}, {}), svg = to_svg(page);
  REQUIRE(png.error == "");
  REQUIRE(pdf.error == "");
  REQUIRE(svg.error == "");
  check_in_place(png_picture(folder, *png), dpi / 25.4);
  check_in_place(pdf_picture(folder, *pdf, dpi), dpi / 25.4);
  check_in_place(svg_picture(folder, *svg, dpi), dpi / 25.4);
}

TEST_CASE("at every scale of the screen the picture is there, and keeps its mean colour") {
  const Page page = page_with(stored(jpeg_of_quarters(1200, 800), 1200, 800));
  BalloonStamps stamps;
  for (const double scale : {0.2, 0.5, 1.0, 3.0, 11.0}) {
    const Picture picture = painted(static_cast<int>(100 * scale), static_cast<int>(80 * scale),
                                    [&](cairo_t* cairo) { paint_marks(cairo, page.marks, stamps, scale); });
    CHECK(is_near(picture.at(static_cast<int>(35 * scale), static_cast<int>(30 * scale)), red));
    CHECK(is_near(picture.at(static_cast<int>(65 * scale), static_cast<int>(30 * scale)), green));
    CHECK(is_near(picture.at(static_cast<int>(35 * scale), static_cast<int>(50 * scale)), blue));
  }
}

TEST_CASE("a PDF holds a JPEG as it came, once for several pages, and stays small") {
  const Folder folder;
  const std::string jpeg = jpeg_of_quarters(1600, 1200);
  const Shared<StoredPicture> picture(stored(jpeg, 1600, 1200));
  std::vector<Page> pages;
  for (int i = 0; i < 3; ++i) {
    pages.push_back(page_with({}));
    mark_of(pages.back()).picture = picture;
  }
  const auto pdf = to_pdf(pages, {});
  REQUIRE(pdf.error == "");
  CHECK(pdf->find(jpeg) != std::string::npos);
  CHECK(pdf->find(jpeg) == pdf->rfind(jpeg));
  CHECK(pdf->size() < jpeg.size() + 8000);
  // poppler takes the very file out again.
  const std::string file = folder.write("photo.pdf", *pdf);
  output_of("pdfimages -all -l 1 '" + file + "' '" + folder.path("image") + "'");
  CHECK(contents(folder.path("image-000.jpg")) == jpeg);
  CHECK(holds(*to_svg(pages[0]), "data:image/jpeg;base64,/9j/"));
}

TEST_CASE("equal pages with pictures give equal bytes") {
  for (const bool png : {false, true}) {
    const StoredPicture picture = png ? stored(file_of(quarters(300, 200, 100), "png"), 300, 200, PictureMedia::png)
                                      : stored(jpeg_of_quarters(300, 200), 300, 200);
    const Page one = page_with(picture, 0.4), two = page_with(picture, 0.4);
    CHECK(*to_pdf({&one, 1}, {}) == *to_pdf({&two, 1}, {}));
    CHECK(*to_svg(one) == *to_svg(two));
    CHECK(*to_png(one, 100) == *to_png(two, 100));
  }
}

TEST_CASE("a JPEG that says it is to be turned is turned in PDF too") {
  const Folder folder;
  // Orientation 3 is upside down: the white quarter comes to the upper left, red to the lower right.
  const Page page = page_with(stored(held(jpeg_of_quarters(600, 400), 3), 600, 400));
  const Picture picture = pdf_picture(folder, *to_pdf({&page, 1}, {}), 100);
  const auto at = [&](double x_mm, double y_mm) {
    return picture.at(static_cast<int>(x_mm * 100 / 25.4), static_cast<int>(y_mm * 100 / 25.4));
  };
  CHECK(is_near(at(35, 30), white));
  CHECK(is_near(at(65, 30), blue));
  CHECK(is_near(at(35, 50), green));
  CHECK(is_near(at(65, 50), red));
}

TEST_CASE("fading leads to white by the share that is asked for, in PNG and PDF alike") {
  const Folder folder;
  for (const double fade : {0.25, 0.6, 1.0}) {
    const Page page = page_with(stored(jpeg_of_quarters(300, 200), 300, 200), fade);
    const auto mixed = [&](const Rgb& c) {
      const auto one = [&](double v) { return v + (255 - v) * fade; };
      return Rgb{one(c.red), one(c.green), one(c.blue)};
    };
    const Picture png = png_picture(folder, *to_png(page, 101.6)),
                  pdf = pdf_picture(folder, *to_pdf({&page, 1}, {}), 100);
    CHECK(is_near(png.at(140, 120), mixed(red)));
    CHECK(is_near(png.at(140, 200), mixed(blue)));
    CHECK(is_near(pdf.at(138, 118), mixed(red)));
  }
}

TEST_CASE("what lies outside of the part to be seen is cut off") {
  const Folder folder;
  Page page = page_with(stored(jpeg_of_quarters(300, 200), 300, 200));
  mark_of(page).seen = {30, 10, 60, 30};  // off 10 mm at the left and 20 at the foot
  const Picture png = png_picture(folder, *to_png(page, 101.6));
  CHECK(is_near(png.at(4 * 25, 4 * 30), white, 0));
  CHECK(is_near(png.at(4 * 35, 4 * 30), red));
  CHECK(is_near(png.at(4 * 35, 4 * 50), white, 0));
  CHECK(is_near(png.at(4 * 85, 4 * 30), white, 0));
  mark_of(page).seen = {0, 0, 10, 10};
  const Picture none = png_picture(folder, *to_png(page, 101.6));
  for (const Rgb& pixel : none.pixels) REQUIRE(is_near(pixel, white, 0));
}

TEST_CASE("what is transparent shows the paper, and a picture that cannot be read an empty frame") {
  const Folder folder;
  const Page clear = page_with(stored(file_of(quarters(300, 200, 0), "png"), 300, 200, PictureMedia::png));
  const Picture seen = pdf_picture(folder, *to_pdf({&clear, 1}, {}), 100);
  CHECK(is_near(seen.at(138, 118), red));
  CHECK(is_near(seen.at(256, 197), white, 2));
  const Page broken = page_with(stored("\xFF\xD8\xFF nothing more", 300, 200));
  const auto pdf = to_pdf({&broken, 1}, {});
  REQUIRE(pdf.error == "");
  const Picture frame = png_picture(folder, *to_png(broken, 101.6));
  CHECK(is_near(frame.at(4 * 30, 4 * 40), white, 2));
  CHECK_FALSE(is_near(frame.at(4 * 50, 4 * 40), white, 30));  // where the diagonals cross
}
