// The parameters that all piece types of clusters share, and what they say once they are read. A piece type puts
// dressing_parameters into its table with joined() and calls read_dressing.
#pragma once

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>

#include "sdk/balloon_size.hpp"
#include "sdk/cluster.hpp"
#include "sdk/number.hpp"
#include "sdk/pattern.hpp"
#include "sdk/piece.hpp"
#include "sdk/units.hpp"

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
        .standard(1)
        .advanced(),
    ratio("snug", "Snugness", "How far twisting the necks draws a cluster in: 1 as spheres touch.", "Balloons")
        .range(0.75, 1.3)
        .display(0.8, 1.1)
        .standard(0.88)
        .advanced(),
    count("clusters", "Clusters", "How many to mount; 0 for as many as fit.", "Balloons")
        .range(0, most_mounted)
        .display(0, 100)
        .standard(0),
    choice("pattern", "Pattern", "How the colours run.", "Pattern", pattern_choices),
    rows("rows", "Rows", "With the pattern \"rows as typed\": slot letters of each cluster, such as AABB ABBA.",
         "Pattern")
        .only_with("pattern=rows"),
    choice("hand", "Hand",
           "Which way every cluster is turned to the one before, seen from the end you build towards: right is "
           "anticlockwise.",
           "Pattern", hand_choices)
        .only_with("pattern=spiral|pattern=zigzag|pattern=rows"),
    count("band", "Clusters per band", "Stripes: clusters in a stripe. Zigzag: clusters until the hand changes.",
          "Pattern")
        .range(1, 50)
        .display(1, 12)
        .standard(4)
        .only_with("pattern=stripes|pattern=zigzag"),
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
  std::uint32_t last = 0;
  for (const SlotRow& row : *typed) last = std::max(last, *std::ranges::max_element(row));
  if (last >= static_cast<std::uint32_t>(plan.slots))
    throw BadParameter("rows",
                       std::string("The rows use colour ") + slot_letter(last) + ", but the piece has " +
                           std::to_string(plan.slots) + " colour slots: set slots to " + std::to_string(last + 1) +
                           " or more.",
                       "slots=" + std::to_string(last + 1));
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

}  // namespace quadrille
