// The elevation on a screen: zoom, pan, fit and painting.
#pragma once

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/paint/balloon_stamps.hpp"

typedef struct _cairo cairo_t;

namespace quadrille {

/// Maps metres of the elevation to pixels of a drawing surface, y down.
struct View {
  double pixels_per_metre = 100;
  double origin_x_px = 0, origin_y_px = 0;  ///< where the point x = 0, z = 0 falls
  Point2 to_pixels(double x_m, double z_m) const {
    return {origin_x_px + x_m * pixels_per_metre, origin_y_px - z_m * pixels_per_metre};
  }
  Point2 to_metres(double x_px, double y_px) const {
    return {(x_px - origin_x_px) / pixels_per_metre, (origin_y_px - y_px) / pixels_per_metre};
  }
  bool operator==(const View&) const = default;
};

/// Pixels of line widths and letters on a screen (the reference pixel of CSS).
inline constexpr double screen_pixels_per_mm = 96 / 25.4;

/// The same view in millimetres of the screen.
inline Placement placement_of(const View& view) {
  const double mm = 1 / screen_pixels_per_mm;
  return {view.pixels_per_metre * mm, {view.origin_x_px * mm, view.origin_y_px * mm}};
}

inline constexpr double least_pixels_per_metre = 2, most_pixels_per_metre = 5000;

/// The view that shows the whole scene in width × height pixels, `border_px` left free on each side.
View fit_view(const Scene& scene, double width_px, double height_px, double border_px = 24);

/// The view `factor` times as near, the point under (x, y) staying where it is. Bounded by the limits above.
View zoomed(const View& view, double factor, double x_px, double y_px);

View panned(View view, double right_px, double down_px);

/// Paints the scene on a context whose unit is the pixel of `view`; its matrix is kept, the background is left as it
/// is. `width_px` is how far the floor line runs. Balloons outside the context's clip cost next to nothing.
void paint_scene(cairo_t* cairo, const Scene& scene, const View& view, double width_px, const SceneLook& look,
                 BalloonStamps& stamps);

}  // namespace quadrille
