// The work on balloons and clusters, and the line they are tied to the frame with.
#pragma once

#include <cstddef>

#include "sdk/piece.hpp"

namespace quadrille {

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
