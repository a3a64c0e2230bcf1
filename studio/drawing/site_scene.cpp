// Structures and walkways into a scene.
#include "studio/drawing/site_scene.hpp"

#include <algorithm>
#include <cmath>

namespace quadrille {
namespace {

constexpr double most_aside_m = 2, above_m = 1;

// Half of how wide each kind is drawn, and how high where its height is not known. By eye, no source.
double half_width_of(StructureKind kind, double height_m) {
  switch (kind) {
    case StructureKind::post:
      return 0.06;
    case StructureKind::tree:
      return std::clamp(height_m * 0.2, 0.3, 1.0);
    case StructureKind::wall:
    case StructureKind::railing:
    case StructureKind::beam:
      return 0.6;
    case StructureKind::vehicle:
      return 1.0;
    case StructureKind::table:
      return 0.9;
    case StructureKind::other:
      break;
  }
  return 0.2;
}

constexpr double unknown_height_m = 0.75;

/// How far from `left` to `right` lies beyond the extent: to the right positive, to the left negative, 0 = not.
double beyond(const Extent& extent, double left, double right) {
  if (left > extent.right) return left - extent.right;
  return right < extent.left ? right - extent.left : 0;
}

}  // namespace

void add_site(const Area& area, Scene& scene) {
  const Extent drawn = scene.extent;
  for (const Structure& s : area.structures) {
    if (!std::isfinite(s.x_m) || !std::isfinite(s.y_m) || !std::isfinite(s.height_m)) continue;
    SceneStructure shown{s.name, s.kind, s.x_m, 0, std::max(s.height_m, 0.0), 0};
    const double wanted = shown.height_m > 0 ? shown.height_m : unknown_height_m;
    shown.drawn_height_m = std::min(wanted, drawn.top + above_m);
    shown.width_known = s.width_m && std::isfinite(*s.width_m) && *s.width_m > 0;
    shown.half_width_m = shown.width_known ? *s.width_m / 2 : half_width_of(s.kind, shown.drawn_height_m);
    // How wide it is drawn by eye does not bring it nearer.
    const double reach = shown.width_known ? shown.half_width_m : 0;
    if (const double aside = beyond(drawn, s.x_m - reach, s.x_m + reach); std::abs(aside) > most_aside_m) {
      scene.far_off.push_back({s.name, aside});
      continue;
    }
    scene.extent = around(scene.extent, shown.extent());
    scene.items.push_back({s.y_m, SceneStanding{scene.structures.size()}});
    scene.structures.push_back(shown);
  }
  for (const Walkway& w : area.walkways) {
    if (!std::isfinite(w.x_m) || !std::isfinite(w.width_m) || !(w.width_m > 0)) continue;
    const double right = w.x_m + w.width_m;
    if (const double aside = beyond(drawn, w.x_m, right); std::abs(aside) > most_aside_m)
      scene.far_off.push_back({w.name, aside});
    else
      scene.walkways.push_back({w.name, w.x_m, right});
  }
}

}  // namespace quadrille
