// A curve in space by arc length: the spine of a piece, or the line of its frame.
#pragma once

#include <algorithm>
#include <cassert>
#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include "sdk/built.hpp"
#include "sdk/vec.hpp"

namespace quadrille {

/// A polyline with its arc length. Lengths in metres. `at` below 0 or beyond the length is taken as the end there.
class Curve {
 public:
  /// At least two points, none equal to the one before it.
  explicit Curve(std::vector<Vec3> points) : points_(std::move(points)), at_{0.0} {
    assert(points_.size() >= 2);
    for (std::size_t i = 1; i < points_.size(); ++i) at_.push_back(at_.back() + (points_[i] - points_[i - 1]).norm());
  }
  /// With the arc length of each point given: for points sampled from a curve whose length is known better than the
  /// sum of the chords. `at` rises from 0 and has one entry per point.
  Curve(std::vector<Vec3> points, std::vector<double> at) : points_(std::move(points)), at_(std::move(at)) {
    assert(points_.size() >= 2 && points_.size() == at_.size());
  }

  double length_m() const { return at_.back(); }
  std::span<const Vec3> points() const { return points_; }
  std::span<const double> stations() const { return at_; }

  Vec3 point(double at_m) const {
    const auto [index, share] = locate(at_m);
    return points_[index] + share * (points_[index + 1] - points_[index]);
  }
  /// Unit tangent, turning evenly between the middles of the segments so that it has no jumps on a fine polyline.
  Vec3 tangent(double at_m) const {
    const auto [index, share] = locate(at_m);
    const Vec3 here = direction(index);
    if (share < 0.5)
      return index == 0 ? here : ((0.5 + share) * here + (0.5 - share) * direction(index - 1)).normalized();
    const bool last = index + 2 == points_.size();
    return last ? here : ((1.5 - share) * here + (share - 0.5) * direction(index + 1)).normalized();
  }

  /// Points and arc lengths to the nanometre.
  std::vector<SpinePoint> spine() const {
    std::vector<SpinePoint> spine;
    for (std::size_t i = 0; i < points_.size(); ++i) spine.push_back({to_nanometre(at_[i]), to_nanometre(points_[i])});
    return spine;
  }

 private:
  std::pair<std::size_t, double> locate(double at_m) const {
    const double at = std::clamp(at_m, 0.0, at_.back());
    const auto after = std::upper_bound(at_.begin() + 1, at_.end() - 1, at);
    const auto index = static_cast<std::size_t>(after - at_.begin()) - 1;
    return {index, (at - at_[index]) / (at_[index + 1] - at_[index])};
  }
  Vec3 direction(std::size_t segment) const { return (points_[segment + 1] - points_[segment]).normalized(); }

  std::vector<Vec3> points_;
  std::vector<double> at_;
};

}  // namespace quadrille
