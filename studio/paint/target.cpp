#include "studio/paint/target.hpp"

#include <cairo.h>

#include <cmath>

namespace quadrille {

bool is_vector(cairo_t* cairo) {
  switch (cairo_surface_get_type(cairo_get_target(cairo))) {
    case CAIRO_SURFACE_TYPE_PDF:
    case CAIRO_SURFACE_TYPE_SVG:
    case CAIRO_SURFACE_TYPE_PS:
    case CAIRO_SURFACE_TYPE_RECORDING:
      return true;
    default:
      return false;
  }
}

double pixels_per_unit(cairo_t* cairo) {
  double x = 1, y = 0, device_x = 1, device_y = 1;
  cairo_user_to_device_distance(cairo, &x, &y);
  cairo_surface_get_device_scale(cairo_get_target(cairo), &device_x, &device_y);
  return std::hypot(x, y) * device_x;
}

}  // namespace quadrille
