#include "plugins/garland/materials.hpp"

#include <algorithm>
#include <cmath>
#include <string>

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
  add("cable-tie", "Cable tie to what carries it", "piece",
      request.backing == Backing::frame ? static_cast<double>(piece.supports.size()) : 0);
  add("glue-dot", "Glue dot", "piece", 2 * fillers);  // two each: common practice, no source
}

/// Weight of the balloons [kg], the air in them borne by the air about them.
double latex_kg(const Piece& piece) {
  double mass = 0;
  for (const Balloon& balloon : piece.balloons) mass += latex_mass_kg(balloon.nominal_in);
  return mass;
}

/// "1.3 kg (2.8 lb)", in neither unit less than it is.
std::string print_load(double mass_kg) {
  const auto up = [](double mass) { return std::ceil(mass * 10 - 1e-6) / 10; };
  return print_mass(up(mass_kg), MassStyle::kilograms) + " (" +
         print_mass(up(mass_kg / kilograms_per_pound) * kilograms_per_pound, MassStyle::pounds) + ")";
}

/// How it is kept from lifting between the places that hold it, worded by what these are.
std::string tie_often(const Request& request) {
  if (request.hanging) return "Stay the garland with lines along its length, not only at its two ends.";
  const char* const places = request.backing == Backing::hooks   ? "hooks"
                             : request.backing == Backing::frame ? "cable ties"
                                                                 : "hooks or ties";
  return std::string("Tie the garland to what carries it once more between every two of its ") + places +
         ", so about every " + print_both(hook_spacing_m / 2) + ".";
}

void add_rules(Piece& piece, const Request& request) {
  constexpr const char* practice = "common practice, no source";
  const auto rule = [&](Requirement requirement, When when, const char* key, const std::string& text,
                        const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, practice});
  };
  rule(Requirement::clusters_to_frame, When::outdoors, "tie-often", tie_often(request),
       request.hanging ? "Between its ends wind lifts it and swings it." : "Between them wind lifts it like a sail.");
  rule(Requirement::clusters_together, When::outdoors, "second-line", "Run a second line through all clusters.",
       request.backing == Backing::strip ? "A strip tears at its holes." : "Where one line parts, the other holds.");
  rule(Requirement::front_and_back, When::outdoors, "carrier-secured",
       "What carries the garland must itself be secured to the front and to the back.",
       "A garland catches more wind than what it hangs on was made for.");
  rule(Requirement::clearance, When::walkway, "headroom", "Keep 2.1 m (7 ft) of headroom under the balloons.",
       "People walk under it.");
  if (request.backing == Backing::hooks)
    rule(Requirement::other, When::always, "hooks-hold",
         "Try each hook with " + print_load(2 * latex_kg(piece)) +
             ", twice what the garland's balloons weigh, before hanging it.",
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
