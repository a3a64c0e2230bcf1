// The drawing on an elevation sheet: the scene to scale, dimension lines, ground, scale bar.
#pragma once

#include <cstddef>

#include "studio/drawing/elevation.hpp"
#include "studio/drawing/scene_marks.hpp"
#include "studio/model/event.hpp"
#include "studio/paint/display_list.hpp"

namespace quadrille {

/// How a scene is laid into a room on the page.
struct PanelPlan {
  Rect room;
  Units units = Units::metric;
  double scale = 0;
  Placement placement;
  double bar_y = 0;              ///< top of the scale bar [mm]
  bool floor_widths = true;      ///< whether widths with plates have lines of their own
  std::size_t width_rows = 0;    ///< of width dimensions beneath the floor
  std::size_t walkway_rows = 0;  ///< of labels between those and the floor
  std::size_t left_columns = 0;  ///< of height dimensions to the left of everything
  double column_width = 8.2;     ///< mm
};

/// The largest scale of the series at which the scene and its dimensions fit into `room` [mm]. The scene's extent is
/// finite and below 100 km.
PanelPlan plan_panel(const Scene& scene, const Rect& room, Units units);

Marks panel_marks(const Scene& scene, const PanelPlan& plan, bool letters);

}  // namespace quadrille
