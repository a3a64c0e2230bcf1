// Where the clusters of an arch sit, and the balloons they bring.
#pragma once

#include <vector>

#include "plugins/arch/outline.hpp"
#include "sdk/cluster.hpp"
#include "sdk/pattern.hpp"

namespace quadrille::arch {

struct DressingPlan {
  ClusterMake make;
  double tightness = 1;  ///< spacing as a share of the hard one
  double bare_m = 0;     ///< left bare at each foot
  int clusters = 0;      ///< 0: as many as fit
  PatternPlan pattern;

  double spacing_m() const { return tightness * hard_spacing(make.size, make.inflated_m); }
  double ring_radius_m() const { return make.snug * hard_ring_radius(make.size, make.inflated_m); }
  double thickness_m() const { return 2 * ring_radius_m() + make.inflated_m; }
};

struct Dressing {
  std::vector<Cluster> clusters;
  std::vector<Balloon> balloons;
  int most_clusters = 0;  ///< how many would fit
};

/// Arc lengths of the clusters' centres. A cluster takes one spacing of the line, its centre in the middle, so that n
/// clusters dress n × spacing; what is left over is shared by both feet. Round a corner too sharp for their usual
/// spacing one cluster sits at the corner and its neighbours keep the distance at which balloons just clear each other.
/// `most` receives how many would fit; plan.clusters beyond that are not placed.
std::vector<double> cluster_stations(const Outline& outline, const DressingPlan& plan, int& most);

Dressing dress(const Outline& outline, const DressingPlan& plan);

}  // namespace quadrille::arch
