// A piece by stretches of its spine, and marks along it: how far one should have come by which cluster.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "sdk/built.hpp"
#include "studio/making/cluster_chart.hpp"
#include "studio/making/loose_balloons.hpp"

namespace quadrille {

/// What belongs between two places of the spine: indices into ClusterChart::clusters and the loose balloons.
struct MakingStretch {
  double from_m = 0, to_m = 0;
  std::vector<std::size_t> clusters, loose;
};

/// The whole spine in stretches of `step_m` (above 0), the last one shorter; what lies past an end is in the stretch there.
/// Every cluster and loose balloon is in exactly one. One stretch for a piece without a spine; at most 1,000.
std::vector<MakingStretch> stretches_of(const Piece& piece, const ClusterChart& chart,
                                        const std::vector<LooseBalloon>& loose, double step_m);

/// At `at_m` along the spine one is nearest to this cluster.
struct RunningMark {
  double at_m = 0;
  std::uint32_t cluster = 0;
  double cluster_at_m = 0;  ///< of its centre
};

/// At every whole `step_m` (above 0) within the dressed part of the spine, half a cluster's spacing beyond its ends
/// included; none without clusters.
std::vector<RunningMark> running_marks(const Piece& piece, const ClusterChart& chart, double step_m);

}  // namespace quadrille
