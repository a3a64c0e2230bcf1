// Finding what lies near a point among things of very different sizes: each lies in a grid as coarse as itself, so that
// one huge thing does not make all the small ones neighbours of each other.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <vector>

namespace quadrille {

template <std::size_t dimensions>
class SizedGrid {
 public:
  using Point = std::array<double, dimensions>;

  /// `size` is above 0 and finite; coordinates are finite and below 1e18 sizes.
  void add(std::size_t item, const Point& point, double size) {
    Level& level = levels_[std::ilogb(size)];
    level[cell_of(point, cell_size(std::ilogb(size)))].push_back(item);
  }

  /// Calls visit(item) for every item of at least `size` (or down to half of it) that lies nearer to `point` along each
  /// axis than its own size, and for some that lie farther; ends as soon as visit returns true, and returns whether it did.
  template <class Visit>
  bool any_near(const Point& point, double size, Visit visit) const {
    for (auto level = levels_.lower_bound(std::ilogb(size)); level != levels_.end(); ++level)
      if (any_around(level->second, cell_of(point, cell_size(level->first)), 0, visit)) return true;
    return false;
  }
  template <class Visit>
  bool any_near(const Point& point, Visit visit) const {
    for (const auto& [size, level] : levels_)
      if (any_around(level, cell_of(point, cell_size(size)), 0, visit)) return true;
    return false;
  }

 private:
  using Cell = std::array<long, dimensions>;
  using Level = std::map<Cell, std::vector<std::size_t>>;

  /// Wider than everything in the grid of things of 2^exponent to twice that.
  static double cell_size(int exponent) { return std::ldexp(2.0, exponent); }

  static Cell cell_of(const Point& point, double size) {
    Cell cell{};
    for (std::size_t axis = 0; axis < dimensions; ++axis) cell[axis] = std::lround(std::floor(point[axis] / size));
    return cell;
  }

  /// In the cells that differ from `cell` by one at most along `axis` and those after it.
  template <class Visit>
  static bool any_around(const Level& level, Cell cell, std::size_t axis, Visit& visit) {
    if (axis < dimensions) {
      --cell[axis];
      for (int step = 0; step < 3; ++step, ++cell[axis])
        if (any_around(level, cell, axis + 1, visit)) return true;
      return false;
    }
    const auto found = level.find(cell);
    if (found == level.end()) return false;
    for (const std::size_t item : found->second)
      if (visit(item)) return true;
    return false;
  }

  std::map<int, Level> levels_;  ///< by the binary exponent of their items' sizes
};

}  // namespace quadrille
