#include "studio/paint/picture_stamps.hpp"

#include <cairo.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "studio/paint/jpeg_parts.hpp"
#include "studio/paint/target.hpp"

namespace quadrille {
namespace {

constexpr std::size_t most_held = 4;

struct Destroy {
  void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
};

/// Lets PDF and SVG take a JPEG's own bytes, where they show what was decoded. The bytes live as long as the surface.
void attach_jpeg(const Shared<StoredPicture>& picture, const DecodedPicture& decoded) {
  const int channels = picture->media == PictureMedia::jpeg ? jpeg_channels(picture->bytes) : 0;
  if (decoded.was_turned() || (channels != 1 && channels != 3)) return;
  auto* owner = new Shared<StoredPicture>(picture);
  const auto* bytes = reinterpret_cast<const unsigned char*>((*owner)->bytes.data());
  const auto release = [](void* data) { delete static_cast<Shared<StoredPicture>*>(data); };
  if (cairo_surface_set_mime_data(decoded.surface(), CAIRO_MIME_TYPE_JPEG, bytes, (*owner)->bytes.size(), release,
                                  owner) != CAIRO_STATUS_SUCCESS)
    release(owner);
}

/// At half its size.
DecodedPicture halved(const DecodedPicture& picture) {
  const int width = std::max(1, picture.width_px() / 2), height = std::max(1, picture.height_px() / 2);
  DecodedPicture half(cairo_image_surface_create(cairo_image_surface_get_format(picture.surface()), width, height));
  const std::unique_ptr<cairo_t, Destroy> cairo(cairo_create(half.surface()));
  cairo_scale(cairo.get(), static_cast<double>(width) / picture.width_px(),
              static_cast<double>(height) / picture.height_px());
  cairo_set_source_surface(cairo.get(), picture.surface(), 0, 0);
  cairo_pattern_set_filter(cairo_get_source(cairo.get()), CAIRO_FILTER_GOOD);
  cairo_pattern_set_extend(cairo_get_source(cairo.get()), CAIRO_EXTEND_PAD);
  cairo_set_operator(cairo.get(), CAIRO_OPERATOR_SOURCE);
  cairo_paint(cairo.get());
  return half;
}

/// The smallest level that has a pixel for each of the device's; made where it is not there yet.
const DecodedPicture& level_for(std::vector<DecodedPicture>& levels, double device_px) {
  std::size_t level = 0;
  while (std::max(levels[level].width_px(), 2) >= 2 * device_px && levels[level].width_px() > 16) {
    if (levels.size() == level + 1) levels.push_back(halved(levels[level]));
    ++level;
  }
  return levels[level];
}

Rect shared_by(const Rect& a, const Rect& b) {
  const double x = std::max(a.x, b.x), y = std::max(a.y, b.y);
  return {x, y, std::max(0.0, std::min(a.right(), b.right()) - x), std::max(0.0, std::min(a.bottom(), b.bottom()) - y)};
}

void paint_empty_frame(cairo_t* cairo, const Rect& box) {
  cairo_set_source_rgba(cairo, 0.55, 0.56, 0.6, 1);
  cairo_set_line_width(cairo, 0.25);
  cairo_rectangle(cairo, box.x, box.y, box.width, box.height);
  cairo_move_to(cairo, box.x, box.y);
  cairo_line_to(cairo, box.right(), box.bottom());
  cairo_move_to(cairo, box.right(), box.y);
  cairo_line_to(cairo, box.x, box.bottom());
  cairo_stroke(cairo);
}

void paint_pixels(cairo_t* cairo, const DecodedPicture& pixels, const Rect& box) {
  cairo_save(cairo);
  cairo_translate(cairo, box.x, box.y);
  cairo_scale(cairo, box.width / pixels.width_px(), box.height / pixels.height_px());
  cairo_set_source_surface(cairo, pixels.surface(), 0, 0);
  cairo_pattern_set_filter(cairo_get_source(cairo), CAIRO_FILTER_BILINEAR);
  // Its edge is not blended with nothing; PDF would make a pattern of it, and shows the picture's own edge anyway.
  if (!is_vector(cairo)) cairo_pattern_set_extend(cairo_get_source(cairo), CAIRO_EXTEND_PAD);
  cairo_paint(cairo);
  cairo_restore(cairo);
}

}  // namespace

PictureStamps::Held& PictureStamps::held(const Shared<StoredPicture>& picture) {
  const auto found = std::ranges::find_if(held_, [&](const Held& h) { return h.picture.shares_with(picture); });
  if (found != held_.end()) {
    std::rotate(found, found + 1, held_.end());
    return held_.back();
  }
  if (held_.size() == most_held) held_.erase(held_.begin());
  held_.push_back({picture, {}});
  if (auto decoded = decode_picture(picture->bytes)) {
    attach_jpeg(picture, *decoded);
    held_.back().levels.push_back(std::move(*decoded.value));
  }
  return held_.back();
}

void PictureStamps::paint(cairo_t* cairo, const PictureMark& mark) {
  const Rect seen = shared_by(mark.box, mark.seen);
  if (!(seen.width > 0) || !(seen.height > 0)) return;
  Held& picture = held(mark.picture);
  cairo_save(cairo);
  cairo_rectangle(cairo, seen.x, seen.y, seen.width, seen.height);
  cairo_clip(cairo);
  if (picture.levels.empty()) {
    paint_empty_frame(cairo, mark.box);
  } else {
    const bool keeps_shape = is_vector(cairo);
    paint_pixels(
        cairo,
        keeps_shape ? picture.levels.front() : level_for(picture.levels, mark.box.width * pixels_per_unit(cairo)),
        mark.box);
    cairo_set_source_rgba(cairo, 1, 1, 1, std::clamp(mark.fade, 0.0, 1.0));
    cairo_paint(cairo);
  }
  cairo_restore(cairo);
}

}  // namespace quadrille
