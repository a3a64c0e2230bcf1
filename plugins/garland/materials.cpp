#include "plugins/garland/materials.hpp"

#include <algorithm>
#include <cmath>

#include "sdk/dressing.hpp"

namespace quadrille::garland {
namespace {

constexpr double hook_spacing_m = 0.6;  // common practice, no source
constexpr double line_slack = 1.15;     // knots and ends: common practice, no source

/// Where the garland is held: hooks or ties evenly along it, both ends among them.
void add_supports(Piece& piece, const Request& request, const Curve& line) {
  const double length = line.length_m();
  const int fields = std::max(1, static_cast<int>(std::ceil(length / hook_spacing_m - 1e-9)));
  for (int i = 0; i <= fields; ++i) {
    const bool free_hanging = request.hanging && i != 0 && i != fields;
    if (free_hanging) continue;
    piece.frame.nodes.push_back(to_nanometre(line.point(length * i / fields)));
    Support support;
    support.kind = SupportKind::hook;
    support.node = static_cast<std::uint32_t>(piece.frame.nodes.size() - 1);
    support.turns = true;
    piece.supports.push_back(support);
  }
  const auto last = static_cast<std::uint32_t>(piece.frame.nodes.size() - 1);
  piece.tie_points.push_back({0, TiePurpose::side, piece.frame.nodes.front(), "first end"});
  piece.tie_points.push_back({last, TiePurpose::side, piece.frame.nodes.back(), "last end"});
}

void add_supplies(Piece& piece, const Request& request, const Curve& line, double fillers) {
  const double length = line.length_m();
  const auto add = [&](const char* key, const char* label, const char* unit, double quantity) {
    if (quantity > 0) piece.supplies.push_back({key, label, unit, quantity});
  };
  add("balloon-strip", "Balloon strip", "m", request.backing == Backing::strip ? length * 1.05 : 0);
  add("garland-line", "Line to thread the clusters on", "m",
      request.backing == Backing::strip ? 0 : length * line_slack);
  add("hook", "Hook on a wall", "piece",
      request.backing == Backing::hooks ? static_cast<double>(piece.supports.size()) : 0);
  add("cable-tie", "Tie to the arch frame", "piece",
      request.backing == Backing::frame ? static_cast<double>(piece.supports.size()) : 0);
  add("glue-dot", "Glue dot", "piece", 2 * fillers);  // two each: common practice, no source
}

void add_rules(Piece& piece, const Request& request) {
  constexpr const char* practice = "common practice, no source";
  const auto rule = [&](Requirement requirement, When when, const char* key, const char* text, const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, practice});
  };
  rule(Requirement::clusters_to_frame, When::outdoors, "tie-often",
       "Tie the garland to what carries it every foot, not only at the hooks.",
       "Between its hooks wind lifts it like a sail.");
  rule(Requirement::clusters_together, When::outdoors, "second-line", "Run a second line through all clusters.",
       "A strip tears at its holes.");
  rule(Requirement::front_and_back, When::outdoors, "carrier-secured",
       "What carries the garland must itself be secured to the front and to the back.",
       "A garland catches more wind than the frame it hangs on was made for.");
  rule(Requirement::clearance, When::walkway, "headroom", "Keep 2.1 m (7 ft) of headroom under the balloons.",
       "People walk under it.");
  if (request.backing == Backing::hooks)
    rule(Requirement::other, When::always, "hooks-hold",
         "Try each hook with twice the garland's weight before hanging it.",
         "Glued hooks let go of dusty or papered walls.");
}

}  // namespace

void add_materials(Piece& piece, const Request& request, const Curve& line) {
  const auto fillers = static_cast<double>(std::ranges::count(piece.balloons, 0u, &Balloon::cluster));
  add_supports(piece, request, line);
  add_supplies(piece, request, line, fillers);
  const auto balloons = static_cast<double>(piece.balloons.size()),
             clusters = static_cast<double>(piece.clusters.size());
  add_work_units(piece, "inflate", "Inflate and size a balloon", balloons);
  add_work_units(piece, "tie", "Tie a balloon", balloons);
  add_work_units(piece, "make-cluster", "Make a cluster", clusters);
  add_work_units(piece, "mount-cluster", "Mount a cluster", clusters);
  add_work_units(piece, "glue-filler", "Glue a filler into its crease", fillers);
  add_work_units(piece, "hang", "Hang or tie the garland at a point", static_cast<double>(piece.supports.size()));
  add_rules(piece, request);
}

}  // namespace quadrille::garland
