// Which measures an elevation sheet states, and where their lines stand.
#pragma once

#include <cstddef>
#include <vector>

#include "studio/drawing/dimension.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/drawing/elevation_panel.hpp"

namespace quadrille {

/// A width to be stated beneath the floor.
struct WidthLine {
  double from_m = 0, to_m = 0;
  DimensionLabel label;
  std::size_t row = 0;  ///< 0 nearest to the floor
  bool leftwards = false;
};

/// Lines in rows, so that neither lines nor figures of one row meet: clear openings nearest to the floor, then pieces,
/// then (if `plan.floor_widths`) plates that stand out, all pieces together, and the wall. Where a kind would need more
/// than its most rows the rest is left out; the key has every measure. `rows`: how many there are.
struct WidthLines {
  std::vector<WidthLine> lines;
  std::size_t rows = 0;
};
WidthLines width_lines(const Scene& scene, const PanelPlan& plan);

/// Heights: of the wall at the left; of each piece beside it, or in a column at the left where it has no room beside
/// it, or not at all where a line says the same already; clear heights inside openings. `taken`: boxes that figures must
/// keep off.
struct HeightLines {
  std::vector<HeightLine> behind;  ///< whose extension lines pass behind the pieces
  std::vector<HeightLine> beside;
  bool complete = true;  ///< false where a height that no other line states found no room
};
HeightLines height_lines(const Scene& scene, const PanelPlan& plan, std::vector<Rect> taken);

}  // namespace quadrille
