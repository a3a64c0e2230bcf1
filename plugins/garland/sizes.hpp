// Which sizes of the mix go where: evenly in turn, and where a taper is thin the smaller ones.
#pragma once

#include <utility>
#include <vector>

#include "plugins/garland/ball.hpp"

namespace quadrille::garland {

/// Where a garland tapers, no balloon goes where its diameter is a larger share of the thickness.
inline constexpr double fits_taper = 0.93;

/// The size of each balloon of a share of the mix (largest first), spread so evenly that every stretch has its part.
/// The sequence is endless: next() gives one after the other.
class SizeSequence {
 public:
  explicit SizeSequence(std::size_t sizes) : owed_(sizes) {}
  /// `shares` add up to 1 and may differ from call to call. A size whose share is 0 is never given.
  std::size_t next(const std::vector<double>& shares);
  /// For one that was given but not used.
  void take_back(std::size_t size);

 private:
  std::vector<double> owed_;
};

/// The parts of the mix that fillers take, by size: the smallest sizes first, `request.filler` in all.
std::vector<double> filler_shares(const Request& request);

/// The parts of the mix that the core takes, by size, adding up to 1.
std::vector<double> core_shares(const Request& request);

/// Shares of the sizes in the core along the line: on the whole those of core_shares, at each place only what fits into
/// the thickness there and rather the smaller ones where it is thin, as decorators do.
class CoreSizes {
 public:
  explicit CoreSizes(const Request& request);
  /// At a share of the line from 0 to 1; adds up to 1.
  const std::vector<double>& at(double share) const;

 private:
  std::vector<std::vector<double>> stations_;
};

/// Arc length [m] that a cluster of these balloons takes on the line where the garland is `thickness` thick: as its
/// balloons nest, but no less than what they fill of the garland's section.
double cluster_room(const Request& request, double mean_diameter, double filling);

/// Arc length [m] that a ball of this diameter [m] would fill of the section that its neck lets it reach, alone.
double filling_of(const Request& request, double diameter, double thickness);

}  // namespace quadrille::garland
