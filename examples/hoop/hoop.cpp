// The hoop: clusters round a ring of tube on a stand, all the way or part of it.
#include "hoop.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <vector>

#include "parameters.hpp"
#include "sdk/overlap.hpp"
#include "sdk/piece.hpp"

namespace hoop {
namespace {

std::string degrees(double angle) { return print_fixed(angle * 180 / pi, 0) + "°"; }

Hoop read_hoop(const Values& values) {
  Hoop hoop;
  hoop.radius_m = values.number("diameter") / 2;
  hoop.lift_m = values.number("lift");
  hoop.from = values.number("from");
  hoop.to = values.number("to");
  hoop.tube = read_rod(values, "tube");
  hoop.base = read_base(values);
  hoop.dressing = read_dressing(values);
  const double turn = hoop.to - hoop.from;
  if (turn <= 0 || turn > 2 * pi + 1e-9)
    throw BadParameter("to", "Dressed from " + degrees(hoop.from) +
                                 " the balloons end after that and within one turn: " + degrees(hoop.from + 2 * pi) +
                                 " at most, not " + degrees(hoop.to) + ".");
  return hoop;
}

/// Round a full ring the first cluster comes after the last. True where it continues the pattern there, seated in the
/// creases of the last and in the right colours.
bool closes(const PatternPlan& plan, int clusters) {
  const auto seen = [&plan](const LaidCluster& laid) {
    const int positions = 2 * plan.cluster_size;
    std::vector<std::uint32_t> slots(static_cast<std::size_t>(positions), most_slots);
    for (int place = 0; place < plan.cluster_size; ++place) {
      const int position = ((laid.half_steps + 2 * place) % positions + positions) % positions;
      slots[static_cast<std::size_t>(position)] = laid.slots[static_cast<std::size_t>(place)];
    }
    return slots;
  };
  const auto laid = lay_pattern(plan, clusters + 1);
  return seen(laid.front()) == seen(laid.back());
}

/// As many clusters as the dressed part takes. Round a full ring up to one in ten is left out where the pattern closes
/// then, and their number is even, so that the last one sits in the creases of the first.
int clusters_that_fit(const Hoop& hoop) {
  const int most = static_cast<int>(std::floor(hoop.dressed_m() / hoop.dressing.spacing_m() + 1e-9));
  if (!hoop.is_full()) return most;
  for (int count = most; count >= 0.9 * most && count > 0; --count)
    if (closes(hoop.dressing.pattern, count)) return count;
  return most > 1 ? most - most % 2 : most;
}

/// Spreads the clusters evenly over the dressed part.
void dress(Piece& piece, const Hoop& hoop, int count) {
  const ClusterMake& make = hoop.dressing.make;
  const auto laid = lay_pattern(hoop.dressing.pattern, count);
  for (int i = 0; i < count; ++i) {
    const double share = (i + 0.5) / count, angle = hoop.from + share * (hoop.to - hoop.from);
    const auto& [half_steps, slots] = laid[static_cast<std::size_t>(i)];
    const Cluster cluster{static_cast<std::uint32_t>(i + 1), share * hoop.dressed_m(), to_nanometre(hoop.point(angle)),
                          to_picounit(hoop.tangent(angle)), half_steps * pi / make.size};
    piece.clusters.push_back(cluster);
    std::ranges::copy(ring_balloons(cluster, make, slots), std::back_inserter(piece.balloons));
  }
}

double lowest(const Piece& piece) {
  double least = 0;
  for (const Balloon& balloon : piece.balloons) least = std::min(least, balloon.centre.z() - balloon.diameter_m / 2);
  return least;
}

void refuse_impossible(const Piece& piece, const Hoop& hoop, int most) {
  const DressingValues& dressing = hoop.dressing;
  if (most == 0)
    throw Infeasible("to", "No cluster finds room: one takes " + print_both(dressing.spacing_m()) + ", and only " +
                               print_both(hoop.dressed_m()) + " of the ring of this diameter are to be dressed.");
  if (dressing.tightness < joints_part_below)
    throw Infeasible("tightness",
                     "At a tightness of " + print_fixed(dressing.tightness, 2) +
                         " the clusters push the ring's joints apart: 0.75 is the least that holds.",
                     piece);
  if (dressing.clusters > most)
    throw Infeasible("clusters",
                     std::to_string(dressing.clusters) + " clusters do not find room on " +
                         print_both(hoop.dressed_m()) + " of the ring: " + std::to_string(most) + " do.",
                     piece);
  if (const double share = deepest_overlap(piece.balloons).share; share > deepest_press)
    throw Infeasible(dressing.size_key(),
                     "On the ring's inner side the balloons press " + print_fixed(100 * share, 0) +
                         " % of their diameter into each other: use smaller balloons, or a ring of larger diameter.",
                     piece);
  if (const double below = lowest(piece); below < -0.001)
    throw Infeasible("lift",
                     "The lowest balloons would reach " + print_both(-below) + " into the floor: a lift of " +
                         print_at_least(hoop.lift_m - below) + " frees them; or leave the ring's foot bare.",
                     piece);
}

void add_facts(Piece& piece, const Hoop& hoop) {
  DressingValues laid = hoop.dressing;
  laid.tightness *= hoop.dressed_m() / (static_cast<double>(piece.clusters.size()) * laid.spacing_m());
  add_dressing_facts(piece, laid);
  const double tube = hoop.ring_m() + hoop.lift_m, balloons = static_cast<double>(piece.balloons.size());
  piece.facts.push_back({"ring_m", hoop.ring_m()});
  piece.facts.push_back({"height_m", hoop.lift_m + 2 * hoop.radius_m});
  piece.facts.push_back({"mass_kg", tube * hoop.tube.mass_per_m_kg() + balloons * latex_mass_kg(laid.make.nominal_in)});
}

Piece build(const Values& values) {
  const Hoop hoop = read_hoop(values);
  const int most = clusters_that_fit(hoop);
  const int count = hoop.dressing.clusters == 0 ? most : hoop.dressing.clusters;
  Piece piece;
  dress(piece, hoop, count);
  add_frame(piece, hoop);
  refuse_impossible(piece, hoop, most);
  add_facts(piece, hoop);
  add_supplies_and_work(piece, hoop);
  add_anchoring_rules(piece);
  add_warnings(piece, hoop);
  if (hoop.is_full() && !closes(hoop.dressing.pattern, count))
    piece.messages.push_back(
        {Severity::note, "clusters", "The colours jump at the ring's foot, where the pattern does not close."});
  return piece;
}

constexpr quadrille_piece_type types[] = {
    piece_type<parameters, build>("hoop", "Hoop", "Clusters round a ring on a stand, all the way or part of it.")};

}  // namespace
}  // namespace hoop

QUADRILLE_PIECES("example.hoop", "1.0.0", hoop::types)
