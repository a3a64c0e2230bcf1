// Pixels and metres of the elevation.
#include "studio/drawing/view.hpp"

#include <algorithm>
#include <cmath>

#include "studio/paint/painter.hpp"

namespace quadrille {
namespace {

constexpr double pixels_per_millimetre = 96 / 25.4;  // of line widths and letters on a screen (CSS reference pixel)

double bounded(double pixels_per_metre) {
  if (!(pixels_per_metre >= least_pixels_per_metre)) return least_pixels_per_metre;
  return std::min(pixels_per_metre, most_pixels_per_metre);
}

double distance_to_segment(Point2 p, Point2 a, Point2 b) {
  const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  const double t = square > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/// The piece whose item lies within `reach` of a point; nothing where it is not hit.
struct Hit {
  const Scene& scene;
  Point2 at;
  double reach;
  using Index = std::optional<std::size_t>;
  Index operator()(const SceneBalloon& b) const {
    return std::hypot(at.x - b.x_m, at.y - b.z_m) <= b.radius_m ? Index(b.piece) : Index();
  }
  Index operator()(const SceneRod& rod) const {
    for (std::size_t i = 1; i < rod.points_m.size(); ++i)
      if (distance_to_segment(at, rod.points_m[i - 1], rod.points_m[i]) <= rod.width_m / 2 + reach) return rod.piece;
    return {};
  }
  Index operator()(const ScenePlate& plate) const {
    const bool hit = std::abs(at.x - plate.x_m) <= plate.width_m / 2 + reach && std::abs(at.y - plate.z_m) <= reach;
    return hit ? Index(plate.piece) : Index();
  }
  Index operator()(const SceneBox& box) const {
    const Extent& e = scene.pieces[box.piece].extent;
    const bool hit = at.x >= e.left && at.x <= e.right && at.y >= e.floor && at.y <= e.top;
    return hit ? Index(box.piece) : Index();
  }
  Index operator()(const SceneStanding&) const { return {}; }
};

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
  const double mm = 1 / pixels_per_millimetre;
  const Placement placement{view.pixels_per_metre * mm, {view.origin_x_px * mm, view.origin_y_px * mm}};
  paint_marks(cairo, scene_marks(scene, placement, look, 0, width_px * mm), stamps, pixels_per_millimetre);
}

std::optional<std::string> piece_at(const Scene& scene, const View& view, double x_px, double y_px, double reach_px) {
  const Point2 p = view.to_metres(x_px, y_px);
  const double reach = reach_px / view.pixels_per_metre;
  const Hit hit{scene, p, reach};
  for (std::size_t i = scene.items.size(); i-- > 0;)
    if (const auto piece = std::visit(hit, scene.items[i].shape)) return scene.pieces[*piece].id;
  return std::nullopt;
}

}  // namespace quadrille
