// Pixels and metres of the elevation.
#include "studio/drawing/view.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "studio/paint/clip.hpp"
#include "studio/paint/painter.hpp"

namespace quadrille {
namespace {

double bounded(double pixels_per_metre) {
  if (!(pixels_per_metre >= least_pixels_per_metre)) return least_pixels_per_metre;
  return std::min(pixels_per_metre, most_pixels_per_metre);
}

/// What may be painted of the elevation; empty: any of it.
std::vector<Extent> clipped_to(cairo_t* cairo, const View& view) {
  std::vector<Extent> within;
  for (const Rect& r : clip_rectangles(cairo)) {
    const Point2 corner = view.to_metres(r.x, r.y), end = view.to_metres(r.right(), r.bottom());
    within.push_back({corner.x, end.x, end.y, corner.y});
  }
  return within;
}

/// True where the ball or its neck may show in the rectangle. Twice its radius leaves room for outlines.
bool reaches_into(const SceneBalloon& b, const Extent& e) {
  const double reach = 2 * b.radius_m + std::abs(b.neck_x_m - b.x_m) + std::abs(b.neck_z_m - b.z_m);
  return b.x_m + reach >= e.left && b.x_m - reach <= e.right && b.z_m + reach >= e.floor && b.z_m - reach <= e.top;
}

/// The scene without the balloons that reach into none of the rectangles.
Scene part_of(const Scene& scene, const std::vector<Extent>& within) {
  Scene part{scene.pieces,        {},
             scene.backdrop,      scene.wall,
             scene.pieces_extent, scene.structures,
             scene.walkways,      scene.far_off,
             scene.figure_x_m,    scene.extent};
  for (const SceneItem& item : scene.items) {
    const auto* balloon = std::get_if<SceneBalloon>(&item.shape);
    if (balloon == nullptr || std::ranges::any_of(within, [&](const Extent& e) { return reaches_into(*balloon, e); }))
      part.items.push_back(item);
  }
  return part;
}

}  // namespace

View fit_view(const Scene& scene, double width_px, double height_px, double border_px) {
  const double width = std::max(width_px - 2 * border_px, 1.0), height = std::max(height_px - 2 * border_px, 1.0);
  const Extent& e = scene.extent;
  View view;
  view.pixels_per_metre = bounded(std::min(width / std::max(e.width(), 0.1), height / std::max(e.height(), 0.1)));
  view.origin_x_px = width_px / 2 - (e.left + e.right) / 2 * view.pixels_per_metre;
  view.origin_y_px = height_px / 2 + (e.floor + e.top) / 2 * view.pixels_per_metre;
  return view;
}

View zoomed(const View& view, double factor, double x_px, double y_px) {
  const Point2 fixed = view.to_metres(x_px, y_px);
  View next;
  next.pixels_per_metre = bounded(view.pixels_per_metre * factor);
  next.origin_x_px = x_px - fixed.x * next.pixels_per_metre;
  next.origin_y_px = y_px + fixed.y * next.pixels_per_metre;
  return next;
}

View panned(View view, double right_px, double down_px) {
  view.origin_x_px += right_px, view.origin_y_px += down_px;
  return view;
}

void paint_scene(cairo_t* cairo, const Scene& scene, const View& view, double width_px, const SceneLook& look,
                 BalloonStamps& stamps) {
  const std::vector<Extent> within = clipped_to(cairo, view);
  const Scene part = within.empty() ? Scene() : part_of(scene, within);
  const Marks marks =
      scene_marks(within.empty() ? scene : part, placement_of(view), look, 0, width_px / screen_pixels_per_mm);
  paint_marks(cairo, marks, stamps, screen_pixels_per_mm);
}

}  // namespace quadrille
