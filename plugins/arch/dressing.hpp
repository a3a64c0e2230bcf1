// Where the clusters of an arch sit, and the balloons they bring.
#pragma once

#include <vector>

#include "plugins/arch/outline.hpp"
#include "sdk/dressing.hpp"

namespace quadrille::arch {

struct DressingPlan : DressingValues {
  double bare_m = 0;  ///< left bare at each foot
};

struct Dressing {
  std::vector<Cluster> clusters;
  std::vector<Balloon> balloons;
  int most_clusters = 0;  ///< how many would fit
};

/// Arc lengths of the clusters' centres. A cluster takes one spacing of the line, its centre in the middle, so that n
/// clusters dress n × spacing; what is left over is shared by both feet. Round a corner too sharp for their usual
/// spacing one cluster sits at the corner and its neighbours keep the distance at which balloons just clear each other;
/// a corner within the bare ends gets none.
/// `most` receives how many would fit; plan.clusters beyond that are not placed.
std::vector<double> cluster_stations(const Outline& outline, const DressingPlan& plan, int& most);

/// The least radius of a corner [m, whole centimetres] round which the clusters follow each other.
double least_corner_m(const DressingPlan& plan);

Dressing dress(const Outline& outline, const DressingPlan& plan);

}  // namespace quadrille::arch
