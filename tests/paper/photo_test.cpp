// An elevation over the photo of its place: everything stays within the page and can be read.
#include <doctest/doctest.h>

#include "studio/paint/output.hpp"
#include "tests/paint/photos.hpp"
#include "tests/paint/picture.hpp"
#include "tests/paper/page_checks.hpp"

using namespace quadrille;

namespace {

/// The job with a photo behind its area, wider and higher than everything in it.
sample::Job over_photo(sample::Job job, double fade = 0.4) {
  job.event.areas[0].edit([&](Area& area) {
    Backdrop backdrop;
    backdrop.picture = StoredPicture{jpeg_of_quarters(900, 600), PictureMedia::jpeg, 900, 600};
    backdrop.metres_per_pixel = 0.02, backdrop.x_m = -6, backdrop.z_m = -1, backdrop.fade = fade;
    area.backdrop = std::move(backdrop);
  });
  return job;
}

const PictureMark* photo_on(const Page& page) {
  for (const Mark& mark : page.marks)
    if (const auto* picture = std::get_if<PictureMark>(&mark.shape)) return picture;
  return nullptr;
}

}  // namespace

TEST_CASE("the photo stays within the margins, whatever stands before it") {
  for (HardCase& hard : hard_cases()) {
    if (hard.job.event.areas.empty()) continue;
    CAPTURE(hard.name);
    const bool drawn = !hard.job.event.areas[0]->pieces.empty();
    const std::vector<Page> pages = sheet(over_photo(std::move(hard.job)), in_metres());
    CHECK((photo_on(pages.front()) != nullptr) == drawn);
    for (const Page& page : pages) {
      check_page(page);
      if (const PictureMark* photo = photo_on(page)) {
        CHECK(photo->seen.x >= page.margin - 0.01);
        CHECK(photo->seen.y >= page.margin - 0.01);
        CHECK(photo->seen.right() <= page.width - page.margin + 0.01);
        CHECK(photo->seen.bottom() <= page.height - page.margin + 0.01);
      }
    }
  }
}

TEST_CASE("a printed photo is to the drawing's scale: 18 m of it are as long as 18 m are on this page") {
  const Page page = sheet(over_photo(sample::one_arch()), in_metres()).front();
  REQUIRE(photo_on(page) != nullptr);
  CHECK(photo_on(page)->box.width == doctest::Approx(18 * 1000 / page.scale));
  CHECK(photo_on(page)->box.height == doctest::Approx(12 * 1000 / page.scale));
}

TEST_CASE("over the photo the sheet keeps its words and its scale's numbers, and the photo is seen on it") {
  const Folder folder;
  const sample::Job job = over_photo(sample::one_arch(), 0);
  const std::vector<Page> pages = sheet(job, in_metres());
  const auto pdf = to_pdf(pages, {"Midsummer party", "2027-06-19"});
  REQUIRE(pdf.error == "");
  CHECK(*pdf == *to_pdf(sheet(job, in_metres()), {"Midsummer party", "2027-06-19"}));
  const std::string text = pdf_text(folder, *pdf);
  for (const char* words : {"Garden entrance", "Rosewood", "Scale 1"}) CHECK_MESSAGE(has(text, words), words);
  // Blue is the photo's lower left quarter alone, up to 5 m and 3 m along: nothing else on the page is so blue.
  const Picture picture = pdf_picture(folder, *pdf, 60);
  std::size_t blue = 0;
  for (const Rgb& pixel : picture.pixels) blue += pixel.blue > pixel.red + 60 && pixel.blue > pixel.green + 60 ? 1 : 0;
  CHECK(blue > picture.pixels.size() / 100);
}

TEST_CASE("names of what stands there could not be read on a dark photo: they lie on white") {
  for (const bool has_photo : {true, false}) {
    sample::Job job = sample::one_arch();
    job.event.areas[0].edit([](Area& area) {
      Structure post;
      post.id = "s1", post.name = "Gate post", post.x_m = 0, post.height_m = 2;
      area.structures.push_back(post);
    });
    if (has_photo) job = over_photo(std::move(job));
    const Page page = sheet(job, in_metres()).front();
    const auto label = std::ranges::find_if(page.marks, [](const Mark& mark) {
      const auto* text = std::get_if<TextMark>(&mark.shape);
      return text != nullptr && text->text.starts_with("Gate post, ");
    });
    REQUIRE(label != page.marks.end());
    REQUIRE(label != page.marks.begin());
    const Mark& before = *std::prev(label);
    const auto* path = std::get_if<PathMark>(&before.shape);
    const Rect white = bounds(before), text = bounds(*label);
    const bool beneath = white.x < text.x + 0.01 && white.y < text.y + 0.01 && white.right() > text.right() - 0.01 &&
                         white.bottom() > text.bottom() - 0.01;
    CHECK((path != nullptr && !path->fill.empty() && path->fill[0].red == 1 && beneath) == has_photo);
  }
}
