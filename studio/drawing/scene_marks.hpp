// A scene as marks: the same for paper and for the screen.
#pragma once

#include "studio/drawing/display_list.hpp"
#include "studio/drawing/elevation.hpp"

namespace quadrille {

/// Where metres fall on the page: `origin` is the point x = 0, z = 0; lengths are times `mm_per_metre`.
struct Placement {
  double mm_per_metre = 50;
  Point2 origin;
  Point2 on_page(double x_m, double z_m) const {
    return {origin.x + x_m * mm_per_metre, origin.y - z_m * mm_per_metre};
  }
  double length(double metres) const { return metres * mm_per_metre; }
  Rect rect(const Extent& e) const {
    const Point2 corner = on_page(e.left, e.top);
    return {corner.x, corner.y, length(e.width()), length(e.height())};
  }
};

struct SceneLook {
  bool letters = false;        ///< slot letters on balloons that are large enough to carry one
  double letter_radius = 2.4;  ///< mm: the smallest ball that carries a letter
  bool figure = true;
  Ink line{0.25, 0.25, 0.28, 1};     ///< floor, outlines, notes
  Ink wall{0.975, 0.972, 0.962, 1};  ///< the wall's face
  Ink figure_ink{0.83, 0.83, 0.85, 1};
};

/// Wall, figure, pieces far to near, boxes with their labels, floor line from `floor_from` to `floor_to` [mm].
Marks scene_marks(const Scene& scene, const Placement& placement, const SceneLook& look, double floor_from,
                  double floor_to);

/// "A" for slot 0; after Z it begins anew, since a piece has at most six slots.
char slot_letter(std::uint32_t slot);

}  // namespace quadrille
