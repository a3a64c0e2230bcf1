// Small pictures made in the test: four plain quarters, as a camera's file would hold them.
#pragma once

#include <doctest/doctest.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

#include <cstddef>
#include <string>

namespace quadrille {

/// Red at the upper left, green at the upper right, blue at the lower left, white at the lower right, as the pixels
/// are stored. `opacity` 0 to 255 of the white quarter; below 255 the picture has an alpha channel.
inline GdkPixbuf* quarters(int width, int height, int opacity = 255) {
  const bool alpha = opacity < 255;
  GdkPixbuf* pixbuf = gdk_pixbuf_new(GDK_COLORSPACE_RGB, alpha, 8, width, height);
  REQUIRE(pixbuf != nullptr);
  constexpr guchar colours[4][3] = {{220, 30, 30}, {20, 170, 40}, {30, 60, 210}, {255, 255, 255}};
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const int quarter = (x * 2 >= width ? 1 : 0) + (y * 2 >= height ? 2 : 0);
      guchar* at = gdk_pixbuf_get_pixels(pixbuf) + static_cast<std::ptrdiff_t>(y) * gdk_pixbuf_get_rowstride(pixbuf) +
                   x * (alpha ? 4 : 3);
      for (int c = 0; c < 3; ++c) at[c] = colours[quarter][c];
      if (alpha) at[3] = static_cast<guchar>(quarter == 3 ? opacity : 255);
    }
  return pixbuf;
}

/// A file of it; `kind` as gdk-pixbuf calls it: "jpeg", "png", "bmp". Takes the pixbuf.
inline std::string file_of(GdkPixbuf* pixbuf, const char* kind) {
  gchar* buffer = nullptr;
  gsize size = 0;
  REQUIRE(gdk_pixbuf_save_to_buffer(pixbuf, &buffer, &size, kind, nullptr, nullptr));
  std::string bytes(buffer, size);
  g_free(buffer);
  g_object_unref(pixbuf);
  return bytes;
}

inline std::string jpeg_of_quarters(int width, int height) { return file_of(quarters(width, height), "jpeg"); }

/// One segment of a JPEG: marker, length, content. Source: ITU-T T.81, B.1.1.4.
inline std::string segment(char marker, const std::string& content) {
  const std::size_t length = content.size() + 2;
  return std::string("\xFF") + marker + static_cast<char>(length >> 8) + static_cast<char>(length & 0xFF) + content;
}

/// The JPEG with an Exif block after its start that says how the camera was held, 1 to 8, and bears a text as cameras
/// note place and owner. Source: CIPA DC-008 (Exif 2.3), 4.5 and 4.6.4: a TIFF head, little endian, with one directory:
/// ImageDescription (0x010E, text) and Orientation (0x0112, a short).
inline std::string held(const std::string& jpeg, int orientation, const std::string& text = "taken at the mill") {
  const auto two = [](unsigned n) {
    return std::string{static_cast<char>(n & 0xFF), static_cast<char>(n >> 8 & 0xFF)};
  };
  const auto four = [&](unsigned n) { return two(n & 0xFFFF) + two(n >> 16); };
  const unsigned length = static_cast<unsigned>(text.size()) + 1, after_directory = 8 + 2 + 2 * 12 + 4;
  std::string tiff = "II" + two(42) + four(8) + two(2);
  tiff += two(0x010E) + two(2) + four(length) + four(after_directory);
  tiff += two(0x0112) + two(3) + four(1) + two(static_cast<unsigned>(orientation)) + two(0);
  tiff += four(0) + text + '\0';
  return jpeg.substr(0, 2) + segment('\xE1', std::string("Exif\0\0", 6) + tiff) + jpeg.substr(2);
}

}  // namespace quadrille
