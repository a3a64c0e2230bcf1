// The hand of a spiral as one sees it: which way the colours climb on the front of the built piece.
#pragma once

#include <cstddef>
#include <vector>

#include "sdk/built.hpp"
#include "studio/making/cluster_chart.hpp"

namespace quadrille {

enum class Climb { right, left, neither };

/// How a run of one colour goes from one cluster to the next across the front of the piece.
struct FrontRun {
  std::uint32_t from = 0, to = 0;  ///< cluster numbers
  double x_m = 0, z_m = 0;         ///< from the centre of the one, with the turn: to the right and up
  Climb climb = Climb::neither;    ///< to which side it climbs; neither where it is not turned
};

/// One run from each cluster to the next, as the balloon that faces the front moves; none where the chart has no rings.
/// The same helix climbs to the same side on both legs of an arch, and to the other where its spine lies flat.
std::vector<FrontRun> front_runs(const Piece& piece, const ClusterChart& chart);

/// The side to which the runs climb where the spine is steeper than 45°: neither where they differ or are not turned.
Climb climb_of_legs(const Piece& piece, const ClusterChart& chart);

/// True where it is seen which way a cluster is turned: some cluster has more than one colour.
bool shows_turns(const ClusterChart& chart);

}  // namespace quadrille
