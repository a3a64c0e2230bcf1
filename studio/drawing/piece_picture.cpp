#include "studio/drawing/piece_picture.hpp"

#include <algorithm>

#include "studio/drawing/scene_marks.hpp"

namespace quadrille {

Page piece_picture(const PlacedPiece& piece, const std::shared_ptr<const BuiltPiece>& built,
                   std::span<const Palette> palettes, double width_mm, double height_mm) {
  PlacedPiece alone = piece;
  alone.x_m = alone.y_m = 0;
  alone.hidden = false;
  alone.lines.clear();  // they end at what is not there
  Area area;
  area.pieces.emplace_back(alone);
  BuiltEvent builds;
  if (built) builds[alone.id] = built;
  const Scene scene = scene_of(area, builds, palettes);
  Page page;
  page.width = width_mm, page.height = height_mm, page.margin = 0;
  page.name = piece.name;
  constexpr double border = 0.06;  // of either side, so that nothing touches the edge
  const Extent around = scene.pieces.empty() ? Extent{-0.5, 0.5, 0, 1} : scene.pieces.front().standing();
  const double room_across = width_mm * (1 - 2 * border), room_up = height_mm * (1 - 2 * border);
  Placement placement;
  placement.mm_per_metre = std::min(room_across / std::max(around.width(), 0.1), room_up / std::max(around.top, 0.1));
  placement.origin = {width_mm / 2 - placement.length((around.left + around.right) / 2), height_mm * (1 - border)};
  SceneLook look;
  look.figure = false;
  page.marks = scene_marks(scene, placement, look, 0, width_mm);
  return page;
}

}  // namespace quadrille
