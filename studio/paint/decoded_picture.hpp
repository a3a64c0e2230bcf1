// A picture's pixels, upright as its camera says it was held.
#pragma once

#include <memory>
#include <string_view>

#include "sdk/result.hpp"
#include "studio/paint/display_list.hpp"

typedef struct _cairo_surface cairo_surface_t;

namespace quadrille {

/// Most pixels of a picture that is read at all; more are refused before room is made for them.
inline constexpr double most_pixels = 120e6;

/// A picture as pixels. Cheap to copy; the pixels are shared and never change.
class DecodedPicture {
 public:
  /// Takes the surface, an image of RGB24 or ARGB32.
  explicit DecodedPicture(cairo_surface_t* surface, bool turned = false, bool scaled = false);

  int width_px() const;
  int height_px() const;
  cairo_surface_t* surface() const { return surface_.get(); }
  /// True where some pixel is not opaque.
  bool has_transparency() const;
  /// True where the pixels stand another way in the file, which says how they are to be turned.
  bool was_turned() const { return turned_; }
  /// True where there are fewer of them than in the file.
  bool was_scaled() const { return scaled_; }
  /// The mean colour of the pixels whose middle is within `radius_px` of the spot, at least the nearest one; a spot
  /// beyond the picture counts as the nearest on its edge. The mean is of light rather than of numbers (sRGB is not
  /// linear), so that a fine pattern has the colour it has from afar. What is not opaque is seen before white.
  Ink mean_colour(const PictureSpot& spot, double radius_px) const;

 private:
  std::shared_ptr<cairo_surface_t> surface_;
  bool turned_ = false, scaled_ = false;
};

/// Reads a picture of any kind that this machine knows (JPEG and PNG always), the first frame of several. With
/// `longest_px` above 0, one whose longer side has more pixels is made smaller while it is read. Errors: not a picture
/// of a known kind, damaged, or of more than most_pixels.
Result<DecodedPicture> decode_picture(std::string_view bytes, int longest_px = 0);

}  // namespace quadrille
