// Which measures an elevation sheet states, and where their lines stand.
#pragma once

#include <cstddef>
#include <vector>

#include "studio/drawing/dimension.hpp"
#include "studio/drawing/elevation.hpp"
#include "studio/paper/elevation_panel.hpp"

namespace quadrille {

/// Whether what stands beside a piece is to be at its left: on the side that faces away from the middle.
inline bool faces_left(const Scene& scene, const Extent& e) {
  return scene.pieces_extent && e.left + e.right < scene.pieces_extent->left + scene.pieces_extent->right;
}

/// A width to be stated beneath the floor.
struct WidthLine {
  double from_m = 0, to_m = 0;
  DimensionLabel label;
  std::size_t row = 0;  ///< 0 nearest to the floor
  bool leftwards = false;
};

/// Pieces that are as wide as each other, or lie over each other, share a line with all their numbers. Lines in rows, so
/// that neither lines nor figures of one row meet: clear openings nearest to the floor, then pieces,
/// then (if `plan.floor_widths`) plates that stand out, all pieces together, and the wall. Where a kind would need more
/// than its most rows the rest is left out; the key has every measure. `rows`: how many there are.
struct WidthLines {
  std::vector<WidthLine> lines;
  std::size_t rows = 0;
};
WidthLines width_lines(const Scene& scene, const PanelPlan& plan);

/// Heights: of the wall at the left; of each piece, or of several that are as high as each other or lie over each other,
/// beside one of them, or in a column at the left where there is no room, or not at all where a line says the same
/// already, each with the numbers of its pieces; clear heights inside openings; how high what hangs begins. `taken`: boxes that figures must
/// keep off.
struct HeightLines {
  std::vector<HeightLine> behind;  ///< whose extension lines pass behind the pieces
  std::vector<HeightLine> beside;
  bool complete = true;  ///< false where a height that no other line states found no room
};
HeightLines height_lines(const Scene& scene, const PanelPlan& plan, std::vector<Rect> taken);

}  // namespace quadrille
