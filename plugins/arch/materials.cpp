#include "plugins/arch/materials.hpp"

#include <cmath>
#include <string>

#include "plugins/arch/frame.hpp"
#include "sdk/number.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

constexpr double tape_per_joint_m = 0.25;   // two turns and an end: common practice, no source
constexpr double line_per_cluster_m = 0.6;  // round the frame and tied, every third cluster: common practice, no source

std::string rounded(double number) { return std::to_string(std::lround(number)); }

/// "8" or "33.4": millimetres without a useless zero.
std::string millimetres(double metres) { return print_number(std::round(metres * 1e4) / 10); }

/// "aluminium tube", but "PVC tube".
std::string within_name(std::string label) {
  const bool is_word = label.size() > 1 && to_lower(label[1]) == label[1];
  if (is_word) label[0] = to_lower(label[0]);
  return label;
}

std::size_t sections(const Outline& outline, const Request& request) {
  return section_lengths(outline.length_m, request.rod.piece_m).size();
}

void add_rods(Piece& piece, const Outline& outline, const Request& request) {
  const Rod& rod = request.rod;
  const std::string diameter = millimetres(rod.section.outer_m),
                    wall = millimetres((rod.section.outer_m - rod.section.inner_m) / 2);
  const bool solid = rod.section.inner_m == 0;
  const std::string kind = rod.material->key + ("-" + diameter + "mm") + (solid ? "" : "x" + wall + "mm");
  const std::string label = rod.material->label + std::string(solid ? " rod, " : " tube, ") + diameter +
                            (solid ? " mm" : " x " + wall + " mm");
  const std::string for_it = within_name(label);
  piece.supplies.push_back({"rod-" + kind + "-" + rounded(rod.piece_m * 1000) + "mm",
                            label + ", section of " + print_both(rod.piece_m), "piece",
                            static_cast<double>(sections(outline, request))});
  const auto joints = static_cast<double>(sections(outline, request) - 1);
  if (joints > 0) {
    piece.supplies.push_back({"sleeve-" + kind, "Sleeve joint for " + for_it, "piece", joints});
    piece.supplies.push_back({"joint-tape", "Tape over the joints", "m", joints * tape_per_joint_m});
  }
  const std::size_t corners = outline.corners.size();
  if (corners > 0)
    piece.supplies.push_back(
        {"corner-" + kind + (request.corner_m > 0 ? "-r" + rounded(request.corner_m * 1000) + "mm" : ""),
         (request.corner_m > 0 ? "Bent corner for " : "Elbow for ") + for_it, "piece", static_cast<double>(corners)});
}

}  // namespace

void add_supplies(Piece& piece, const Outline& outline, const Request& request) {
  add_rods(piece, outline, request);
  piece.supplies.push_back({"socket-" + millimetres(request.rod.section.outer_m) + "mm",
                            "Foot socket for " + millimetres(request.rod.section.outer_m) + " mm", "piece", 2});
  add_base(piece, request.base, 2);
  const auto tied = std::ceil(static_cast<double>(piece.clusters.size()) / 3);
  if (tied > 0)
    piece.supplies.push_back({"cluster-line", "Line, clusters to the frame", "m", tied * line_per_cluster_m});
}

void add_work(Piece& piece, const Outline& outline, const Request& request) {
  const auto balloons = static_cast<double>(piece.balloons.size()),
             clusters = static_cast<double>(piece.clusters.size());
  const auto joints = static_cast<double>(sections(outline, request) - 1 + 2 * outline.corners.size());
  const auto add = [&](const char* key, const char* label, double quantity) {
    if (quantity > 0) piece.work.push_back({key, label, quantity});
  };
  add("inflate", "Inflate and size a balloon", balloons);
  add("tie", "Tie a balloon", balloons);
  add("make-cluster", "Make a cluster", clusters);
  add("mount-cluster", "Mount a cluster", clusters);
  add("join-rod", "Join and tape a rod", joints);
  add("raise-frame", "Raise the frame", 1);
  add("tie-to-frame", "Tie a cluster to the frame", std::ceil(clusters / 3));
}

void add_anchoring_rules(Piece& piece, const Request& request) {
  constexpr const char* practice = "common practice, no source";
  const auto rule = [&](Requirement requirement, When when, const char* key, const char* text, const char* reason) {
    piece.anchoring.push_back({requirement, when, key, text, reason, practice});
  };
  rule(Requirement::front_and_back, When::outdoors, "crown-lines",
       "Tie the crown to anchors in front and behind, a line each way.",
       "An arch leans to the audience or away long before its feet move; lines to the sides alone do not stop that.");
  rule(Requirement::clusters_to_frame, When::outdoors, "clusters-to-frame",
       "Tie every third cluster to the rod with line, and the first and the last.",
       "Wind turns and slides clusters that are only twisted on.");
  rule(Requirement::clusters_together, When::outdoors, "clusters-together",
       "Run a line from cluster to cluster along the whole arch.",
       "If the frame parts at a joint the dressing stays in one piece.");
  rule(Requirement::ballast, When::always, "ballast-both-feet",
       "Put the same ballast on both feet before the rod is bent.",
       "The bent rod pushes its feet apart, and one light foot slides.");
  rule(Requirement::joints, When::always, "tape-joints", "Tape every joint of the rod before it is bent.",
       "Tight packing and bending push joints apart.");
  rule(Requirement::clearance, When::walkway, "headroom",
       "Keep 2.1 m of headroom under the balloons, and lines and ballast off the way.",
       "People walk under the arch and trip over what they do not look for.");
  rule(Requirement::ballast, When::hard_ground, "no-stakes",
       "Anchor lines to dead weights or a structure the site owner has allowed.", "Stakes do not hold in hard ground.");
  if (request.feet == Feet::pinned)
    rule(Requirement::front_and_back, When::always, "pinned-lines",
         "Tie the crown to the front and to the back, indoors too.",
         "Feet that are free to turn hold nothing upright.");
}

}  // namespace quadrille::arch
