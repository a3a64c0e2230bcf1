// gdk-pixbuf reads; the pixels are moved to a Cairo surface, whose colours are multiplied with their opacity.
#include "studio/paint/decoded_picture.hpp"

#include <cairo.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <string>

#include "sdk/number.hpp"

namespace quadrille {
namespace {

struct Unref {
  void operator()(gpointer object) const { g_object_unref(object); }
};
using Loader = std::unique_ptr<GdkPixbufLoader, Unref>;
using Pixbuf = std::unique_ptr<GdkPixbuf, Unref>;

using Decoded = Result<DecodedPicture>;

/// What the size-prepared signal is handed: it is sent once the head of the file is read, before any room is made.
struct Sizing {
  int longest_px = 0;
  double width = 0, height = 0;
  bool too_large() const { return width * height > most_pixels; }
};

void prepare_size(GdkPixbufLoader* loader, int width, int height, gpointer data) {
  auto& sizing = *static_cast<Sizing*>(data);
  sizing.width = width, sizing.height = height;
  // A size of nothing makes every loader give up.
  if (sizing.too_large()) return gdk_pixbuf_loader_set_size(loader, 0, 0);
  const int longest = std::max(width, height);
  if (sizing.longest_px <= 0 || longest <= sizing.longest_px) return;
  const double share = static_cast<double>(sizing.longest_px) / longest;
  gdk_pixbuf_loader_set_size(loader, std::max(1, static_cast<int>(std::lround(width * share))),
                             std::max(1, static_cast<int>(std::lround(height * share))));
}

std::string sentence_about(GError* error, const Sizing& sizing) {
  std::string said = error == nullptr ? "it is cut off" : error->message;
  g_clear_error(&error);
  while (said.ends_with('.')) said.pop_back();
  if (sizing.too_large())
    said = "it has " + print_fixed(sizing.width * sizing.height / 1e6, 0) + " million pixels, and " +
           print_fixed(most_pixels / 1e6, 0) + " are accepted";
  return "This picture cannot be read: " + said + ".";
}

/// In small runs, so that a size that is refused is heard of before the rest is given.
GError* feed(GdkPixbufLoader* loader, std::string_view bytes, const Sizing& sizing) {
  constexpr std::size_t run = 16'384;
  GError* error = nullptr;
  while (!bytes.empty() && error == nullptr && !sizing.too_large()) {
    const std::string_view next = bytes.substr(0, run);
    bytes.remove_prefix(next.size());
    gdk_pixbuf_loader_write(loader, reinterpret_cast<const guchar*>(next.data()), next.size(), &error);
  }
  return error;
}

/// A channel times its opacity, to the nearest.
std::uint32_t multiplied(guchar channel, guchar alpha) {
  return (static_cast<std::uint32_t>(channel) * alpha + 127) / 255;
}

void copy_row(const guchar* from, int pixels, bool alpha, std::uint32_t* to) {
  const int step = alpha ? 4 : 3;
  for (int i = 0; i < pixels; ++i, from += step) {
    const guchar a = alpha ? from[3] : guchar{255};
    to[i] = static_cast<std::uint32_t>(a) << 24 | multiplied(from[0], a) << 16 | multiplied(from[1], a) << 8 |
            multiplied(from[2], a);
  }
}

cairo_surface_t* surface_of(const GdkPixbuf* pixbuf) {
  const int width = gdk_pixbuf_get_width(pixbuf), height = gdk_pixbuf_get_height(pixbuf);
  const bool alpha = gdk_pixbuf_get_has_alpha(pixbuf) != 0;
  cairo_surface_t* surface =
      cairo_image_surface_create(alpha ? CAIRO_FORMAT_ARGB32 : CAIRO_FORMAT_RGB24, width, height);
  if (cairo_surface_status(surface) != CAIRO_STATUS_SUCCESS) return surface;
  cairo_surface_flush(surface);
  unsigned char* rows = cairo_image_surface_get_data(surface);
  const guchar* from = gdk_pixbuf_read_pixels(pixbuf);
  for (int y = 0; y < height; ++y)
    copy_row(from + static_cast<std::ptrdiff_t>(y) * gdk_pixbuf_get_rowstride(pixbuf), width, alpha,
             reinterpret_cast<std::uint32_t*>(rows + static_cast<std::ptrdiff_t>(y) *
                                                         cairo_image_surface_get_stride(surface)));
  cairo_surface_mark_dirty(surface);
  return surface;
}

/// Parts of light of the 256 numbers of a channel. Source: IEC 61966-2-1:1999 (from memory; universal).
const std::array<double, 256>& light_of_channel() {
  static const std::array<double, 256> table = [] {
    std::array<double, 256> light{};
    for (std::size_t i = 0; i < light.size(); ++i) {
      const double v = static_cast<double>(i) / 255;
      light[i] = v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    }
    return light;
  }();
  return table;
}

double channel_of_light(double light) {
  return light <= 0.0031308 ? light * 12.92 : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
}

}  // namespace

DecodedPicture::DecodedPicture(cairo_surface_t* surface, bool turned, bool scaled)
    : surface_(surface, cairo_surface_destroy), turned_(turned), scaled_(scaled) {}

int DecodedPicture::width_px() const { return cairo_image_surface_get_width(surface()); }
int DecodedPicture::height_px() const { return cairo_image_surface_get_height(surface()); }

bool DecodedPicture::has_transparency() const {
  if (cairo_image_surface_get_format(surface()) != CAIRO_FORMAT_ARGB32) return false;
  const unsigned char* rows = cairo_image_surface_get_data(surface());
  for (int y = 0; y < height_px(); ++y, rows += cairo_image_surface_get_stride(surface())) {
    const auto* pixels = reinterpret_cast<const std::uint32_t*>(rows);
    if (std::any_of(pixels, pixels + width_px(), [](std::uint32_t pixel) { return pixel >> 24 != 255; })) return true;
  }
  return false;
}

Ink DecodedPicture::mean_colour(const PictureSpot& spot, double radius_px) const {
  const double x = std::clamp(spot.x_px, 0.5, width_px() - 0.5), y = std::clamp(spot.y_px, 0.5, height_px() - 0.5);
  const double reach = std::clamp(radius_px, 0.0, 1000.0);
  const auto column = [&](double at) { return std::clamp(static_cast<int>(std::floor(at)), 0, width_px() - 1); };
  const auto row = [&](double at) { return std::clamp(static_cast<int>(std::floor(at)), 0, height_px() - 1); };
  const unsigned char* data = cairo_image_surface_get_data(surface());
  const int stride = cairo_image_surface_get_stride(surface());
  const bool alpha = cairo_image_surface_get_format(surface()) == CAIRO_FORMAT_ARGB32;
  double red = 0, green = 0, blue = 0, count = 0;
  for (int py = row(y - reach); py <= row(y + reach); ++py)
    for (int px = column(x - reach); px <= column(x + reach); ++px) {
      const bool nearest = px == column(x) && py == row(y);
      if (!nearest && std::hypot(px + 0.5 - x, py + 0.5 - y) > reach) continue;
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, data + static_cast<std::ptrdiff_t>(py) * stride + px * 4, sizeof pixel);
      const std::uint32_t white = alpha ? 255 - (pixel >> 24) : 0;
      const auto light = [&](unsigned shift) {
        return light_of_channel()[std::min<std::uint32_t>((pixel >> shift & 0xFF) + white, 255)];
      };
      red += light(16), green += light(8), blue += light(0), ++count;
    }
  return {channel_of_light(red / count), channel_of_light(green / count), channel_of_light(blue / count), 1};
}

