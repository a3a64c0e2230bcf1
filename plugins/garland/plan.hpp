// How many balloons of each size a garland takes: decided once for all seeds.
#pragma once

#include <vector>

#include "plugins/garland/ball.hpp"
#include "plugins/garland/core.hpp"

namespace quadrille::garland {

/// What is laid and how many balloons there are to be.
struct Plan {
  Request request;  ///< with the shares, fillers and tightness to ask for so that what is asked comes out
  Stretch stretch;
  std::vector<long> first;   ///< by size: what the creases are given at first, see add_fillers
  std::vector<long> counts;  ///< by size: how many there are in the end
  double faults = 1e300;     ///< of the one that was packed to find out
  std::vector<Ball> balls;   ///< of a long one that came out well: nothing is left to be packed
};

/// How many balloons a garland takes depends a little on chance where creases run out. So one whose chance is always the
/// same is packed, and what it took is what every other is to take. It is packed again with the shares corrected where
/// creases ran out or large balls had to serve as fillers, and looser where balls press too much, a few times at most.
/// Does not depend on request.seed, but for even garlands so long that chance evens out.
Plan plan_of(const Request& request, const Curve& line);

/// How far the counts miss what is planned, as a share of all balloons, weighed against faults_of; 0 where they miss by
/// three thousandths or less.
double miss_of(const std::vector<Ball>& balls, const std::vector<long>& planned);

/// By how much the worst of the thickness along the line, the part of the line that shows and the mean overlap (which
/// weighs most) exceed what is well: the sum of all, 0 for a garland without fault.
double faults_of(const std::vector<Ball>& balls, const Request& request, const Curve& line);

}  // namespace quadrille::garland
