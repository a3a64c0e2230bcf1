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
  double x_m = 0, z_m = 0;         ///< from the centre of the one, with the run: to the right and up
  int steps = 0;                   ///< by how many half steps round the rod it goes; 0 where no colour runs on aslant
  Climb climb = Climb::neither;    ///< to which side it climbs; neither where no colour runs on aslant
};

/// One run from each cluster to the next; none where the chart has no rings. A colour runs on aslant where every balloon
/// that has its like to one side only in the next cluster has it to the same side.
/// The same helix climbs to the same side on both legs of an arch, and to the other where its spine lies flat.
std::vector<FrontRun> front_runs(const Piece& piece, const ClusterChart& chart);

/// The side to which the runs climb where the spine is steeper than 45°: neither where they differ or there are none.
Climb climb_of_legs(const Piece& piece, const ClusterChart& chart);

/// What it matters to which side the clusters are turned.
enum class SideMatters {
  never,     ///< no cluster shows it: each is of one colour, or none is turned
  together,  ///< with all of them turned to the other side the same colours stand at the same places
  each       ///< it is seen of every cluster
};
SideMatters side_matters(const ClusterChart& chart);

}  // namespace quadrille
