// Dressing a line with clusters: the parameters that all piece types of clusters share, their reading, and what there is
// to say about them. A piece type puts dressing_parameters into its table with joined() and calls read_dressing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "sdk/balloon_size.hpp"
#include "sdk/cluster.hpp"
#include "sdk/number.hpp"
#include "sdk/overlap.hpp"
#include "sdk/pattern.hpp"
#include "sdk/pattern_check.hpp"
#include "sdk/piece.hpp"
#include "sdk/units.hpp"
#include "sdk/without_effect.hpp"

namespace quadrille {

inline constexpr quadrille_choice pattern_choices[] = {{"spiral", "Spiral"},   {"solid", "Solid"},
                                                       {"zigzag", "Zigzag"},   {"stripes", "Stripes"},
                                                       {"diamond", "Diamond"}, {"rows", "Rows as typed"}};
/// No piece mounts more clusters than that.
inline constexpr int most_mounted = 5000;

inline constexpr quadrille_choice hand_choices[] = {{"right", "Right"}, {"left", "Left"}};

inline constexpr quadrille_parameter dressing_parameters[] = {
    count("cluster-size", "Balloons per cluster", "2 duplet, 3 triplet, 4 quad, 5, 6.", "Balloons")
        .range(least_cluster, most_cluster)
        .standard(4),
    balloon("balloon", "Balloon", "Nominal size.", "Balloons"),
    length("inflated", "Inflated to", "Diameter on the sizer; 0 for what is usual for the nominal size.", "Balloons")
        .range(0, 1.2)
        .display(0.08, 0.6)
        .standard(0)
        .decimals(3),
    ratio("tightness", "Tightness", "Spacing of the clusters: 1 as spheres nest, 0.85 forced, 1.2 loose.", "Balloons")
        .range(0.6, 2)
        .display(0.8, 1.3)
        .standard(1),
    ratio("snug", "Snugness", "How far twisting the necks draws a cluster in: 1 as spheres touch.", "Balloons")
        .range(0.75, 1.3)
        .display(0.8, 1.1)
        .standard(0.88),
    count("clusters", "Clusters", "How many to mount; 0 for as many as fit.", "Balloons")
        .range(0, most_mounted)
        .display(0, 100)
        .standard(0),
    choice("pattern", "Pattern", "How the colours run.", "Pattern", pattern_choices),
    rows("rows", "Rows", "With the pattern \"rows as typed\": slot letters of each cluster, such as AABB ABBA.",
         "Pattern"),
    choice("hand", "Hand",
           "Which way every cluster is turned to the one before, seen from the end you build towards: right is "
           "anticlockwise.",
           "Pattern", hand_choices),
    count("band", "Clusters per band", "Stripes: clusters in a stripe. Zigzag: clusters until the hand changes.",
          "Pattern")
        .range(1, 50)
        .display(1, 12)
        .standard(4),
    slots("slots", "Colour slots", "How many colours the pattern uses.", "Pattern"),
};

/// The values of dressing_parameters.
struct DressingValues {
  ClusterMake make;
  bool inflated_as_usual = true;  ///< the diameter was left to the nominal size
  double tightness = 1;           ///< spacing as a share of the hard one
  int clusters = 0;               ///< 0: as many as fit
  PatternPlan pattern;

