// Pictures decoded once and painted many times: as they are kept in PDF and SVG, scaled on the screen.
#pragma once

#include <cstddef>
#include <vector>

#include "studio/paint/decoded_picture.hpp"
#include "studio/paint/display_list.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// Keeps the pictures that were painted last. Not for several threads at once.
class PictureStamps {
 public:
  /// Paints the mark on a context that is neither turned nor skewed.
  void paint(cairo_t* cairo, const PictureMark& mark);

 private:
  /// The picture at full size, then at half of it, at a quarter…, as far as they were wanted; none where it cannot be
  /// read.
  struct Held {
    Shared<StoredPicture> picture;
    std::vector<DecodedPicture> levels;
  };
  Held& held(const Shared<StoredPicture>& picture);

  std::vector<Held> held_;  ///< the one painted last at the end
};

}  // namespace quadrille
