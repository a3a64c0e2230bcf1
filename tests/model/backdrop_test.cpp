// The photo behind an area: where its pixels lie, and the edits of it.
#include "studio/model/backdrop_edits.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "sample_event.hpp"
#include "studio/model/area_edits.hpp"
#include "studio/model/edits.hpp"

namespace quadrille {
namespace {

/// Bytes that no edit looks at.
StoredPicture picture_of(int width_px, int height_px) {
  return {"\xFF\xD8\xFF not looked at", PictureMedia::jpeg, width_px, height_px};
}

Event with_hall() {
  Event event;
  Area hall;
  hall.id = "a1";
  return with_area(std::move(event), std::move(hall));
}

Event with_photo(Backdrop backdrop) {
  auto event = with_backdrop(with_hall(), "a1", std::move(backdrop));
  REQUIRE(event.error == "");
  return *event;
}

/// 1000 x 800 pixels of 1 cm, its lower left corner at 2 m, 0.5 m over the floor.
Backdrop usual() {
  Backdrop backdrop;
  backdrop.picture = picture_of(1000, 800);
  backdrop.metres_per_pixel = 0.01, backdrop.x_m = 2, backdrop.z_m = 0.5;
  return backdrop;
}

const Backdrop& photo_of(const Event& event) { return *find_area(event, "a1")->backdrop; }

bool near(double a, double b) { return std::abs(a - b) < 1e-9; }

}  // namespace

TEST_CASE("a pixel lies where the corner and the scale put it, and back") {
  const Backdrop photo = usual();
  // By hand: the lower left corner of the picture is its pixel (0, 800); 300 pixels to the right are 3 m, 200 above it 2 m.
  CHECK(photo.in_area({0, 800}) == ElevationSpot{2, 0.5});
  const ElevationSpot spot = photo.in_area({300, 600});
  CHECK(near(spot.x_m, 5));
  CHECK(near(spot.z_m, 2.5));
  const PictureSpot back = photo.in_picture(spot);
  CHECK(near(back.x_px, 300));
  CHECK(near(back.y_px, 600));
  CHECK(near(photo.width_m(), 10));
  CHECK(near(photo.height_m(), 8));
}

TEST_CASE("a new photo is as wide as the wall, or three metres high, and stands on the floor") {
  Area area;
  Backdrop photo = fresh_backdrop(area, picture_of(4000, 3000));
  CHECK(near(photo.height_m(), 3));
  CHECK(photo.z_m == 0);
  area.wall_width_m = 12;
  photo = fresh_backdrop(area, picture_of(4000, 3000));
  CHECK(near(photo.width_m(), 12));
  CHECK(with_backdrop(with_hall(), "a1", photo).error == "");
  // A strip of one pixel in height is accepted too, and so is a wall of a kilometre and more.
  area.wall_width_m = 90'000;
  CHECK(with_backdrop(with_hall(), "a1", fresh_backdrop(area, picture_of(4000, 1))).error == "");
}

TEST_CASE("calibrating: a door of 2.10 m that is 350 pixels high gives 6 mm a pixel, and its foot stays where it was") {
  const Event event = with_photo(usual());
  const PictureSpot foot{420, 700}, head{420, 350};
  const ElevationSpot stood = photo_of(event).in_area(foot);
  const auto calibrated = with_backdrop_scale(event, "a1", foot, head, 2.1);
  REQUIRE(calibrated.error == "");
  const Backdrop& photo = photo_of(*calibrated);
  CHECK(near(photo.metres_per_pixel, 0.006));  // by hand: 2.1 / 350
  CHECK(near(photo.in_area(foot).x_m, stood.x_m));
  CHECK(near(photo.in_area(foot).z_m, stood.z_m));
  CHECK(near(photo.in_area(head).z_m - photo.in_area(foot).z_m, 2.1));
  CHECK(photo.picture.shares_with(photo_of(event).picture));
}

TEST_CASE("calibrating along a slant goes by the distance, whichever way the points were given") {
  // By hand: 300 across and 400 up are 500 pixels (3-4-5); 2.5 m make 5 mm a pixel.
  for (const bool turned : {false, true}) {
    const PictureSpot a{100, 600}, b{400, 200};
    const auto calibrated = with_backdrop_scale(with_photo(usual()), "a1", turned ? b : a, turned ? a : b, 2.5);
    REQUIRE(calibrated.error == "");
    CHECK(near(photo_of(*calibrated).metres_per_pixel, 0.005));
  }
}

TEST_CASE("any two points and length: the distance becomes the length, and the first point stays in place") {
  CHECK(rc::check([] {
    const auto pixel = [] { return static_cast<double>(*rc::gen::inRange(-500, 1500)); };
    const PictureSpot fixed{pixel(), pixel()}, other{pixel(), pixel()};
    const double apart_px = std::hypot(other.x_px - fixed.x_px, other.y_px - fixed.y_px);
    RC_PRE(apart_px >= least_calibration_px);
    const double length_m = *rc::gen::inRange(10, 20'000) / 100.0;
    const Event event = with_photo(usual());
    const auto calibrated = with_backdrop_scale(event, "a1", fixed, other, length_m);
    RC_PRE(static_cast<bool>(calibrated));
    const ElevationSpot before = photo_of(event).in_area(fixed), after = photo_of(*calibrated).in_area(fixed);
    const ElevationSpot end = photo_of(*calibrated).in_area(other);
    RC_ASSERT(std::hypot(after.x_m - before.x_m, after.z_m - before.z_m) < 1e-6);
    RC_ASSERT(std::abs(std::hypot(end.x_m - after.x_m, end.z_m - after.z_m) - length_m) < 1e-6);
  }));
}

TEST_CASE("calibrating refuses points on one another and lengths that cannot be, and changes nothing then") {
  const Event event = with_photo(usual());
  const auto tried = [&](PictureSpot a, PictureSpot b, double length_m) {
    return with_backdrop_scale(event, "a1", a, b, length_m).error;
  };
  CHECK(tried({10, 10}, {10, 10}, 2).find("two points") != std::string::npos);
  CHECK(tried({10, 10}, {14, 10}, 2).find("two points") != std::string::npos);
  CHECK(tried({10, 10}, {std::numeric_limits<double>::quiet_NaN(), 10}, 2) != "");
  for (const double length_m : {0.0, -1.0, 200.1, std::numeric_limits<double>::infinity()})
    CHECK(tried({10, 10}, {500, 10}, length_m).find("200.00 m") != std::string::npos);
  CHECK(tried({10, 10}, {500, 10}, 200) == "");
  // 10 pixels for 150 m: the photo would be 15 km wide.
  CHECK(tried({10, 10}, {20, 10}, 150).find("too large") != std::string::npos);
  CHECK(tried({0, 10}, {1000, 10}, 0.001).find("too small") != std::string::npos);
}

TEST_CASE("what cannot be a photo is refused with a sentence") {
  const auto fault = [](auto change) {
    Backdrop backdrop = usual();
    change(backdrop);
    return with_backdrop(with_hall(), "a1", backdrop).error;
  };
  CHECK(fault([](Backdrop&) {}) == "");
  CHECK(fault([](Backdrop& b) { b.picture = StoredPicture{}; }).find("no picture") != std::string::npos);
  CHECK(fault([](Backdrop& b) { b.picture = picture_of(20'000, 10); }).find("16000") != std::string::npos);
  CHECK(fault([](Backdrop& b) {
          b.picture.edit([](StoredPicture& picture) { picture.bytes.resize(most_picture_bytes + 1); });
        }).find("33.6 MB") != std::string::npos);
  CHECK(fault([](Backdrop& b) { b.metres_per_pixel = 0; }).find("too small") != std::string::npos);
  CHECK(fault([](Backdrop& b) { b.metres_per_pixel = 2; }).find("too large") != std::string::npos);
  CHECK(fault([](Backdrop& b) { b.x_m = std::numeric_limits<double>::infinity(); }) != "");
  CHECK(fault([](Backdrop& b) { b.metres_per_pixel = std::numeric_limits<double>::quiet_NaN(); }) != "");
}

TEST_CASE("moving, fading, locking and hiding change that alone and share the picture; removing leaves the area") {
  const Event event = with_photo(usual());
  CHECK(photo_of(with_backdrop_at(event, "a1", -1.5, 0.25)).in_area({0, 800}) == ElevationSpot{-1.5, 0.25});
  CHECK(photo_of(with_backdrop_fade(event, "a1", 0.6)).fade == 0.6);
  CHECK(photo_of(with_backdrop_fade(event, "a1", 7)).fade == 1);
  CHECK(photo_of(with_backdrop_fade(event, "a1", -1)).fade == 0);
  CHECK(photo_of(with_backdrop_lock(event, "a1", true)).locked);
  CHECK(photo_of(with_backdrop_hidden(event, "a1", true)).hidden);
  for (const Event& changed : {with_backdrop_at(event, "a1", 1, 1), with_backdrop_fade(event, "a1", 0.9)}) {
    CHECK(changed != event);
    CHECK(photo_of(changed).picture.shares_with(photo_of(event).picture));
  }
  CHECK_FALSE(find_area(without_backdrop(event, "a1"), "a1")->backdrop.has_value());
  CHECK(with_backdrop_lock(with_backdrop_lock(event, "a1", true), "a1", false) == event);
}

TEST_CASE("without such an area, or without a photo in it, nothing changes, and nothing is copied") {
  const Event event = with_photo(usual()), bare = with_hall();
  CHECK(with_backdrop_at(event, "a9", 1, 1) == event);
  CHECK(*with_backdrop(event, "a9", usual()) == event);
  const Event touched = with_backdrop_fade(without_backdrop(bare, "a1"), "a1", 1);
  CHECK(touched == bare);
  CHECK(touched.areas[0].shares_with(bare.areas[0]));
  CHECK(*with_backdrop_scale(bare, "a1", {0, 0}, {0, 0}, 0) == bare);
}

}  // namespace quadrille