  double spacing_m() const { return tightness * hard_spacing(make.size, make.inflated_m); }
  double ring_radius_m() const { return make.snug * hard_ring_radius(make.size, make.inflated_m); }
  /// Over the balloons, of a stack of equal clusters.
  double thickness_m() const { return 2 * ring_radius_m() + make.inflated_m; }
  /// The parameter to blame where the balloons are too large.
  const char* size_key() const { return inflated_as_usual ? "balloon" : "inflated"; }
};

namespace dressing_detail {

inline PatternKind pattern_of(std::string_view key) {
  if (key == "solid") return PatternKind::solid;
  if (key == "zigzag") return PatternKind::zigzag;
  if (key == "stripes") return PatternKind::stripes;
  if (key == "diamond") return PatternKind::diamond;
  return key == "rows" ? PatternKind::rows : PatternKind::spiral;
}

inline PatternPlan read_pattern(const Values& values) {
  PatternPlan plan;
  plan.kind = pattern_of(values.text("pattern"));
  plan.cluster_size = values.whole("cluster-size");
  plan.slots = values.whole("slots");
  plan.hand = values.text("hand") == "left" ? -1 : 1;
  plan.band = values.whole("band");
  if (plan.kind != PatternKind::rows) return plan;
  const auto typed = slot_rows(values.text("rows"), plan.cluster_size);
  if (!typed) throw BadParameter("rows", typed.error);
  if (typed->empty())
    throw BadParameter(
        "rows", "The pattern is \"rows as typed\", but no row is typed: write one word per cluster, such as AABB.");
  for (const SlotRow& row : *typed)
    for (const std::uint32_t slot : row)
      if (slot >= static_cast<std::uint32_t>(plan.slots))
        throw BadParameter("rows", std::string("The rows use colour ") + slot_letter(slot) + ", but the piece has " +
                                       std::to_string(plan.slots) + " colour slots: set slots to " +
                                       std::to_string(slot + 1) + " or more.");
  plan.rows = *typed;
  return plan;
}

}  // namespace dressing_detail

/// The inflated diameter [m] of a balloon of nominal size [in]: as asked, or what is usual where 0 is asked. Throws
/// BadParameter, blaming `key`, where such a balloon cannot be inflated to it.
inline double inflated_diameter(double nominal_in, double asked_m, const char* key) {
  const double nominal_m = nominal_in * metres_per_inch;
  if (asked_m == 0) return usual_inflated_m(nominal_in);
  if (asked_m > 1.02 * nominal_m || asked_m < 0.25 * nominal_m)
    throw BadParameter(key, "A balloon of nominal size " + print_number(nominal_in) + " in cannot be inflated to " +
                                print_both(asked_m) + ": from " + print_at_least(0.25 * nominal_m) + " to " +
                                print_at_most(nominal_m) + " is possible.");
  return asked_m;
}

/// Throws BadParameter for a value that cannot be used by itself.
inline DressingValues read_dressing(const Values& values) {
  DressingValues dressing;
  dressing.make.size = values.whole("cluster-size");
  dressing.make.nominal_in = values.number("balloon");
  dressing.make.inflated_m = inflated_diameter(dressing.make.nominal_in, values.number("inflated"), "inflated");
  dressing.make.snug = values.number("snug");
  dressing.inflated_as_usual = values.number("inflated") == 0;
  dressing.tightness = values.number("tightness");
  dressing.clusters = values.whole("clusters");
  dressing.pattern = dressing_detail::read_pattern(values);
  return dressing;
}

inline constexpr double joints_part_below = 0.75;  ///< tightness; common practice, no source
inline constexpr double forced_below = 0.9;        ///< tightness; common practice, no source

inline void warn(Piece& piece, const char* key, std::string text) {
  piece.messages.push_back({Severity::warning, key, std::move(text)});
}

/// Warns of forced packing.
inline void warn_of_tightness(Piece& piece, const DressingValues& dressing) {
  if (dressing.tightness < forced_below)
    warn(piece, "tightness",
         "At a tightness of " + print_fixed(dressing.tightness, 2) +
             " the packing is forced: it pushes rod joints apart and opens gaps elsewhere. Tape every joint, or use "
             "0.95 or more.");
}

/// Refuses more clusters than anybody mounts, and than `clusters` can ask for.
inline void refuse_too_many(const Piece& piece, const DressingValues& dressing) {
  if (piece.clusters.size() > most_mounted)
    throw Infeasible(dressing.size_key(),
                     std::to_string(piece.clusters.size()) + " clusters of these balloons fit: at most " +
                         std::to_string(most_mounted) + " are mounted. Use a larger balloon, or set clusters.");
}

/// Warns where the clusters that stand in `piece` do not carry the pattern that was asked for.
inline void warn_of_pattern(Piece& piece, const DressingValues& dressing) {
  for (const PatternBreak& found : pattern_breaks(laid_clusters(piece), dressing.pattern))
    warn(piece, "pattern", found.text);
}

/// Notes pattern parameters that were changed and have no effect with the pattern that was chosen.
inline void note_pattern_without_effect(Piece& piece, const Values& values, const PatternPlan& pattern) {
  const PatternKind kind = pattern.kind;
  if (kind != PatternKind::rows)
    note_without_effect(piece, values, "rows", "Rows are typed, but the pattern is another one: they have no effect.");
  if (kind != PatternKind::stripes && kind != PatternKind::zigzag)
    note_without_effect(piece, values, "band", "Only stripes and zigzag have bands: clusters per band has no effect.");
  if (kind == PatternKind::solid || kind == PatternKind::stripes || kind == PatternKind::diamond)
    note_without_effect(piece, values, "hand",
                        "This pattern looks the same whichever hand the clusters are turned to.");
}

/// Notes colour slots that no balloon bears.
inline void note_unused_slots(Piece& piece, int slots) {
  std::vector<bool> used(most_slots);
  for (const Balloon& balloon : piece.balloons) used[balloon.slot] = true;
  std::string unused;
  for (int slot = 0; slot < slots; ++slot)
    if (!used[static_cast<std::size_t>(slot)])
      unused += (unused.empty() ? "" : ", ") + std::string(1, slot_letter(static_cast<std::uint32_t>(slot)));
  if (!unused.empty() && !piece.balloons.empty())
    piece.messages.push_back({Severity::note, "slots", "The pattern does not use colour slot " + unused + "."});
}

/// Facts of a stack of equal clusters: tightness, snug, spacing, ring radius, thickness, counts, balloons per length.
inline void add_dressing_facts(Piece& piece, const DressingValues& dressing) {
  const auto add = [&](const char* key, double number) { piece.facts.push_back({key, number}); };
  const auto clusters = static_cast<double>(piece.clusters.size());
  add("tightness", dressing.tightness);
  add("snug", dressing.make.snug);
  add("inflated_m", dressing.make.inflated_m);
  add("spacing_m", dressing.spacing_m());
  add("ring_radius_m", dressing.ring_radius_m());
  add("thickness_m", dressing.thickness_m());
  add("clusters", clusters);
  add("dressed_m", clusters * dressing.spacing_m());
  add("balloons", static_cast<double>(piece.balloons.size()));
  add("balloons_per_m", dressing.make.size / dressing.spacing_m());
  add("balloons_per_ft", dressing.make.size / dressing.spacing_m() * metres_per_foot);
}

/// The fact of this key, or nothing.
inline std::optional<double> find_fact(const Piece& piece, std::string_view key) {
  const auto found = std::ranges::find(piece.facts, key, &Fact::key);
  return found == piece.facts.end() ? std::nullopt : std::optional(found->number);
}

/// A unit of labour, left out where there is none of it.
inline void add_work_units(Piece& piece, const char* key, const char* label, double quantity) {
  if (quantity > 0) piece.work.push_back({key, label, quantity});
}

/// Every third cluster is tied to the frame, with a line round it, and the first and the last. Common practice, no source.
inline double tied_clusters(const Piece& piece) {
  const std::size_t clusters = piece.clusters.size();
  const std::size_t thirds = (clusters + 2) / 3;
  return static_cast<double>(clusters > 0 && (clusters - 1) % 3 != 0 ? thirds + 1 : thirds);
}
inline constexpr double line_per_tied_cluster_m = 0.6;

inline void add_cluster_line(Piece& piece) {
  if (const double tied = tied_clusters(piece); tied > 0)
    piece.supplies.push_back({"cluster-line", "Line, clusters to the frame", "m", tied * line_per_tied_cluster_m});
}

/// Work on balloons and clusters: inflate, tie, make, mount, tie to the frame.
inline void add_cluster_work(Piece& piece) {
  const auto balloons = static_cast<double>(piece.balloons.size()),
             clusters = static_cast<double>(piece.clusters.size());
  add_work_units(piece, "inflate", "Inflate and size a balloon", balloons);
  add_work_units(piece, "tie", "Tie a balloon", balloons);
  add_work_units(piece, "make-cluster", "Make a cluster", clusters);
  add_work_units(piece, "mount-cluster", "Mount a cluster", clusters);
  add_work_units(piece, "tie-to-frame", "Tie a cluster to the frame", tied_clusters(piece));
}

}  // namespace quadrille
