// The drawing on an elevation sheet: the scene to scale, dimension lines, ground, scale bar.
#pragma once

#include "studio/drawing/display_list.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/model/event.hpp"

namespace quadrille {

/// How a scene is laid into a room on the page.
struct PanelPlan {
  Rect room;
  Units units = Units::metric;
  double scale = 0;
  Placement placement;
  double bar_y = 0;               ///< top of the scale bar [mm]
  std::vector<std::size_t> rows;  ///< row of each piece's width dimension, 0 nearest to the floor
  std::size_t row_count = 0;      ///< of width dimensions, overall and wall rows not counted
};

/// The largest scale of the series at which the scene and its dimensions fit into `room` [mm]. The scene's extent is
/// finite and below 100 km.
PanelPlan plan_panel(const Scene& scene, const Rect& room, Units units);

Marks panel_marks(const Scene& scene, const PanelPlan& plan, bool letters);

}  // namespace quadrille
