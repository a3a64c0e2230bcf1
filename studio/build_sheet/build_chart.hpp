// The cluster chart on paper, and what belongs to it: running marks, loose balloons, a garland stretch by stretch.
#pragma once

#include <vector>

#include "studio/build_sheet/build_subject.hpp"
#include "studio/paper/flow.hpp"

namespace quadrille {

/// How the clusters are tied and turned, one row for each or, where they repeat, for each of those that do; two of them
/// seen from above. No block where there are no clusters in rings.
std::vector<Block> chart_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// "cluster 12 at 6'": where one should have come by which cluster. No block where stretch_blocks says so.
std::vector<Block> running_mark_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// Toppers and collars: size, colour and place. No block where there are none or where a garland's stretches have them.
std::vector<Block> loose_blocks(const BuildSubject& subject, const Setting& setting, double width);

/// How high the picture of a stretch may be [mm]: so that two go into a column of a lying page with their lists, or higher
/// where that takes no more pages.
inline constexpr double usual_pile = 42, high_pile = 50;

/// Clusters of their own and fillers, by stretches of a foot or half a metre: a picture of each stretch drawn straight, no
/// higher than `pile_height` [mm] but for names beside it, and what is in it. No block where the clusters are rings.
std::vector<Block> stretch_blocks(const BuildSubject& subject, const Setting& setting, double width,
                                  double pile_height = usual_pile);

/// The end from which the clusters are numbered: "the left foot", "the left end".
std::string print_start(const BuildSubject& subject);

/// What the balloons of this size are blown to in the air they are blown in, as printed.
std::string print_sizer(const BuildSubject& subject, double nominal_in, double inflated_m, LengthStyle lengths);

}  // namespace quadrille
