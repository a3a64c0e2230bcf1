#include "studio/paint/import_picture.hpp"

#include <cairo.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

#include <algorithm>
#include <cstdint>
#include <memory>
#include <string>
#include <utility>

#include "studio/paint/decoded_picture.hpp"
#include "studio/paint/jpeg_parts.hpp"

namespace quadrille {
namespace {

using Pictures = Result<StoredPicture>;

/// A photo that somebody saved as PNG is larger than this; a drawing or a screenshot is smaller.
constexpr std::size_t small_png = 600'000;
/// Larger than it needs to be: such a JPEG is written anew.
constexpr std::size_t large_jpeg = 2'500'000;

struct Unref {
  void operator()(gpointer object) const { g_object_unref(object); }
};

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

/// Empty where it fails.
std::string as_png(const DecodedPicture& decoded) {
  std::string bytes;
  if (cairo_surface_write_to_png_stream(decoded.surface(), append, &bytes) != CAIRO_STATUS_SUCCESS) return {};
  return bytes;
}

/// Of a picture without transparency. Empty where it fails.
std::string as_jpeg(const DecodedPicture& decoded) {
  const int width = decoded.width_px(), height = decoded.height_px();
  const std::unique_ptr<GdkPixbuf, Unref> pixbuf(gdk_pixbuf_new(GDK_COLORSPACE_RGB, FALSE, 8, width, height));
  if (!pixbuf) return {};
  const unsigned char* rows = cairo_image_surface_get_data(decoded.surface());
  for (int y = 0; y < height; ++y, rows += cairo_image_surface_get_stride(decoded.surface())) {
    const auto* from = reinterpret_cast<const std::uint32_t*>(rows);
    guchar* to =
        gdk_pixbuf_get_pixels(pixbuf.get()) + static_cast<std::ptrdiff_t>(y) * gdk_pixbuf_get_rowstride(pixbuf.get());
    for (int x = 0; x < width; ++x)
      for (const unsigned shift : {16u, 8u, 0u}) *to++ = static_cast<guchar>(from[x] >> shift & 0xFF);
  }
  gchar* buffer = nullptr;
  gsize size = 0;
  const std::string quality = std::to_string(imported_quality);
  if (!gdk_pixbuf_save_to_buffer(pixbuf.get(), &buffer, &size, "jpeg", nullptr, "quality", quality.c_str(), nullptr))
    return {};
  std::string bytes(buffer, size);
  g_free(buffer);
  return bytes;
}

/// A JPEG whose pixels can stay as they are.
bool may_stay(std::string_view bytes, const DecodedPicture& decoded) {
  const int channels = jpeg_channels(bytes);
  return !decoded.was_scaled() && !decoded.was_turned() && (channels == 1 || channels == 3) &&
         bytes.size() <= large_jpeg;
}

}  // namespace

bool looks_like_picture(std::string_view bytes) {
  using namespace std::string_view_literals;
  for (const std::string_view head : {"\xFF\xD8\xFF"sv, "\x89PNG\r\n"sv, "GIF8"sv, "BM"sv, "II*\0"sv, "MM\0*"sv})
    if (bytes.starts_with(head)) return true;
  // Of containers the kind stands behind a length.
  return (bytes.starts_with("RIFF") && bytes.substr(std::min<std::size_t>(8, bytes.size())).starts_with("WEBP")) ||
         bytes.substr(std::min<std::size_t>(4, bytes.size())).starts_with("ftyp");
}

Result<StoredPicture> import_picture(std::string_view bytes) {
  auto decoded = decode_picture(bytes, imported_side_px);
  if (!decoded) return Pictures::bad(std::move(decoded.error));
  StoredPicture picture;
  picture.width_px = decoded->width_px(), picture.height_px = decoded->height_px();
  if (may_stay(bytes, *decoded)) {
    picture.bytes = without_description(bytes);
    return Pictures::good(std::move(picture));
  }
  const bool was_png = bytes.starts_with("\x89PNG"), transparent = decoded->has_transparency();
  if (was_png || transparent) {
    picture.media = PictureMedia::png;
    picture.bytes = as_png(*decoded);
    if (!picture.bytes.empty() && (transparent || picture.bytes.size() <= small_png))
      return Pictures::good(std::move(picture));
  }
  picture.media = PictureMedia::jpeg;
  picture.bytes = transparent ? std::string() : as_jpeg(*decoded);
  if (picture.bytes.empty()) return Pictures::bad("This picture cannot be kept: there is not enough memory for it.");
  return Pictures::good(std::move(picture));
}

}  // namespace quadrille
