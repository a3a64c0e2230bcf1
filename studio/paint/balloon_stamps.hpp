// A balloon drawn once and stamped many times: as a shared form in PDF and SVG, as a picture in the device's own pixels
// elsewhere.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>

#include "studio/paint/display_list.hpp"
#include "studio/paint/picture_stamps.hpp"

typedef struct _cairo cairo_t;
typedef struct _cairo_surface cairo_surface_t;

namespace quadrille {

/// Keeps the stamps of one document or one window, those of pictures among them, until after that document's surface is
/// finished. Not for several threads at once.
class BalloonStamps {
 public:
  /// Paints the balloon on a context of any scale that is neither turned nor skewed.
  void paint(cairo_t* cairo, const BalloonMark& balloon);
  PictureStamps& pictures() { return pictures_; }

 private:
  struct Key {
    std::uint32_t rgb = 0;
    Finish finish = Finish::matte;
    char letter = 0;
    int letter_hundredths = 0;
    int radius_quarters = 0;  ///< of a pixel; 0 = a form that has no size of its own
    auto operator<=>(const Key&) const = default;
  };
  struct Release {
    bool shown_in_svg = false;
    void operator()(cairo_surface_t* surface) const;
  };
  using Surface = std::unique_ptr<cairo_surface_t, Release>;

  void stamp_form(cairo_t* cairo, const BalloonMark& balloon);
  void stamp_picture(cairo_t* cairo, const BalloonMark& balloon, double pixels_per_unit);

  std::map<Key, Surface> stamps_;
  std::size_t bytes_ = 0;
  PictureStamps pictures_;
};

}  // namespace quadrille
