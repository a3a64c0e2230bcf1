#include "plugins/garland/sizes.hpp"

#include <algorithm>
#include <cmath>

#include "plugins/garland/relax.hpp"
#include "sdk/cluster.hpp"

namespace quadrille::garland {
namespace {

/// How much of the section that necks let them reach the balls of the core fill, before the fillers come; more where all
/// are of one size and nest. Found by trying.
constexpr double core_density = 0.57, core_density_alike = 0.68;

/// Area of a disc of radius `radius` on that side of a straight line `offset` beyond its centre that has the centre.
double disc_before(double radius, double offset) {
  if (offset >= radius) return pi * radius * radius;
  const double half_chord = std::sqrt(radius * radius - offset * offset);
  return to_picounit(radius * radius * (pi - std::acos(std::clamp(offset / radius, -1.0, 1.0))) + offset * half_chord);
}

/// How readily a size goes where the garland is this thick, from 0 to 1.
double liking(double diameter, double thickness) {
  if (diameter > fits_taper * thickness) return 0;
  const double part = diameter / (0.6 * thickness), square = part * part;
  return 1 / (1 + square * square);
}

}  // namespace

std::size_t SizeSequence::next(const std::vector<double>& shares) {
  std::size_t best = 0;
  double most = -1e300;
  for (std::size_t i = 0; i < owed_.size(); ++i) {
    owed_[i] += shares[i];
    if (shares[i] <= 0 || owed_[i] <= most + 1e-12) continue;
    most = owed_[i];
    best = i;
  }
  owed_[best] -= 1;
  return best;
}

void SizeSequence::take_back(std::size_t size) { owed_[size] += 1; }

std::vector<double> filler_shares(const Request& request) {
  std::vector<double> shares(request.mix.size());
  double left = request.filler;
  for (std::size_t i = request.mix.size(); i-- > 0 && left > 0;) {
    // A core of the larger sizes must remain.
    shares[i] = std::min(i == 0 ? 0.6 * request.mix[i].share : request.mix[i].share, left);
    left -= shares[i];
  }
  return shares;
}

std::vector<double> core_shares(const Request& request) {
  std::vector<double> shares = filler_shares(request);
  double total = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) total += shares[i] = request.mix[i].share - shares[i];
  for (double& share : shares) share /= total;
  return shares;
}

double filling_of(const Request& request, double diameter, double thickness) {
  const double reach = std::min(thickness / 2, (1 + farthest_share) * diameter / 2);
  const double room = request.wall ? std::min(request.wall_room, reach) : reach;
  const double density = request.mix.size() == 1 && !request.wall ? core_density_alike : core_density;
  const double area = disc_before(reach, room);
  return pi / 6 * diameter * diameter * diameter / (density * area);
}

double cluster_room(const Request& request, double mean_diameter, double filling) {
  return request.tightness * std::max(hard_spacing(request.core, mean_diameter), filling);
}

CoreSizes::CoreSizes(const Request& request) {
  const std::vector<double> whole = core_shares(request);
  const std::size_t sizes = whole.size();
  stations_.assign(request.thickness == request.thickness_end ? 1 : 48, whole);
  if (stations_.size() == 1) return;
  const auto thickness_of = [&](std::size_t k) {
    return request.thickness_at((static_cast<double>(k) + 0.5) / static_cast<double>(stations_.size()));
  };
  for (std::size_t k = 0; k < stations_.size(); ++k)
    for (std::size_t i = 0; i < sizes; ++i) stations_[k][i] *= liking(request.mix[i].inflated_m, thickness_of(k));
  // Proportional fitting: by turns each station adds up to 1 and each size to its share of all balloons (Deming and
  // Stephan 1940). How many balloons a station takes follows from their sizes.
  for (int round = 0; round < 60; ++round) {
    std::vector<double> given(sizes);
    double all = 0;
    for (std::size_t k = 0; k < stations_.size(); ++k) {
      std::vector<double>& shares = stations_[k];
      double sum = 0, mean = 0, filling = 0;
      for (const double share : shares) sum += share;
      if (sum <= 0) shares.back() = sum = 1;
      for (std::size_t i = 0; i < sizes; ++i) {
        shares[i] /= sum;
        const double d = request.mix[i].inflated_m;
        mean += shares[i] * d;
        filling += shares[i] * filling_of(request, d, thickness_of(k));
      }
      const double balloons = 1 / cluster_room(request, mean, request.core * filling);
      for (std::size_t i = 0; i < sizes; ++i) given[i] += balloons * shares[i];
      all += balloons;
    }
    if (round == 59) break;
    for (std::vector<double>& shares : stations_)
      for (std::size_t i = 0; i < sizes; ++i)
        if (given[i] > 0) shares[i] *= whole[i] * all / given[i];
  }
  for (std::vector<double>& shares : stations_)
    for (double& share : shares) share = to_picounit(share);
}

const std::vector<double>& CoreSizes::at(double share) const {
  const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(stations_.size());
  return stations_[std::min(static_cast<std::size_t>(place), stations_.size() - 1)];
}

}  // namespace quadrille::garland
