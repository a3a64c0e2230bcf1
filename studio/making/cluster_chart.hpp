// The cluster chart: which balloons each cluster is tied of, in which order, and how it is turned when it is mounted.
// Read off the balloons as they stand, so that whoever follows it gets the piece that was drawn.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sdk/built.hpp"

namespace quadrille {

/// One balloon of a cluster, as it is picked from the bag and the sizer.
struct ChartBalloon {
  std::uint32_t slot = 0;
  double nominal_in = 0, inflated_m = 0;  ///< inflated to the nearest millimetre
  Role role = Role::body;
  bool operator==(const ChartBalloon&) const = default;
};

struct ChartCluster {
  std::uint32_t number = 0;
  double at_m = 0;                     ///< of its centre along the spine
  std::vector<ChartBalloon> balloons;  ///< in the order of their places, anticlockwise seen from the spine's far end
  /// How it is turned against the cluster before it: by how many times 180°/n its first balloon stands farther round,
  /// anticlockwise (positive) or clockwise seen from the spine's far end; -n < it <= n. Nothing for the first cluster, and
  /// where the chart has no rings.
  std::optional<int> half_steps;
};

struct ClusterChart {
  std::vector<ChartCluster> clusters;  ///< in the order of their numbers
  /// Every cluster is an even ring of equal balloons about its axis, as many in each, turned by whole half steps: what
  /// spirals and stripes are made of. Otherwise each cluster is a handful of its own.
  bool rings = false;
  /// Where the first balloon of the first cluster stands: angle from the front, anticlockwise seen from the spine's far
  /// end. 0 where the chart has no rings.
  double start_rad = 0;
  /// After how many clusters balloons and turns begin anew; 0 where they never do twice. The turn of the very first
  /// cluster, which has none, counts as any.
  std::size_t repeat = 0;
  std::size_t colour_repeat = 0;  ///< the same of colours and turns alone, whatever the sizes
  /// The two legs mirror each other, colours, sizes and places: cluster k from the last is the mirror image of cluster k.
  bool mirrored = false;
};

/// The chart of what stands in `piece`; balloons of no cluster are not in it. To within 2° and a millimetre.
ClusterChart cluster_chart(const Piece& piece);

/// The letters of its colours, place by place: "ABAB". A slot beyond the alphabet is a question mark.
std::string letters_of(const ChartCluster& cluster);

/// "1/8 turn right", "3/10 turn left", "1/2 turn"; "not turned" for 0. Right is anticlockwise seen from the spine's far
/// end: what faces the front goes to the right on a spine that rises. `balloons` in the cluster: 1 or more.
std::string print_turn(int half_steps, std::size_t balloons);

/// Where a balloon at this angle from the front stands, seen from the spine's far end with the front towards oneself:
/// "front", "front right", "right"… to the nearest eighth of a turn.
std::string print_bearing(double angle_rad);

}  // namespace quadrille
