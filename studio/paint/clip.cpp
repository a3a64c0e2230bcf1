#include "studio/paint/clip.hpp"

#include <cairo.h>

namespace quadrille {

std::vector<Rect> clip_rectangles(cairo_t* cairo) {
  constexpr int most = 64;  // beyond it, asking each mark costs more than painting it
  std::vector<Rect> rectangles;
  cairo_rectangle_list_t* list = cairo_copy_clip_rectangle_list(cairo);
  if (list->status == CAIRO_STATUS_SUCCESS && list->num_rectangles <= most)
    for (int i = 0; i < list->num_rectangles; ++i) {
      const cairo_rectangle_t& r = list->rectangles[i];
      rectangles.push_back({r.x, r.y, r.width, r.height});
    }
  cairo_rectangle_list_destroy(list);
  return rectangles;
}

}  // namespace quadrille
