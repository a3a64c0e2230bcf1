// Line to buy: for the lines that secure a piece, and for the one that ties its clusters to each other.
#pragma once

#include "sdk/built.hpp"

namespace quadrille {

/// Line [m] that is cut for a straight run of `run_m`: a tenth more, since it sags and goes round things, and 0.3 m for
/// the knot at each end. 0 for a run of 0 or less. Common practice, no source.
double line_to_cut_m(double run_m);

/// Line [m] that ties the clusters of a piece to each other, cut as line_to_cut_m says: from the centre of one cluster
/// straight to that of the next, in the order of their numbers, and once round each at the necks of its balloons. That
/// turn is a circle inside the ring of balloons: its radius is how far from the cluster's axis they begin, and at least
/// 2 cm, which the rod and the necks fill. 0 for less than two clusters. Common practice, no source.
double clusters_together_m(const Piece& piece);

}  // namespace quadrille
