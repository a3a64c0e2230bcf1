#include "studio/drawing/line_scene.hpp"

#include <algorithm>
#include <cmath>

#include "studio/model/securing.hpp"

namespace quadrille {
namespace {

constexpr double most_beyond_m = 3;  // so that one far anchor does not make the drawing small
constexpr double in_plane_m = 0.05;  // of depth, over which a line is drawn as one that leaves the plane

/// The end of the line, or where it meets `limit` on the way there.
Point2 end_within(Point2 from, Point2 to, double least_x, double most_x, bool& cut) {
  const double x = std::clamp(to.x, least_x, most_x);
  cut = x != to.x;
  if (!cut) return to;
  const double share = (x - from.x) / (to.x - from.x);
  return {x, from.y + share * (to.y - from.y)};
}

Extent around_line(const Extent& e, const SceneLine& line) {
  const auto [left, right] = std::minmax(line.from_m.x, line.to_m.x);
  const auto [low, high] = std::minmax(line.from_m.y, line.to_m.y);
  return around(e, {left, right, std::min(0.0, low), high});
}

}  // namespace

void add_lines(const Area& area, const BuiltEvent& built, Scene& scene) {
  const double least = scene.extent.left - most_beyond_m, most = scene.extent.right + most_beyond_m;
  std::size_t index = 0;
  for (const auto& placed : area.pieces) {
    if (placed->hidden) continue;
    const std::size_t piece = index++;
    const auto found = built.find(placed->id);
    if (scene.pieces[piece].shown != Shown::built || found == built.end()) continue;
    for (const SecuringLine& line : placed->lines) {
      const auto run = run_of(line, *placed, found->second->piece, area);
      if (!run || !run->from.allFinite() || !run->to.allFinite()) continue;
      SceneLine shown;
      shown.from_m = {placed->x_m + run->from.x(), run->from.z()};
      if (!(shown.from_m.x >= least && shown.from_m.x <= most)) continue;
      shown.to_m = end_within(shown.from_m, {placed->x_m + run->to.x(), run->to.z()}, least, most, shown.cut_off);
      shown.anchor = line.anchor, shown.piece = piece;
      shown.in_plane = std::abs(run->to.y() - run->from.y()) <= in_plane_m;
      scene.extent = around_line(scene.extent, shown);
      scene.items.push_back({placed->y_m + (run->from.y() + run->to.y()) / 2, shown});
    }
  }
}

}  // namespace quadrille
