#include "plugins/arch/request.hpp"

#include <algorithm>
#include <string_view>

#include "sdk/balloon_size.hpp"
#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

FrameKind frame_of(std::string_view key) {
  if (key == "half-circle") return FrameKind::half_circle;
  if (key == "half-ellipse") return FrameKind::half_ellipse;
  return key == "square" ? FrameKind::square : FrameKind::flexible_rod;
}

PatternKind pattern_of(std::string_view key) {
  if (key == "solid") return PatternKind::solid;
  if (key == "zigzag") return PatternKind::zigzag;
  if (key == "stripes") return PatternKind::stripes;
  if (key == "diamond") return PatternKind::diamond;
  return key == "rows" ? PatternKind::rows : PatternKind::spiral;
}

Rod read_rod(const Values& values) {
  Rod rod;
  rod.section.outer_m = values.number("rod-diameter");
  const double wall = values.number("rod-wall");
  if (2 * wall >= rod.section.outer_m)
    throw BadParameter("rod-wall", "A wall of " + print_fixed(wall * 1000, 1) + " mm leaves no tube of " +
                                       print_fixed(rod.section.outer_m * 1000, 1) +
                                       " mm: it must be less than half of the diameter, or 0 for a solid rod.");
  rod.section.inner_m = wall > 0 ? rod.section.outer_m - 2 * wall : 0;
  rod.material = find_material(values.text("rod-material"));
  rod.piece_m = values.number("rod-section");
  return rod;
}

ClusterMake read_make(const Values& values) {
  ClusterMake make;
  make.size = values.whole("cluster-size");
  make.nominal_in = values.number("balloon");
  make.inflated_m = values.number("inflated");
  make.snug = values.number("snug");
  const double nominal_m = make.nominal_in * metres_per_inch;
  if (make.inflated_m == 0) make.inflated_m = usual_inflated_m(make.nominal_in);
  if (make.inflated_m > 1.02 * nominal_m || make.inflated_m < 0.25 * nominal_m)
    throw BadParameter("inflated", "A balloon of nominal size " + print_number(make.nominal_in) +
                                       " in cannot be inflated to " + both_units(make.inflated_m) + ": from " +
                                       both_units(0.25 * nominal_m) + " to " + both_units(nominal_m) + " is possible.");
  return make;
}

PatternPlan read_pattern(const Values& values) {
  PatternPlan plan;
  plan.kind = pattern_of(values.text("pattern"));
  plan.cluster_size = values.whole("cluster-size");
  plan.slots = values.whole("slots");
  plan.hand = values.text("hand") == "left" ? -1 : 1;
  plan.band = values.whole("band");
  if (plan.kind != PatternKind::rows) return plan;
  const auto rows = parse_rows(values.text("rows"), plan.cluster_size);
  if (!rows) throw BadParameter("rows", rows.error);
  if (rows->empty())
    throw BadParameter(
        "rows", "The pattern is \"rows as typed\", but no row is typed: write one word per cluster, such as AABB.");
  for (const SlotRow& row : *rows)
    for (const std::uint32_t slot : row)
      if (slot >= static_cast<std::uint32_t>(plan.slots))
        throw BadParameter("rows", std::string("The rows use colour ") + slot_letter(slot) + ", but the piece has " +
                                       std::to_string(plan.slots) + " colour slots: set slots to " +
                                       std::to_string(slot + 1) + " or more.");
  plan.rows = *rows;
  return plan;
}

void check_rigid(const Request& request) {
  if (request.frame == FrameKind::flexible_rod) return;
  if (request.span_m < 0.2) throw BadParameter("span", "A rigid frame needs a span of at least 0.20 m.");
  if (request.frame == FrameKind::half_circle && request.height_m < request.span_m / 2)
    throw BadParameter("height", "A half circle over " + both_units(request.span_m) + " is " +
                                     both_units(request.span_m / 2) + " high: the height must be that or more.");
  if (request.frame == FrameKind::square && request.corner_m > std::min(request.span_m / 2, request.height_m))
    throw BadParameter("corner-radius", "The corners take more room than the frame has: at most " +
                                            both_units(std::min(request.span_m / 2, request.height_m)) + ".");
}

}  // namespace

std::string both_units(double metres) {
  return print_length(metres, LengthStyle::metres) + " (" + print_length(metres, LengthStyle::feet_inches) + ")";
}

Request read_request(const Values& values) {
  Request request;
  request.frame = frame_of(values.text("frame"));
  request.feet = values.text("feet") == "pinned" ? Feet::pinned : Feet::upright;
  request.rod_length_m = values.number("rod-length");
  request.span_m = values.number("span");
  request.height_m = values.number("height");
  request.corner_m = values.number("corner-radius");
  request.rod = read_rod(values);
  request.base = {values.number("plate-width"), values.number("plate-mass"), values.number("ballast")};
  request.dressing.make = read_make(values);
  request.inflated_as_usual = values.number("inflated") == 0;
  request.dressing.tightness = values.number("tightness");
  request.dressing.bare_m = values.number("bare-ends");
  request.dressing.clusters = values.whole("clusters");
  request.dressing.pattern = read_pattern(values);
  check_rigid(request);
  return request;
}

}  // namespace quadrille::arch
