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

constexpr double gravity = 9.80665;         // m/s², standard
constexpr double joints_part_below = 0.75;  // tightness; common practice, no source
constexpr double forced_below = 0.9;
constexpr double deepest_share =
    0.30;  // of a balloon's diameter; deeper it bursts or jumps off: common practice, no source

double fact(const Piece& piece, std::string_view key) {
  const auto found = std::ranges::find(piece.facts, key, &Fact::key);
  return found == piece.facts.end() ? 0 : found->number;
}

void warn(Piece& piece, const char* key, std::string text) {
  piece.messages.push_back({Severity::warning, key, std::move(text)});
}

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

void warn_of_bare_frame(Piece& piece, const Request& request) {
  const HiddenSpine hidden = hidden_spine(piece.spine, piece.balloons);
  const double size = request.dressing.make.inflated_m, length = piece.spine.back().at_m;
  std::string places;
  bool only_at_feet = true;
  int count = 0;
  for (const Stretch& stretch : hidden.bare) {
    // By the base plates nobody looks for balloons: there it takes more to be noticed.
    const bool at_foot = stretch.from_m < 1e-9 || stretch.to_m > length - 1e-9;
    if (stretch.to_m - stretch.from_m < (at_foot ? 0.75 : 0.25) * size) continue;
    only_at_feet = only_at_feet && at_foot;
    if (++count <= 3)
      places += (count > 1 ? ", " : "") + print_fixed(stretch.from_m, 2) + "-" + print_fixed(stretch.to_m, 2) + " m";
  }
  if (count == 0) return;
  if (count > 3) places += " and " + std::to_string(count - 3) + " more";
  warn(piece, only_at_feet ? "bare-ends" : "tightness",
       "The frame shows at " + places + " along it; " + print_fixed(100 * hidden.share, 0) + " % is hidden.");
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
    if (deepest.share <= deepest_share || is_left(low[deepest.first]) == is_left(low[deepest.second])) break;
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
             both_units(needed) + ", or widen the span.");
}

void warn_of_pattern(Piece& piece, const Request& request) {
  const PatternPlan& pattern = request.dressing.pattern;
  std::vector<bool> used(most_slots);
  for (const Balloon& balloon : piece.balloons) used[balloon.slot] = true;
  std::string unused;
  for (int slot = 0; slot < pattern.slots; ++slot)
    if (!used[static_cast<std::size_t>(slot)])
      unused += (unused.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
  if (!unused.empty() && !piece.balloons.empty())
    piece.messages.push_back({Severity::note, "slots", "The pattern does not use colour slot " + unused + "."});
}

}  // namespace

std::optional<Elastica> bend_rod(const Request& request) {
  if (request.frame != FrameKind::flexible_rod) return std::nullopt;
  const double length = request.rod_length_m, span = request.span_m / length;
  if (request.span_m >= length)
    throw Infeasible("span", "The span of " + both_units(request.span_m) + " is as long as the rod of " +
                                 both_units(length) + " or longer: at most " +
                                 both_units(Elastica::most_span * length) + " can be reached.");
  if (!Elastica::span_is_valid(request.feet, span))
    throw Infeasible(
        "span", "At a span of " + both_units(request.span_m) + " a rod of " + both_units(length) +
                    (span > 0.5 ? " is all but straight: at most " + both_units(Elastica::most_span * length)
                                : " free to turn at its feet closes on itself: at least " + both_units(0.02 * length)) +
                    " makes an arch.");
  return Elastica(request.feet, span);
}

void add_facts(Piece& piece, const Outline& outline, const Request& request, const Elastica* elastica) {
  const DressingPlan& plan = request.dressing;
  const auto balloons = static_cast<double>(piece.balloons.size()),
             clusters = static_cast<double>(piece.clusters.size());
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  add("rod_length_m", outline.length_m);
  add("span_m", request.span_m);
  add("height_m", outline.height_m);
  add("widest_m", outline.widest_m);
  add("rod_ei_nm2", request.rod.bending_stiffness_nm2());
  add("tightness", plan.tightness);
  add("snug", plan.make.snug);
  add("inflated_m", plan.make.inflated_m);
  add("spacing_m", plan.spacing_m());
  add("ring_radius_m", plan.ring_radius_m());
  add("thickness_m", plan.thickness_m());
  add("clusters", clusters);
  add("dressed_m", clusters * plan.spacing_m());
  add("balloons", balloons);
  add("balloons_per_m", plan.make.size / plan.spacing_m());
  add("balloons_per_ft", plan.make.size / plan.spacing_m() * metres_per_foot);
  add("weight_n_per_m", weight_n_per_m(piece, outline, request));
  if (elastica) add_rod_facts(piece, request, *elastica);
}

void add_warnings(Piece& piece, const Request& request) {
  const DressingPlan& plan = request.dressing;
  if (plan.tightness < forced_below)
    warn(piece, "tightness",
         "At a tightness of " + print_fixed(plan.tightness, 2) +
             " the packing is forced: it pushes rod joints apart and opens gaps elsewhere. Tape every joint, or use "
             "0.95 or more.");
  warn_of_bare_frame(piece, request);
  warn_of_legs(piece, request);
  warn_of_pattern(piece, request);
  const double weight = fact(piece, "weight_n_per_m");
  if (request.feet == Feet::pinned)
    warn(piece, "feet", "Feet that are free to turn hold nothing upright: the arch stands only by its lines.");
  else if (const double limit = fact(piece, "topple_weight_n_per_m"); limit > 0 && weight > limit)
    warn(piece, "rod-diameter",
         "Dressed it weighs " + print_fixed(weight, 2) + " N/m, and flops over sideways above " +
             print_fixed(limit, 2) + " N/m unless lines hold its crown: take a thicker rod, or tie it indoors too.");
  if (!piece.supports.empty() && piece.supports.front().ballast_kg > piece.supports.front().ballast_limit_kg)
    warn(piece, "ballast",
         print_fixed(piece.supports.front().ballast_kg, 0) +
             " kg of ballast find no room on the plate: it takes about " +
             print_fixed(piece.supports.front().ballast_limit_kg, 0) + " kg.");
}

void refuse_impossible(const Piece& piece, const Request& request, int most_clusters) {
  const DressingPlan& plan = request.dressing;
  const double radius = fact(piece, "bend_radius_m"), limit = fact(piece, "bend_limit_m");
  if (radius > 0 && radius < limit)
    throw Infeasible("rod-diameter",
                     "The rod would bend to a radius of " + both_units(radius) + "; " + "a rod of " +
                         print_fixed(request.rod.section.outer_m * 1000, 1) + " mm in " + request.rod.material->label +
                         " bears " + both_units(limit) + " or more: take a rod diameter of at most " +
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
                     std::to_string(plan.clusters) + " clusters need " + both_units(plan.clusters * plan.spacing_m()) +
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
  if (deepest.share <= deepest_share) return;
  const std::uint32_t one = piece.balloons[deepest.first].cluster, other = piece.balloons[deepest.second].cluster;
  throw Infeasible(request.inflated_as_usual ? "balloon" : "inflated",
                   "The frame turns too sharply for these balloons: clusters " + std::to_string(std::min(one, other)) +
                       " and " + std::to_string(std::max(one, other)) + " press " +
                       print_fixed(100 * deepest.share, 0) +
                       " % of a balloon deep into each other. Use smaller balloons or a wider bend.",
                   piece);
}

}  // namespace quadrille::arch
