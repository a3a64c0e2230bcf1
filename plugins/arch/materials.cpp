#include "plugins/arch/materials.hpp"

#include <string>

#include "plugins/arch/frame.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

/// Joints of rods with the fittings at the corners.
int corner_joints(const Outline& outline) { return 2 * static_cast<int>(outline.corners.size()); }

/// Up to a span of 2/π of its length a bent rod pushes its feet apart; a flatter one pulls them together. A rigid frame
/// does neither.
const char* why_ballast(const Piece& piece, const Request& request) {
  if (request.frame != FrameKind::flexible_rod) return "One light foot slides or lifts first.";
  return find_fact(piece, "foot_push_n").value_or(0) >= 0
             ? "The bent rod pushes its feet apart, and one light foot slides."
             : "The flat bent rod pulls its feet together, and one light foot slides.";
}

}  // namespace

void add_supplies(Piece& piece, const Outline& outline, const Request& request) {
  add_rod_supplies(piece, request.rod, rod_parts(rod_runs(outline), request.rod.piece_m), corner_joints(outline), 2);
  if (!outline.corners.empty()) {
    const bool bent = request.corner_m > 0;
    piece.supplies.push_back(
        {"corner-" + rod_key(request.rod) + (bent ? "-r" + whole_text(request.corner_m * 1000) + "mm" : ""),
         (bent ? "Bent corner, radius " + print_both(request.corner_m) + ", for " : "Elbow for ") +
             rod_words(request.rod),
         "piece", static_cast<double>(outline.corners.size())});
  }
  add_base(piece, request.base, 2);
  add_cluster_line(piece);
}

void add_work(Piece& piece, const Outline& outline, const Request& request) {
  add_cluster_work(piece);
  add_work_units(
      piece, "join-rod", "Join and tape a rod",
      static_cast<double>(rod_parts(rod_runs(outline), request.rod.piece_m).sleeves + corner_joints(outline)));
  add_work_units(piece, "raise-frame", "Raise the frame", 1);
}

void add_anchoring_rules(Piece& piece, const Request& request) {
  constexpr const char* practice = "common practice, no source";
  const bool bends = request.frame == FrameKind::flexible_rod;
  const auto rule = [&](Requirement requirement, When when, const char* key, const char* text, const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, practice});
  };
  rule(Requirement::front_and_back, When::outdoors, "crown-lines",
       "Tie the crown to anchors in front and behind, a line each way.",
       "An arch leans to the audience or away long before its feet move; lines from the legs alone leave the crown to "
       "lean.");
  rule(Requirement::clusters_to_frame, When::outdoors, "clusters-to-frame",
       "Tie every third cluster to the rod with line, and the first and the last.",
       "Wind turns and slides clusters that are only twisted on.");
  rule(Requirement::clusters_together, When::outdoors, "clusters-together",
       "Run a line from cluster to cluster along the whole arch.",
       "If the frame parts at a joint the dressing stays in one piece.");
  rule(Requirement::ballast, When::always, "ballast-both-feet",
       bends ? "Put the same ballast on both feet before the rod is bent."
             : "Put the same ballast on both feet before the frame is raised.",
       why_ballast(piece, request));
  rule(Requirement::joints, When::always, "tape-joints",
       bends ? "Tape every joint of the rod before it is bent." : "Tape every joint of the frame before it is raised.",
       bends ? "Tight packing and bending push joints apart." : "Tight packing pushes joints apart.");
  rule(Requirement::clearance, When::walkway, "headroom",
       "Keep 2.1 m (7 ft) of headroom under the balloons, and lines and ballast off the way.",
       "People walk under the arch and trip over what they do not look for.");
  rule(Requirement::ballast, When::hard_ground, "no-stakes",
       "Anchor lines to dead weights or a structure the site owner has allowed.", "Stakes do not hold in hard ground.");
  if (request.feet == Feet::pinned)
    rule(Requirement::front_and_back, When::always, "pinned-lines",
         "Tie the crown to the front and to the back, indoors too.",
         "Feet that are free to turn hold nothing upright.");
}

}  // namespace quadrille::arch
