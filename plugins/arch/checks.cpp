#include "plugins/arch/checks.hpp"

#include <algorithm>
#include <span>
#include <string>
#include <vector>

#include "plugins/arch/bend.hpp"
#include "plugins/arch/crown_push.hpp"
#include "plugins/arch/room.hpp"
#include "sdk/balloon_size.hpp"
#include "sdk/bare_frame.hpp"
#include "sdk/number.hpp"
#include "sdk/overlap.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

double weight_n_per_m(const Piece& piece, const Outline& outline, const Request& request) {
  const double latex = static_cast<double>(piece.balloons.size()) * latex_mass_kg(request.dressing.make.nominal_in);
  return gravity * (request.rod.mass_per_m_kg() + latex / outline.length_m);
}

/// Only neighbours along the frame: what legs that meet do is warned of, see warn_of_room.
void refuse_sharp_turn(const Piece& piece, const DressingPlan& plan) {
  Overlap deepest;
  const auto per_cluster = static_cast<std::size_t>(plan.make.size);
  for (std::size_t first = 0; first + per_cluster < piece.balloons.size(); first += per_cluster) {
    const std::size_t window = std::min(3 * per_cluster, piece.balloons.size() - first);
    const Overlap here = deepest_overlap(std::span(piece.balloons).subspan(first, window));
    if (here.share > deepest.share) deepest = {here.share, first + here.first, first + here.second};
  }
  if (deepest.share <= deepest_press) return;
  const std::uint32_t one = piece.balloons[deepest.first].cluster, other = piece.balloons[deepest.second].cluster;
  throw Infeasible(plan.size_key(),
                   "The frame turns too sharply for these balloons: clusters " + std::to_string(std::min(one, other)) +
                       " and " + std::to_string(std::max(one, other)) + " press " +
                       print_fixed(100 * deepest.share, 0) +
                       " % of a balloon deep into each other. Use smaller balloons or a wider bend.",
                   piece);
}

/// At a corner it is the corner's radius that keeps clusters from hiding the frame.
std::vector<BlamedStretch> corners_of(const Outline& outline, const Request& request) {
  const DressingPlan& plan = request.dressing;
  const double reach = plan.thickness_m(), least = least_corner_m(plan);
  std::string remedy = "push a filler in at each corner";
  if (request.corner_m < least && least <= widest_corner_m(request))
    remedy = "a corner radius of at least " + print_at_least(least) +
             " lets the clusters follow each other round it; or " + remedy;
  std::vector<BlamedStretch> corners;
  for (const Corner& corner : outline.corners)
    corners.push_back({{corner.from_m - reach, corner.to_m + reach}, "corner-radius", remedy});
  return corners;
}

/// How long a line the clusters that are asked for take, with the bare ends; round corners they take more than that.
std::string room_for(const DressingPlan& plan, const Outline& outline, const Request& request) {
  const std::string clusters = std::to_string(plan.clusters) + " clusters ";
  if (!outline.corners.empty()) return clusters + "do not fit round this frame: at this size and tightness ";
  const std::string ends = plan.bare_m > 0 ? " with the bare ends of " + print_both(plan.bare_m) : "";
  return clusters + "need a " + (is_rigid(request) ? "frame" : "rod length") + " of at least " +
         print_at_least(plan.clusters * plan.spacing_m() + 2 * plan.bare_m) + ends + ": on " +
         print_both(outline.length_m) + ", at this size and tightness, ";
}

/// Guests pass upright below this. Common practice, no source.
constexpr double headroom_m = 2.0;
/// Narrower or lower than that nobody takes the arch for a passage. Common practice, no source.
constexpr double least_passage_m = 0.6, lowest_passage_m = 1.0;

void note_headroom(Piece& piece, const Outline& outline, const Request& request) {
  const double thickness = request.dressing.thickness_m(), clear = outline.height_m - thickness / 2;
  if (request.span_m - thickness < least_passage_m || clear < lowest_passage_m || clear >= headroom_m) return;
  piece.messages.push_back(
      {Severity::note, is_rigid(request) ? "height" : "rod-length",
       "Below the crown " + print_at_most(clear) + " are clear, less than the " + print_both(headroom_m) +
           " that guests need to pass upright: make it higher, or keep people from walking through."});
}

}  // namespace

void add_facts(Piece& piece, const Outline& outline, const Request& request, const Elastica* elastica) {
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  add("rod_length_m", outline.length_m);
  add("span_m", request.span_m);
  add("height_m", to_twelve_digits(outline.height_m));
  add("widest_m", to_twelve_digits(outline.widest_m));
  add("rod_ei_nm2", request.rod.bending_stiffness_nm2());
  add_dressing_facts(piece, request.dressing);
  add("weight_n_per_m", weight_n_per_m(piece, outline, request));
  if (elastica) add_bend_facts(piece, request, *elastica);
  add_sway_facts(piece, outline, request);
}

void add_warnings(Piece& piece, const Outline& outline, const Request& request) {
  warn_of_tightness(piece, request.dressing);
  warn_of_bare_frame(piece, request.dressing, request.dressing.clusters > 0 ? "clusters" : "bare-ends",
                     corners_of(outline, request));
  warn_of_room(piece, outline, request.dressing, is_rigid(request));
  warn_of_pattern(piece, request.dressing);
  note_unused_slots(piece, request.dressing.pattern.slots);
  warn_of_ballast(piece, request.base);
  warn_of_toppling(piece, request);
  warn_of_sway(piece, outline, request);
  note_headroom(piece, outline, request);
}

void note_ignored(Piece& piece, const Values& values, const Outline& outline, const Request& request) {
  if (is_rigid(request))
    note_without_effect(piece, values, "rod-length",
                        "The rod length has no effect on a rigid frame, which is " + print_both(outline.length_m) +
                            " long along its line.");
  else
    note_without_effect(piece, values, "height",
                        "The height has no effect on a flexible rod, which finds its own: " +
                            print_both(outline.height_m) + ". Change rod length or span.");
  if (request.frame != FrameKind::square)
    note_without_effect(piece, values, "corner-radius",
                        "Only a square frame has corners: the corner radius has no effect.");
  else if (request.corner_m < values.number("corner-radius"))
    piece.messages.push_back({Severity::note, "corner-radius",
                              "The usual corner radius of " + print_both(values.number("corner-radius")) +
                                  " finds no room in a frame of this size: its corners are elbows."});
  note_pattern_without_effect(piece, values, request.dressing.pattern);
  note_base_without_effect(piece, values, request.base);
}

void refuse_impossible(const Piece& piece, const Outline& outline, const Request& request, int most_clusters) {
  const DressingPlan& plan = request.dressing;
  refuse_sharp_bend(piece, request);
  if (plan.tightness < joints_part_below)
    throw Infeasible(
        "tightness",
        "At a tightness of " + print_fixed(plan.tightness, 2) +
            " the clusters push the rod's joints apart: 0.75 is the least that holds, 0.95 to 1.05 is usual.",
        piece, "tightness=0.95");
  if (plan.clusters > most_clusters && most_clusters > 0)
    throw Infeasible("clusters", room_for(plan, outline, request) + std::to_string(most_clusters) + " do.", piece,
                     "clusters=" + std::to_string(most_clusters));
  refuse_too_many(piece, plan);
  refuse_sharp_turn(piece, plan);
  refuse_without_room(piece, outline, plan, is_rigid(request));
}

}  // namespace quadrille::arch
