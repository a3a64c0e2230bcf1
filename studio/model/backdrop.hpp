// The photo of a place, behind its elevation: the picture itself, and where and how large it lies in the area.
#pragma once

#include <cstddef>
#include <string>

#include "studio/model/preserved.hpp"
#include "studio/model/shared.hpp"

namespace quadrille {

enum class PictureMedia { jpeg, png };

/// A picture as it is kept in the event's file.
struct StoredPicture {
  std::string bytes;  ///< a whole JPEG or PNG file
  PictureMedia media = PictureMedia::jpeg;
  int width_px = 1, height_px = 1;  ///< as it is shown, upright
  bool operator==(const StoredPicture&) const = default;
};

/// Most bytes of a picture in an event.
inline constexpr std::size_t most_picture_bytes = 32u << 20;
/// Longest side of a picture in an event [pixels].
inline constexpr int most_picture_side_px = 16'000;

/// A place in a picture [pixels], from its upper left corner to the right and down.
struct PictureSpot {
  double x_px = 0, y_px = 0;
  bool operator==(const PictureSpot&) const = default;
};

/// A place in an area's elevation [m]: along the front line, and over the floor.
struct ElevationSpot {
  double x_m = 0, z_m = 0;
  bool operator==(const ElevationSpot&) const = default;
};

/// A picture behind everything in an area. Copies share the picture.
struct Backdrop {
  Shared<StoredPicture> picture;
  double x_m = 0, z_m = 0;          ///< its lower left corner, from the area's left edge and over the floor
  double metres_per_pixel = 0.005;  ///< above 0
  double fade = 0.35;               ///< towards white paper: 0 as it was taken, 1 not seen at all
  bool locked = false, hidden = false;
  Preserved preserved;

  double width_m() const { return picture->width_px * metres_per_pixel; }
  double height_m() const { return picture->height_px * metres_per_pixel; }
  ElevationSpot in_area(const PictureSpot& spot) const {
    return {x_m + spot.x_px * metres_per_pixel, z_m + (picture->height_px - spot.y_px) * metres_per_pixel};
  }
  PictureSpot in_picture(const ElevationSpot& spot) const {
    return {(spot.x_m - x_m) / metres_per_pixel, picture->height_px - (spot.z_m - z_m) / metres_per_pixel};
  }
  bool operator==(const Backdrop&) const = default;
};

}  // namespace quadrille
