// One cell of a power diagram, cut out of a disc about the origin, half-plane by half-plane.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include <Eigen/Core>

namespace quadrille {

/// All lengths are in one unit, areas in its square.
class PowerCell {
 public:
  using Point = Eigen::Vector2d;

  explicit PowerCell(double radius) : radius_(radius), reach_(radius) {
    const double side = 2 * radius;
    corners_ = {{-side, -side}, {side, -side}, {side, side}, {-side, side}};
  }

  bool is_empty() const { return corners_.empty(); }
  /// Nothing of the cell lies farther than this from the origin.
  double reach() const { return reach_; }

  /// Keeps the points p with p·normal <= distance; `normal` is a unit vector.
  void cut(const Point& normal, double distance) {
    if (distance >= reach_) return;
    if (distance <= -radius_) return corners_.clear();
    kept_.clear();
    for (std::size_t i = 0; i < corners_.size(); ++i) {
      const Point &a = corners_[i], &b = corners_[(i + 1) % corners_.size()];
      const double over_a = a.dot(normal) - distance, over_b = b.dot(normal) - distance;
      if (over_a <= 0) kept_.push_back(a);
      if ((over_a <= 0) != (over_b <= 0)) kept_.push_back(a + over_a / (over_a - over_b) * (b - a));
    }
    corners_.swap(kept_);
    double farthest = 0;
    for (const Point& corner : corners_) farthest = std::max(farthest, corner.squaredNorm());
    reach_ = std::min(radius_, std::sqrt(farthest));
  }

  /// Area of what is left of the disc.
  double area() const {
    double twice = 0;
    for (std::size_t i = 0; i < corners_.size(); ++i)
      twice += twice_area_seen(corners_[i], corners_[(i + 1) % corners_.size()]);
    return std::max(0.0, twice / 2);
  }

 private:
  static double cross(const Point& a, const Point& b) { return a.x() * b.y() - a.y() * b.x(); }
  double twice_sector(const Point& a, const Point& b) const {
    return radius_ * radius_ * std::atan2(cross(a, b), a.dot(b));
  }

  /// Twice the signed area of the disc between the rays to `a` and `b`, on this side of the edge from a to b.
  double twice_area_seen(const Point& a, const Point& b) const {
    const Point along = b - a;
    const double a2 = along.squaredNorm();
    if (a2 == 0) return 0;
    const double half = a.dot(along), outside = a.squaredNorm() - radius_ * radius_;
    const double under = half * half - a2 * outside;
    if (under <= 0) return twice_sector(a, b);
    const double root = std::sqrt(under);
    const double enter = (-half - root) / a2, leave = (-half + root) / a2;
    if (enter >= 1 || leave <= 0) return twice_sector(a, b);
    const Point in = enter > 0 ? Point(a + enter * along) : a, out = leave < 1 ? Point(a + leave * along) : b;
    return (enter > 0 ? twice_sector(a, in) : 0) + cross(in, out) + (leave < 1 ? twice_sector(out, b) : 0);
  }

  double radius_, reach_;
  std::vector<Point> corners_, kept_;
};

}  // namespace quadrille
