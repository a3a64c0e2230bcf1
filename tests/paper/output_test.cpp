// PDF, SVG and PNG of one page: the same picture, the right size, the same bytes each time.
#include "studio/paint/output.hpp"

#include <doctest/doctest.h>

#include <clocale>
#include <cstdlib>

#include "studio/drawing/view.hpp"
#include "studio/paper/sheet.hpp"
#include "tests/drawing/sample.hpp"
#include "tests/paint/picture.hpp"

using namespace quadrille;

namespace {

std::vector<Page> pages_of(const sample::Job& job) {
  const EventCount count = job.count();
  SheetOptions options;
  options.units = Units::metric, options.paper = Paper::a4;
  return elevation_sheet({job.event, job.built, count, job.palettes}, options);
}

const DocumentInfo info{"Midsummer party", "2027-06-19"};

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("PDF, SVG and PNG show the same, by the eyes of poppler and librsvg") {
  const Folder folder;
  sample::Job job = sample::one_arch();
  for (const char* second : {"chalk", "lagoon", "brass", "dew", "ink"}) {
    CAPTURE(second);
    Area area = *job.event.areas[0];
    area.pieces[0].edit([&](PlacedPiece& p) { p.colours[1].colour = second; });
    job.event.areas[0] = area;
    const Page page = pages_of(job).front();
    constexpr int dpi = 127;  // 5 pixels to the millimetre, so that no program has to round the page
    const Picture png = png_picture(folder, *to_png(page, dpi));
    const Picture pdf = pdf_picture(folder, *to_pdf(std::span(&page, 1), info), dpi);
    const Picture svg = svg_picture(folder, *to_svg(page), dpi);
    CHECK(std::abs(png.width - pdf.width) <= 1);
    CHECK(std::abs(png.height - svg.height) <= 1);
    // A drawing without its arch differs by more than 5. Poppler sets text a little heavier than Cairo.
    CHECK(mean_difference(shrunk(png), shrunk(pdf)) < 1.3);
    CHECK(mean_difference(shrunk(png), shrunk(svg)) < 0.8);
    const Centroid a = red_centroid(png), b = red_centroid(pdf), c = red_centroid(svg);
    CHECK(std::hypot(a.x - b.x, a.y - b.y) < 0.5);
    CHECK(std::hypot(a.x - c.x, a.y - c.y) < 0.5);
    CHECK(b.weight == doctest::Approx(a.weight).epsilon(0.02));
    CHECK(c.weight == doctest::Approx(a.weight).epsilon(0.02));
  }
}

TEST_CASE("the screen shows what the paper shows") {
  const Folder folder;
  const sample::Job job = sample::one_arch();
  const Page page = pages_of(job).front();
  constexpr double dpi = 96;  // that of a screen, so that line widths agree too
  const Scene scene = scene_of(*job.event.areas[0], job.built, job.palettes);
  const Picture png = png_picture(folder, *to_png(page, dpi));
  // Where the first balloon of the scene stands on the page tells where its origin lies.
  const BalloonMark* mark = nullptr;
  for (const Mark& m : page.marks)
    if (const auto* b = std::get_if<BalloonMark>(&m.shape); b && m.part == Part::drawing && !mark) mark = b;
  const SceneBalloon* first = nullptr;
  for (const SceneItem& item : scene.items)
    if (const auto* b = std::get_if<SceneBalloon>(&item.shape); b && !first) first = b;
  REQUIRE(mark);
  REQUIRE(first);
  View view;
  view.pixels_per_metre = 1000 / page.scale * dpi / 25.4;
  view.origin_x_px = mark->centre.x * dpi / 25.4 - first->x_m * view.pixels_per_metre;
  view.origin_y_px = mark->centre.y * dpi / 25.4 + first->z_m * view.pixels_per_metre;
  BalloonStamps stamps;
  const Picture screen =
      painted(png.width, png.height, [&](cairo_t* c) { paint_scene(c, scene, view, png.width, {}, stamps); });
  const Centroid a = red_centroid(screen);
  // The page has swatches of the same red in its tables; they are painted over before comparing.
  Picture drawing = png;
  for (int y = 0; y < drawing.height; ++y)
    for (int x = static_cast<int>(drawing.width * 0.69); x < drawing.width; ++x)
      drawing.pixels[static_cast<std::size_t>(y * drawing.width + x)] = {255, 255, 255};
  const Centroid b = red_centroid(drawing);
  CHECK(std::hypot(a.x - b.x, a.y - b.y) < 0.2);
  CHECK(a.weight == doctest::Approx(b.weight).epsilon(0.01));
}

TEST_CASE("a painter leaves the context's matrix as it was, whatever it was") {
  const sample::Job job = sample::one_arch();
  const Scene scene = scene_of(*job.event.areas[0], job.built, job.palettes);
  const View view = fit_view(scene, 200, 150);
  BalloonStamps stamps;
  const Picture plain = painted(200, 150, [&](cairo_t* c) { paint_scene(c, scene, view, 200, {}, stamps); });
  const Picture moved = painted(240, 190, [&](cairo_t* c) {
    cairo_translate(c, 40, 40);
    cairo_matrix_t before, after;
    cairo_get_matrix(c, &before);
    paint_scene(c, scene, view, 200, {}, stamps);
    cairo_get_matrix(c, &after);
    CHECK(before.x0 == after.x0);
    CHECK(before.xx == after.xx);
  });
  double difference = 0;
  for (int y = 0; y < 150; ++y)
    for (int x = 0; x < 200; ++x) difference += std::abs(plain.at(x, y).red - moved.at(x + 40, y + 40).red);
  CHECK(difference / (200 * 150) < 0.05);
}

TEST_CASE("equal pages give equal bytes, whatever the clock and the time zone say") {
  const std::vector<Page> pages = pages_of(sample::one_arch());
  ::setenv("TZ", "Pacific/Auckland", 1);
  const auto first = to_pdf(pages, info);
  ::setenv("TZ", "America/Bogota", 1);
  const auto second = to_pdf(pages, info);
  ::unsetenv("TZ");
  REQUIRE(first);
  CHECK(*first == *second);
  // The clock would show in these two dates only, and they are the event's.
  for (const char* date : {"/CreationDate (20270619", "/ModDate (20270619"}) CHECK(has(*first, date));
  CHECK(*to_svg(pages[0]) == *to_svg(pages[0]));
  CHECK(*to_png(pages[0], 72) == *to_png(pages[0], 72));
  const auto undated = to_pdf(pages, {"t", ""}), odd = to_pdf(pages, {"t", "next week"});
  CHECK(*undated == *odd);
  // A day that no calendar has came out as one of another year.
  CHECK(*undated == *to_pdf(pages, {"t", "2027-99-99"}));
}

TEST_CASE("a comma locale changes nothing") {
  const std::vector<Page> pages = pages_of(sample::one_arch());
  const std::string pdf = *to_pdf(pages, info), svg = *to_svg(pages[0]), png = *to_png(pages[0], 60);
  const Folder folder;
  const std::string made = folder.path("de_DE.UTF-8");
  REQUIRE(std::system(("localedef -i de_DE -f UTF-8 '" + made + "' >/dev/null 2>&1").c_str()) == 0);
  ::setenv("LOCPATH", folder.path("").c_str(), 1);
  REQUIRE(std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr);
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%.1f", 1.5);
  CHECK(std::string(text.data()) == "1,5");  // the locale really is in force
  const std::vector<Page> again = pages_of(sample::one_arch());
  CHECK(*to_pdf(again, info) == pdf);
  CHECK(*to_svg(again[0]) == svg);
  CHECK(*to_png(again[0], 60) == png);
  std::setlocale(LC_ALL, "C");
  ::unsetenv("LOCPATH");
}

TEST_CASE("a PDF says its title and date, embeds its fonts, and has pages of the paper's size") {
  const Folder folder;
  const auto pdf = to_pdf(pages_of(sample::one_arch()), info);
  const std::string path = folder.write("info.pdf", *pdf);
  const std::string about = output_of("TZ=UTC pdfinfo -isodates '" + path + "'");
  CHECK(has(about, "Midsummer party"));
  CHECK(has(about, "2027-06-19"));
  // A4 by ISO 216 is 210 mm × 297 mm: 595.276 pt × 841.89 pt.
  CHECK(has(about, "841.89 x 595.27"));
  const std::string fonts = output_of("pdffonts '" + path + "'");
  // Column "emb" of every font; the two first lines are the table's head.
  std::size_t line = 0, listed = 0;
  for (std::size_t at = 0; at < fonts.size(); at = fonts.find('\n', at) + 1, ++line) {
    if (line < 2) continue;
    ++listed;
    CHECK(has(fonts.substr(at, fonts.find('\n', at) - at), " yes yes "));
  }
  CHECK(listed >= 2);
}

TEST_CASE("an SVG is as large in millimetres as its page") {
  const Page page = pages_of(sample::one_arch()).front();
  const std::string svg = *to_svg(page);
  CHECK(has(svg, "width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\""));
  const Folder folder;
  output_of("xmllint --noout '" + folder.write("page.svg", svg) + "'");
}

TEST_CASE("what cannot be written is said") {
  Page page = pages_of(sample::one_arch()).front();
  CHECK(has(to_png(page, 10).error, "30 to 1200"));
  CHECK(has(to_png(page, std::nan("")).error, "30 to 1200"));
  page.width = 900;
  CHECK(has(to_png(page, 1200).error, "32767"));
  CHECK_FALSE(to_pdf({}, info).error.empty());
}

TEST_CASE("a page that breaks off midway is no success") {
  // A pen that Cairo refuses put the context in error: what came after it was missing, and nobody was told.
  Page page = pages_of(sample::one_arch()).front();
  Mark broken = stroked_mark(Part::drawing, line_path({20, 20}, {40, 40}), Pen{});
  std::get<PathMark>(broken.shape).stroke.front().dashes = {-1};
  page.marks.insert(page.marks.begin(), broken);
  CHECK(has(to_pdf(std::span(&page, 1), info).error, "The PDF could not be made"));
  CHECK(has(to_svg(page).error, "The SVG could not be made"));
  CHECK(has(to_png(page, 72).error, "The picture could not be made"));
}

TEST_CASE("50,000 balloons make a small PDF: each kind is drawn once") {
  Page page;
  for (int i = 0; i < 50000; ++i) {
    BalloonMark b;
    b.centre = b.neck = {20 + (i % 250) * 0.68, 20 + (i / 250) * 1.2};
    b.radius = 0.6;
    b.ink = i % 2 ? Ink{0.6, 0.2, 0.3, 1} : Ink{0.2, 0.6, 0.6, 1};
    b.finish = static_cast<Finish>(i % 4);
    page.marks.emplace_back();
    page.marks.back().shape = b;
  }
  const auto pdf = to_pdf(std::span(&page, 1), info);
  REQUIRE(pdf);
  // Drawn one by one they take about 14 MB (measured with Cairo 1.16); shared, well below 2 MB.
  CHECK(pdf->size() < 2000000);
}
