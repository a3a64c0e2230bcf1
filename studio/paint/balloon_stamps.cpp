// Stamps: recording surfaces for vector targets, image surfaces for the rest.
#include "studio/paint/balloon_stamps.hpp"

#include <cairo.h>

#include <cmath>

#include "studio/paint/balloon_look.hpp"
#include "studio/paint/target.hpp"

namespace quadrille {
namespace {

constexpr double form_radius = 64;            // of a form; large, so that its numbers keep their digits
constexpr double largest_picture = 200;       // radius in pixels beyond which a balloon is drawn afresh
constexpr std::size_t most_bytes = 64 << 20;  // of pictures kept

std::uint32_t packed(const Ink& ink) {
  const auto byte = [](double v) { return static_cast<std::uint32_t>(std::lround(v * 255)) & 0xffu; };
  return byte(ink.red) << 16 | byte(ink.green) << 8 | byte(ink.blue);
}

/// Of the radius; 0 without a letter, so that all those share their stamps.
int letter_hundredths(const BalloonMark& balloon) {
  return balloon.letter == 0 ? 0 : static_cast<int>(std::lround(balloon.letter_share * 100));
}

void paint_scaled(cairo_t* cairo, const BalloonMark& balloon, double x, double y, double radius) {
  cairo_save(cairo);
  cairo_translate(cairo, x, y);
  cairo_scale(cairo, radius, radius);
  paint_ball(cairo, balloon.ink, balloon.finish, balloon.letter, letter_hundredths(balloon) / 100.0);
  cairo_restore(cairo);
}

/// The two tangents from the neck to the ball: the outline of a tied balloon is the convex hull of both.
void paint_taper(cairo_t* cairo, const BalloonMark& balloon) {
  const double dx = balloon.neck.x - balloon.centre.x, dy = balloon.neck.y - balloon.centre.y;
  const double distance = std::hypot(dx, dy), r = balloon.radius * 0.97;
  if (distance <= balloon.radius * 1.005) return;
  const double towards = std::atan2(dy, dx), half = std::acos(r / distance);
  const Ink tone = taper_ink(balloon.ink, balloon.finish, dx, dy);
  cairo_new_path(cairo);
  cairo_move_to(cairo, balloon.neck.x, balloon.neck.y);
  cairo_arc_negative(cairo, balloon.centre.x, balloon.centre.y, r, towards + half, towards - half);
  cairo_close_path(cairo);
  cairo_set_source_rgba(cairo, tone.red, tone.green, tone.blue, tone.opacity);
  cairo_fill_preserve(cairo);
  const Ink line = shaded(tone, -0.4);
  cairo_set_source_rgba(cairo, line.red, line.green, line.blue, 0.55);
  cairo_set_line_width(cairo, balloon.radius * 0.03);
  cairo_set_line_join(cairo, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke(cairo);
}

}  // namespace

void BalloonStamps::Release::operator()(cairo_surface_t* surface) const {
  // Cairo before 1.17.6 (from memory; 1.16 measured) forgets one reference for each time that an SVG shows a form. What
  // other targets hold is theirs: a recording that outlives these stamps still shows the form.
  if (shown_in_svg && cairo_version() < CAIRO_VERSION_ENCODE(1, 17, 6))
    while (cairo_surface_get_reference_count(surface) > 1) cairo_surface_destroy(surface);
  cairo_surface_destroy(surface);
}

void BalloonStamps::paint(cairo_t* cairo, const BalloonMark& balloon) {
  if (!(balloon.radius > 0)) return;
  paint_taper(cairo, balloon);
  if (is_vector(cairo)) return stamp_form(cairo, balloon);
  const double pixels = pixels_per_unit(cairo);
  if (balloon.radius * pixels > largest_picture)
    return paint_scaled(cairo, balloon, balloon.centre.x, balloon.centre.y, balloon.radius);
  stamp_picture(cairo, balloon, pixels);
}

void BalloonStamps::stamp_form(cairo_t* cairo, const BalloonMark& balloon) {
  constexpr double reach = form_radius * balloon_reach;
  Surface& form = stamps_[{packed(balloon.ink), balloon.finish, balloon.letter, letter_hundredths(balloon), 0}];
  if (!form) {
    // The form begins at 0, 0: Cairo 1.16 loses what lies at negative coordinates when it writes SVG.
    const cairo_rectangle_t extents{0, 0, 2 * reach, 2 * reach};
    form.reset(cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &extents));
    cairo_t* own = cairo_create(form.get());
    paint_scaled(own, balloon, reach, reach, form_radius);
    cairo_destroy(own);
  }
  if (cairo_surface_get_type(cairo_get_target(cairo)) == CAIRO_SURFACE_TYPE_SVG) form.get_deleter().shown_in_svg = true;
  cairo_save(cairo);
  cairo_translate(cairo, balloon.centre.x, balloon.centre.y);
  cairo_scale(cairo, balloon.radius / form_radius, balloon.radius / form_radius);
  cairo_set_source_surface(cairo, form.get(), -reach, -reach);
  cairo_paint(cairo);
  cairo_restore(cairo);
}

void BalloonStamps::stamp_picture(cairo_t* cairo, const BalloonMark& balloon, double pixels) {
  // A quarter of a pixel in the radius is the error that nobody sees, and keeps sizes that hardly differ to one
  // picture.
  const int quarters = std::max(1, static_cast<int>(std::lround(balloon.radius * pixels * 4)));
  const double radius = quarters / 4.0;
  const int half = static_cast<int>(std::ceil(radius * balloon_reach)) + 1;
  const Key key{packed(balloon.ink), balloon.finish, balloon.letter, letter_hundredths(balloon), quarters};
  if (bytes_ > most_bytes) {
    stamps_.clear();
    bytes_ = 0;
  }
  Surface& picture = stamps_[key];
  if (!picture) {
    picture.reset(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, 2 * half, 2 * half));
    bytes_ += static_cast<std::size_t>(half) * static_cast<std::size_t>(half) * 16;
    cairo_t* own = cairo_create(picture.get());
    paint_scaled(own, balloon, half, half, radius);
    cairo_destroy(own);
  }
  // One stamp serves every zoom at which the radius comes to the same number of pixels.
  cairo_surface_set_device_scale(picture.get(), pixels, pixels);
  cairo_save(cairo);
  cairo_set_source_surface(cairo, picture.get(), balloon.centre.x - half / pixels, balloon.centre.y - half / pixels);
  cairo_paint(cairo);
  cairo_restore(cairo);
}

}  // namespace quadrille
