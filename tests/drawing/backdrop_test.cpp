// The photo in a scene: where it lies, how much of it belongs to the drawing, and what is said of one that is damaged.
#include <doctest/doctest.h>

#include "studio/drawing/backdrop_findings.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/model/backdrop_edits.hpp"
#include "tests/drawing/sample.hpp"
#include "tests/paint/photos.hpp"

using namespace quadrille;

namespace {

/// 900 × 600 pixels of 2 cm: 18 m wide, 12 m high, from -6 m on, its foot 1 m beneath the floor.
Backdrop wide_photo() {
  Backdrop backdrop;
  backdrop.picture = StoredPicture{jpeg_of_quarters(900, 600), PictureMedia::jpeg, 900, 600};
  backdrop.metres_per_pixel = 0.02, backdrop.x_m = -6, backdrop.z_m = -1, backdrop.fade = 0.4;
  return backdrop;
}

Scene scene_with(const Backdrop& backdrop, bool with_pieces = true) {
  sample::Job job = sample::one_arch();
  Area area = *job.event.areas[0];
  if (!with_pieces) area.pieces.clear();
  area.backdrop = backdrop;
  return scene_of(area, job.built, job.palettes);
}

const PictureMark* photo_in(const Marks& marks) {
  for (const Mark& mark : marks)
    if (const auto* picture = std::get_if<PictureMark>(&mark.shape)) return picture;
  return nullptr;
}

}  // namespace

TEST_CASE("the photo lies in the scene where the event puts it; hidden it is not there") {
  const Scene scene = scene_with(wide_photo());
  REQUIRE(scene.backdrop.has_value());
  CHECK(scene.backdrop->extent == Extent{-6, 12, -1, 11});  // by hand: 900 and 600 pixels of 2 cm
  CHECK(scene.backdrop->fade == 0.4);
  Backdrop hidden = wide_photo();
  hidden.hidden = true;
  CHECK_FALSE(scene_with(hidden).backdrop.has_value());
}

TEST_CASE("the drawing grows by no more than the surroundings of the pieces, and not beneath the floor") {
  sample::Job job = sample::one_arch();
  const Extent bare = scene_of(*job.event.areas[0], job.built, job.palettes).extent;
  const Extent wide = scene_with(wide_photo()).extent;
  CHECK(wide.left == doctest::Approx(bare.left - photo_surroundings_m));
  CHECK(wide.right == doctest::Approx(bare.right + photo_surroundings_m));
  CHECK(wide.top == doctest::Approx(bare.top + photo_surroundings_m));
  CHECK(wide.floor == bare.floor);
  // A photo that ends before the surroundings do, or that lies within, adds no more than it has.
  Backdrop small = wide_photo();
  small.metres_per_pixel = 0.001, small.x_m = bare.left + 0.2, small.z_m = 0.2;
  CHECK(scene_with(small).extent == bare);
  // Alone, all of it is the drawing.
  CHECK(scene_with(wide_photo(), false).extent.top == 11);
}

TEST_CASE("the photo is painted beneath everything, cut to the drawing on paper and whole on the screen") {
  const Scene scene = scene_with(wide_photo());
  const Placement at{20, {150, 180}};
  SceneLook look;
  CHECK(photo_in(scene_marks(scene, at, look, 10, 280)) == nullptr);
  look.photo = PhotoLook::cut;
  const Marks cut = scene_marks(scene, at, look, 10, 280);
  CHECK(std::holds_alternative<PictureMark>(cut.front().shape));
  CHECK(cut.front().part == Part::backdrop);
  const PictureMark& photo = *photo_in(cut);
  // By hand: 20 mm a metre from (150, 180): -6 m is 30 mm, 11 m up is -40 mm; 18 m are 360 mm, 12 m are 240 mm.
  CHECK(photo.box == Rect{30, -40, 360, 240});
  CHECK(photo.seen == at.rect(scene.extent));
  CHECK(photo.seen.bottom() == doctest::Approx(180));
  look.photo = PhotoLook::whole;
  CHECK(photo_in(scene_marks(scene, at, look, 10, 280))->seen == photo.box);
}

TEST_CASE("over a wall the photo lies on its face and under its outline") {
  sample::Job job = sample::one_arch();
  Area area = *job.event.areas[0];
  area.wall_width_m = 6, area.wall_height_m = 3;
  area.backdrop = wide_photo();
  SceneLook look;
  look.photo = PhotoLook::cut;
  const Marks marks = scene_marks(scene_of(area, job.built, job.palettes), {20, {150, 180}}, look, 10, 280);
  CHECK(std::get<PathMark>(marks[0].shape).fill.size() == 1);
  CHECK(std::holds_alternative<PictureMark>(marks[1].shape));
  CHECK(std::get<PathMark>(marks[2].shape).stroke.size() == 1);
}

TEST_CASE("a photo that cannot be decoded, or has another size than is said, is a warning; a sound one is none") {
  const auto findings = [](auto change) {
    Backdrop backdrop = wide_photo();
    change(backdrop);
    sample::Job job = sample::one_arch();
    job.event.areas[0].edit([&](Area& area) { area.backdrop = backdrop; });
    return check_backdrops(job.event);
  };
  CHECK(findings([](Backdrop&) {}).empty());
  const Findings broken = findings([](Backdrop& b) { b.picture.edit([](StoredPicture& p) { p.bytes.resize(60); }); });
  REQUIRE(broken.size() == 1);
  CHECK(broken[0].code == "backdrop-unreadable");
  CHECK(broken[0].weight == Weight::warning);
  CHECK(broken[0].area == "a1");
  CHECK(broken[0].text.find("cannot be read") != std::string::npos);
  const Findings other = findings([](Backdrop& b) { b.picture.edit([](StoredPicture& p) { p.width_px = 800; }); });
  REQUIRE(other.size() == 1);
  CHECK(other[0].code == "backdrop-size");
  CHECK(check_backdrops(sample::one_arch().event).empty());
}
