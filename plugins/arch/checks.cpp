#include "plugins/arch/checks.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <string>
#include <vector>

#include "plugins/arch/topple.hpp"
#include "sdk/balloon_size.hpp"
#include "sdk/hidden.hpp"
#include "sdk/number.hpp"
#include "sdk/overlap.hpp"
#include "sdk/units.hpp"

namespace quadrille::arch {
namespace {

constexpr double gravity = 9.80665;  // m/s², standard
void add_rod_facts(Piece& piece, const Request& request, const Elastica& elastica) {
  const double length = request.rod_length_m, stiffness = request.rod.bending_stiffness_nm2();
  const double curvature = elastica.largest_curvature() / length;
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  add("foot_push_n", elastica.thrust() * stiffness / (length * length));
  add("foot_moment_nm", elastica.foot_curvature() * stiffness / length);
  add("widest_at_m", elastica.widest_at() * length);
  add("bend_radius_m", 1 / curvature);
  add("bend_limit_m", request.rod.bend_limit_m());
  add("bend_stress_pa", request.rod.material->young_pa * request.rod.section.outer_m / 2 * curvature);
  add("bend_energy_j", elastica.energy() * stiffness / length);
  // A foot that turns freely holds nothing upright: it topples without any weight.
  const auto limit = request.feet == Feet::pinned ? std::optional(0.0) : sideways_limit(elastica.span());
  if (limit) add("topple_weight_n_per_m", *limit * stiffness / (length * length * length));
}

double weight_n_per_m(const Piece& piece, const Outline& outline, const Request& request) {
  const double latex = static_cast<double>(piece.balloons.size()) * latex_mass_kg(request.dressing.make.nominal_in);
  return gravity * (request.rod.mass_per_m_kg() + latex / outline.length_m);
}

/// Where the feet stand close together the lowest clusters of both legs would lie in each other.
void warn_of_legs(Piece& piece, const Request& request) {
  const double length = piece.spine.back().at_m, half_cluster = request.dressing.spacing_m() / 2;
  const auto is_left = [&](const Balloon& balloon) { return piece.clusters[balloon.cluster - 1].at_m < length / 2; };
  std::vector<Balloon> standing = piece.balloons;
  double needed = 0;
  while (!standing.empty()) {
    // The deepest pair of balloons that stand on different legs goes, and all below it, until none is left.
    std::vector<Balloon> low;
    const double crown_from = length / 4;
    for (const Balloon& balloon : standing) {
      const double at = piece.clusters[balloon.cluster - 1].at_m;
      if (std::min(at, length - at) < crown_from) low.push_back(balloon);
    }
    const Overlap deepest = deepest_overlap(low);
    if (deepest.share <= deepest_press || is_left(low[deepest.first]) == is_left(low[deepest.second])) break;
    for (const std::size_t index : {deepest.first, deepest.second}) {
      const double at = piece.clusters[low[index].cluster - 1].at_m;
      needed = std::max(needed, std::min(at, length - at) + half_cluster);
    }
    std::erase_if(standing, [&](const Balloon& balloon) {
      const double at = piece.clusters[balloon.cluster - 1].at_m;
      return std::min(at, length - at) < needed;
    });
  }
  if (needed > 0)
    warn(piece, "bare-ends",
         "The feet stand so close that the lowest clusters of both legs press into each other: leave bare ends of " +
             print_both(needed) + ", or widen the span.");
}

}  // namespace

std::optional<Elastica> bend_rod(const Request& request) {
  if (request.frame != FrameKind::flexible_rod) return std::nullopt;
  const double length = request.rod_length_m, span = request.span_m / length;
  if (request.span_m >= length)
    throw Infeasible("span", "The span of " + print_both(request.span_m) + " is as long as the rod of " +
                                 print_both(length) + " or longer: at most " +
                                 print_both(Elastica::most_span * length) + " can be reached.");
  if (!Elastica::span_is_valid(request.feet, span))
    throw Infeasible(
        "span", "At a span of " + print_both(request.span_m) + " a rod of " + print_both(length) +
                    (span > 0.5 ? " is all but straight: at most " + print_both(Elastica::most_span * length)
                                : " free to turn at its feet closes on itself: at least " + print_both(0.02 * length)) +
                    " makes an arch.");
  return Elastica(request.feet, span);
}

void add_facts(Piece& piece, const Outline& outline, const Request& request, const Elastica* elastica) {
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  add("rod_length_m", outline.length_m);
  add("span_m", request.span_m);
  add("height_m", outline.height_m);
  add("widest_m", outline.widest_m);
  add("rod_ei_nm2", request.rod.bending_stiffness_nm2());
  add_dressing_facts(piece, request.dressing);
  add("weight_n_per_m", weight_n_per_m(piece, outline, request));
  if (elastica) add_rod_facts(piece, request, *elastica);
}

void add_warnings(Piece& piece, const Request& request) {
  warn_of_tightness(piece, request.dressing);
  warn_of_bare_frame(piece, request.dressing, "bare-ends");
  warn_of_legs(piece, request);
  note_unused_slots(piece, request.dressing.pattern.slots);
  warn_of_ballast(piece, request.base);
  const double weight = find_fact(piece, "weight_n_per_m").value_or(0);
  if (request.feet == Feet::pinned)
    warn(piece, "feet", "Feet that are free to turn hold nothing upright: the arch stands only by its lines.");
  else if (const double limit = find_fact(piece, "topple_weight_n_per_m").value_or(0); limit > 0 && weight > limit)
    warn(piece, "rod-diameter",
         "Dressed it weighs " + print_fixed(weight, 2) + " N/m, and flops over sideways above " +
             print_fixed(limit, 2) + " N/m unless lines hold its crown: take a thicker rod, or tie it indoors too.");
}

void refuse_impossible(const Piece& piece, const Request& request, int most_clusters) {
  const DressingPlan& plan = request.dressing;
  const double radius = find_fact(piece, "bend_radius_m").value_or(0),
               limit = find_fact(piece, "bend_limit_m").value_or(0);
  if (radius > 0 && radius < limit)
    throw Infeasible("rod-diameter",
                     "The rod would bend to a radius of " + print_both(radius) + "; " + "a rod of " +
                         print_fixed(request.rod.section.outer_m * 1000, 1) + " mm in " + request.rod.material->label +
                         " bears " + print_both(limit) + " or more: take a rod diameter of at most " +
                         print_fixed(std::floor(request.rod.section.outer_m * 1e4 * radius / limit) / 10, 1) +
                         " mm, another rod material, a longer rod, or a span that bends it less.",
                     piece);
  if (plan.tightness < joints_part_below)
    throw Infeasible(
        "tightness",
        "At a tightness of " + print_fixed(plan.tightness, 2) +
            " the clusters push the rod's joints apart: 0.75 is the least that holds, 0.95 to 1.05 is usual.",
        piece);
  if (plan.clusters > most_clusters)
    throw Infeasible("clusters",
                     std::to_string(plan.clusters) + " clusters need " + print_both(plan.clusters * plan.spacing_m()) +
                         " of frame: at this size and tightness " + std::to_string(most_clusters) + " fit.",
                     piece);
  // Only neighbours along the frame: legs that meet can be left bare, see warn_of_legs.
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

}  // namespace quadrille::arch
