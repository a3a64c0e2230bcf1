// Pictures as numbers, and the outside programs that make them from our documents: poppler's and librsvg's, which share
// no code with the painter.
#pragma once

#include <cairo.h>
#include <doctest/doctest.h>
#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

namespace quadrille {

struct Rgb {
  double red = 0, green = 0, blue = 0;  // 0 to 255
};

struct Picture {
  int width = 0, height = 0;
  std::vector<Rgb> pixels;
  const Rgb& at(int x, int y) const {
    return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
  }
};

/// Reads an image surface whose ground is opaque.
inline Picture picture_of(cairo_surface_t* surface) {
  cairo_surface_flush(surface);
  Picture picture{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
  const unsigned char* data = cairo_image_surface_get_data(surface);
  for (int y = 0; y < picture.height; ++y) {
    const auto* row = reinterpret_cast<const std::uint32_t*>(data + y * cairo_image_surface_get_stride(surface));
    for (int x = 0; x < picture.width; ++x)
      picture.pixels.push_back({static_cast<double>(row[x] >> 16 & 255u), static_cast<double>(row[x] >> 8 & 255u),
                                static_cast<double>(row[x] & 255u)});
  }
  return picture;
}

/// Paints on a white surface of width × height pixels.
inline Picture painted(int width, int height, const std::function<void(cairo_t*)>& paint, double ground = 1) {
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, width, height);
  cairo_t* cairo = cairo_create(surface);
  cairo_set_source_rgb(cairo, ground, ground, ground);
  cairo_paint(cairo);
  paint(cairo);
  cairo_destroy(cairo);
  Picture picture = picture_of(surface);
  cairo_surface_destroy(surface);
  return picture;
}

/// A folder that goes when the test ends.
class Folder {
 public:
  Folder() : path_(std::filesystem::temp_directory_path() / ("quadrille-drawing-" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(path_);
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string write(const std::string& name, const std::string& bytes) const {
    std::ofstream(path_ / name, std::ios::binary) << bytes;
    return (path_ / name).string();
  }
  std::string path(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

/// What a command prints; the test fails where the command does.
inline std::string output_of(const std::string& command) {
  FILE* pipe = ::popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string text;
  std::array<char, 4096> buffer{};
  while (const std::size_t count = std::fread(buffer.data(), 1, buffer.size(), pipe)) text.append(buffer.data(), count);
  REQUIRE_MESSAGE(::pclose(pipe) == 0, command);
  return text;
}

inline Picture read_png(const std::string& path) {
  cairo_surface_t* read = cairo_image_surface_create_from_png(path.c_str());
  REQUIRE(cairo_surface_status(read) == CAIRO_STATUS_SUCCESS);
  Picture picture = painted(cairo_image_surface_get_width(read), cairo_image_surface_get_height(read), [&](cairo_t* c) {
    cairo_set_source_surface(c, read, 0, 0);
    cairo_paint(c);
  });
  cairo_surface_destroy(read);
  return picture;
}

inline Picture png_picture(const Folder& folder, const std::string& bytes) {
  return read_png(folder.write("own.png", bytes));
}

/// First page of a PDF by poppler.
inline Picture pdf_picture(const Folder& folder, const std::string& bytes, int dpi) {
  const std::string pdf = folder.write("page.pdf", bytes), out = folder.path("page");
  output_of("pdftoppm -r " + std::to_string(dpi) + " -png -singlefile '" + pdf + "' '" + out + "'");
  return read_png(out + ".png");
}

/// An SVG by librsvg.
inline Picture svg_picture(const Folder& folder, const std::string& bytes, int dpi) {
  const std::string svg = folder.write("page.svg", bytes), out = folder.path("svg.png"), d = std::to_string(dpi);
  output_of("rsvg-convert -d " + d + " -p " + d + " '" + svg + "' -o '" + out + "'");
  return read_png(out);
}

/// Text of a PDF by poppler, as it stands on the page.
inline std::string pdf_text(const Folder& folder, const std::string& bytes) {
  return output_of("pdftotext -layout '" + folder.write("text.pdf", bytes) + "' -");
}

/// Mean difference per channel over the part that both cover, 0 to 255.
inline double mean_difference(const Picture& a, const Picture& b) {
  const int width = std::min(a.width, b.width), height = std::min(a.height, b.height);
  double sum = 0;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const Rgb &p = a.at(x, y), &q = b.at(x, y);
      sum += std::abs(p.red - q.red) + std::abs(p.green - q.green) + std::abs(p.blue - q.blue);
    }
  return sum / (3.0 * width * height);
}

/// Means of blocks of 4 × 4 pixels: what is left when rasterisers differ along edges only.
inline Picture shrunk(const Picture& picture) {
  Picture small{picture.width / 4, picture.height / 4, {}};
  for (int y = 0; y < small.height; ++y)
    for (int x = 0; x < small.width; ++x) {
      Rgb sum;
      for (int i = 0; i < 16; ++i) {
        const Rgb& p = picture.at(4 * x + i % 4, 4 * y + i / 4);
        sum = {sum.red + p.red / 16, sum.green + p.green / 16, sum.blue + p.blue / 16};
      }
      small.pixels.push_back(sum);
    }
  return small;
}

struct Centroid {
  double x = 0, y = 0, weight = 0;
};

/// Centre and size of what is red, however strongly: of the balloons of a dark red, also where a clear one is before
/// them.
inline Centroid red_centroid(const Picture& picture) {
  Centroid c;
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const Rgb& p = picture.at(x, y);
      if (p.red - std::max(p.green, p.blue) < 20) continue;
      c.x += x, c.y += y, c.weight += 1;
    }
  REQUIRE(c.weight > 0);
  c.x /= c.weight, c.y /= c.weight;
  return c;
}

}  // namespace quadrille
