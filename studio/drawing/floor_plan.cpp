#include "studio/drawing/floor_plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "studio/model/securing.hpp"

namespace quadrille {
namespace {

constexpr double near_m = 4, sane_m = 1e5, wall_gap_m = 0.3, wall_depth_m = 0.1;

bool is_sane(double metres) { return std::isfinite(metres) && std::abs(metres) < sane_m; }
bool is_sane(const Extent& e) { return is_sane(e.left) && is_sane(e.right) && is_sane(e.floor) && is_sane(e.top); }

/// How wide and deep each kind is drawn where nobody says. By eye, no source.
Point2 size_by_eye(StructureKind kind) {
  switch (kind) {
    case StructureKind::post:
      return {0.12, 0.12};
    case StructureKind::tree:
      return {0.6, 0.6};
    case StructureKind::wall:
    case StructureKind::railing:
    case StructureKind::beam:
      return {1.2, 0.12};
    case StructureKind::vehicle:
      return {2, 4.5};
    case StructureKind::table:
      return {1.8, 0.75};
    case StructureKind::other:
      break;
  }
  return {0.4, 0.4};
}

Extent about(double x, double y, double width, double depth) {
  return {x - width / 2, x + width / 2, y - depth / 2, y + depth / 2};
}

PlanPiece plan_piece(const PlacedPiece& placed, const BuiltPiece* built) {
  PlanPiece shown{placed.id, placed.name, about(placed.x_m, placed.y_m, 1, 1), {}, {}, placed.locked};
  if (placed.last_built)
    shown.body = about(placed.x_m, placed.y_m, placed.last_built->width_m, placed.last_built->depth_m);
  if (built == nullptr || built->status != Status::ok) return shown;
  const Box& box = built->box;
  shown.body = {placed.x_m + box.least.x(), placed.x_m + box.most.x(), placed.y_m + box.least.y(),
                placed.y_m + box.most.y()};
  const Piece& piece = built->piece;
  for (const Support& support : piece.supports) {
    if (support.kind != SupportKind::plate || support.node >= piece.frame.nodes.size()) continue;
    const Vec3& at = piece.frame.nodes[support.node];
    const Extent foot = about(placed.x_m + at.x(), placed.y_m + at.y(), support.width_m, support.depth_m);
    if (is_sane(foot)) shown.feet.push_back(foot);
  }
  for (const SpinePoint& point : piece.spine) {
    const Point2 at{placed.x_m + point.point.x(), placed.y_m + point.point.y()};
    if (is_sane(at.x) && is_sane(at.y)) shown.spine.push_back(at);
  }
  return shown;
}

PlanLine plan_line(const Area& area, const PlacedPiece& placed, std::size_t index, const BuiltPiece* built) {
  const SecuringLine& line = placed.lines[index];
  PlanLine shown{{SiteObjectKind::line, placed.id, index}, {placed.x_m, placed.y_m}, {}, line.anchor, false};
  shown.to = {placed.x_m + line.x_m, placed.y_m + line.y_m};
  if (line.anchor == AnchorKind::structure) {
    const Structure* const to = find_structure(area, line.structure);
    shown.to = to != nullptr ? Point2{to->x_m, to->y_m} : shown.from;
  }
  if (built == nullptr) return shown;
  const auto run = run_of(line, placed, built->piece, area);
  if (!run) return shown;
  shown.runs = true;
  shown.from = {placed.x_m + run->from.x(), placed.y_m + run->from.y()};
  shown.to = {placed.x_m + run->to.x(), placed.y_m + run->to.y()};
  return shown;
}

void add_pieces(const Area& area, const BuiltEvent& built, FloorPlan& plan) {
  for (const auto& placed : area.pieces) {
    if (placed->hidden) continue;
    const auto found = built.find(placed->id);
    const BuiltPiece* const known = found == built.end() ? nullptr : found->second.get();
    PlanPiece shown = plan_piece(*placed, known);
    if (!is_sane(shown.body)) continue;
    plan.pieces.push_back(std::move(shown));
    for (std::size_t i = 0; i < placed->lines.size(); ++i) {
      PlanLine line = plan_line(area, *placed, i, known);
      if (is_sane(line.from.x) && is_sane(line.from.y) && is_sane(line.to.x) && is_sane(line.to.y))
        plan.lines.push_back(std::move(line));
    }
  }
}

void add_ground(const Area& area, FloorPlan& plan) {
  for (const Structure& it : area.structures) {
    const Point2 eye = size_by_eye(it.kind);
    const Extent body = about(it.x_m, it.y_m, it.width_m.value_or(eye.x), it.depth_m.value_or(eye.y));
    if (is_sane(body)) plan.structures.push_back({it.id, it.name, it.kind, body, it.width_m && it.depth_m});
  }
  for (const Walkway& it : area.walkways) {
    const Extent body{it.x_m, it.x_m + it.width_m, it.y_m, it.y_m + it.depth_m};
    if (is_sane(body)) plan.walkways.push_back({it.id, it.name, body});
  }
  if (area.site.outlet_m && is_sane(*area.site.outlet_m)) {
    const SitePlace work = work_place(area);
    plan.outlet = PlanOutlet{{work.x_m, work.y_m}, *area.site.outlet_m};
  }
}

/// Of `other`, what lies within near_m of `core`; nothing where none of it does.
std::optional<Extent> near_part(const Extent& core, const Extent& other) {
  const Extent part{std::max(other.left, core.left - near_m), std::min(other.right, core.right + near_m),
                    std::max(other.floor, core.floor - near_m), std::min(other.top, core.top + near_m)};
  if (part.left > part.right || part.floor > part.top) return std::nullopt;
  return part;
}

Extent extent_of(const FloorPlan& plan, const std::optional<double>& wall_width_m) {
  std::optional<Extent> core;
  const auto include = [&](const Extent& e) { core = core ? around(*core, e) : e; };
  for (const PlanPiece& piece : plan.pieces) include(piece.body);
  for (const PlanLine& line : plan.lines) include({line.to.x, line.to.x, line.to.y, line.to.y});
  if (!core) core = Extent{0, std::clamp(wall_width_m.value_or(4), 1.0, 30.0), -1, 1};
  Extent whole = *core;
  for (const PlanStructure& it : plan.structures)
    if (const auto part = near_part(*core, it.body)) whole = around(whole, *part);
  for (const PlanWalkway& it : plan.walkways)
    if (const auto part = near_part(*core, it.body)) whole = around(whole, *part);
  return around(whole, {whole.left, whole.right, std::min(whole.floor, -0.5), std::max(whole.top, 0.5)});
}

bool inside(const Extent& e, const Point2& p, double reach) {
  return p.x >= e.left - reach && p.x <= e.right + reach && p.y >= e.floor - reach && p.y <= e.top + reach;
}

/// The edge of `e` within `reach` of a point beside or inside it; nothing: none.
std::optional<SiteGrip> edge_at(const Extent& e, const Point2& p, double reach) {
  if (!inside(e, p, reach)) return std::nullopt;
  const std::pair<double, SiteGrip> edges[] = {{std::abs(p.x - e.left), SiteGrip::left},
                                               {std::abs(p.x - e.right), SiteGrip::right},
                                               {std::abs(p.y - e.floor), SiteGrip::front},
                                               {std::abs(p.y - e.top), SiteGrip::back}};
  const auto& nearest = *std::ranges::min_element(edges, {}, &std::pair<double, SiteGrip>::first);
  // A narrow strip is still to be taken as a whole by its middle.
  const double most = std::min(reach, std::min(e.width(), e.height()) / 4);
  return nearest.first <= std::max(most, 0.0) ? std::optional(nearest.second) : std::nullopt;
}

}  // namespace

FloorPlan floor_plan_of(const Area& area, const BuiltEvent& built) {
  FloorPlan plan;
  add_pieces(area, built, plan);
  add_ground(area, plan);
  plan.extent = extent_of(plan, area.wall_width_m);
  if (area.wall_width_m && is_sane(*area.wall_width_m)) {
    const double back = std::max(plan.extent.top, 0.0) + wall_gap_m;
    plan.wall = Extent{0, *area.wall_width_m, back, back + wall_depth_m};
    plan.extent.top = back + wall_depth_m;
  }
  return plan;
}

std::optional<PlanHit> plan_hit(const FloorPlan& plan, const View& view, double x_px, double y_px, double reach_px) {
  const Point2 p = view.to_metres(x_px, y_px);
  const double reach = reach_px / view.pixels_per_metre;
  const auto near = [&](const Point2& at) { return std::hypot(at.x - p.x, at.y - p.y) <= reach * 1.5; };
  for (const PlanLine& line : plan.lines)
    if (near(line.to) && line.anchor != AnchorKind::structure) return PlanHit{line.object};
  if (plan.outlet && near(plan.outlet->grip())) return PlanHit{{SiteObjectKind::outlet, {}}};
  for (auto it = plan.structures.rbegin(); it != plan.structures.rend(); ++it)
    if (inside(it->body, p, reach)) return PlanHit{{SiteObjectKind::structure, it->id}};
  for (auto it = plan.pieces.rbegin(); it != plan.pieces.rend(); ++it)
    if (inside(it->body, p, 0) || std::ranges::any_of(it->feet, [&](const Extent& f) { return inside(f, p, 0); }))
      return PlanHit{{SiteObjectKind::piece, it->id}};
  for (auto it = plan.walkways.rbegin(); it != plan.walkways.rend(); ++it) {
    if (const auto edge = edge_at(it->body, p, reach)) return PlanHit{{SiteObjectKind::walkway, it->id}, *edge};
    if (inside(it->body, p, 0)) return PlanHit{{SiteObjectKind::walkway, it->id}};
  }
  return std::nullopt;
}

View fit_plan(const FloorPlan& plan, double width_px, double height_px, double border_px) {
  Scene frame;
  frame.extent = plan.extent;
  return fit_view(frame, width_px, height_px, border_px);
}

}  // namespace quadrille