Result<DecodedPicture> decode_picture(std::string_view bytes, int longest_px) {
  if (bytes.empty()) return Decoded::bad("This picture cannot be read: it is empty.");
  Sizing sizing{longest_px};
  const Loader loader(gdk_pixbuf_loader_new());
  g_signal_connect(loader.get(), "size-prepared", G_CALLBACK(prepare_size), &sizing);
  GError* error = feed(loader.get(), bytes, sizing);
  // A loader must be closed; what it says then counts only where it was content so far.
  GError* at_end = nullptr;
  gdk_pixbuf_loader_close(loader.get(), &at_end);
  if (error == nullptr) std::swap(error, at_end);
  g_clear_error(&at_end);
  GdkPixbuf* const read = gdk_pixbuf_loader_get_pixbuf(loader.get());
  if (error != nullptr || read == nullptr || sizing.too_large()) return Decoded::bad(sentence_about(error, sizing));
  const char* orientation = gdk_pixbuf_get_option(read, "orientation");
  const bool turned = orientation != nullptr && std::strcmp(orientation, "1") != 0;
  const Pixbuf upright(gdk_pixbuf_apply_embedded_orientation(read));
  const bool scaled = longest_px > 0 && std::max(sizing.width, sizing.height) > longest_px;
  DecodedPicture decoded(surface_of(upright ? upright.get() : read), turned, scaled);
  if (cairo_surface_status(decoded.surface()) != CAIRO_STATUS_SUCCESS)
    return Decoded::bad("This picture cannot be read: there is not enough memory for it.");
  return Decoded::good(std::move(decoded));
}

}  // namespace quadrille
