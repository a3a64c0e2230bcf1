// A scene as marks: the same for paper and for the screen.
#pragma once

#include <optional>

#include "sdk/units.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/paint/display_list.hpp"

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

enum class PhotoLook {
  none,
  cut,   ///< to the scene's extent, from the floor up
  whole  ///< as far as it reaches
};

struct SceneLook {
  bool letters = false;         ///< slot letters on balloons that are large enough to carry one
  double letter_radius = 1.75;  ///< mm: the smallest ball that carries a letter
  bool figure = true;
  PhotoLook photo = PhotoLook::none;
  std::optional<LengthStyle> measures;  ///< of structures and walkways, in their labels; none: their names alone
  Ink line{0.25, 0.25, 0.28, 1};        ///< floor, outlines, notes
  Ink wall{0.975, 0.972, 0.962, 1};     ///< the wall's face
  Ink figure_ink{0.83, 0.83, 0.85, 1};
};

/// Wall, photo, figure, `behind`, pieces, boxes and structures far to near, floor line from `floor_from` to `floor_to` [mm],
/// labels of boxes, structures and walkways. Structures and their labels stay between the ends of the floor line.
Marks scene_marks(const Scene& scene, const Placement& placement, const SceneLook& look, double floor_from,
                  double floor_to, const Marks& behind = {});

}  // namespace quadrille
