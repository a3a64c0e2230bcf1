// Finds balls near a place in time that does not grow with their number.
#pragma once

#include <cmath>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "sdk/vec.hpp"

namespace quadrille::garland {

/// Cells of one width; what lies within a width of a place lies in its 27 cells. Visits come in a fixed order: cells by
/// x, y, z, within a cell in the order of insertion.
class Grid {
 public:
  explicit Grid(double width) : width_(width) {}

  void insert(const Vec3& place, std::uint32_t index) {
    cells_[key_of(cell(place.x()), cell(place.y()), cell(place.z()))].push_back(index);
  }

  template <class Visit>
  void near(const Vec3& place, Visit visit) const {
    const std::int64_t x = cell(place.x()), y = cell(place.y()), z = cell(place.z());
    for (std::int64_t i = x - 1; i <= x + 1; ++i)
      for (std::int64_t j = y - 1; j <= y + 1; ++j)
        for (std::int64_t k = z - 1; k <= z + 1; ++k)
          if (const auto found = cells_.find(key_of(i, j, k)); found != cells_.end())
            for (const std::uint32_t index : found->second) visit(index);
  }

 private:
  std::int64_t cell(double coordinate) const { return static_cast<std::int64_t>(std::floor(coordinate / width_)); }
  static std::uint64_t key_of(std::int64_t x, std::int64_t y, std::int64_t z) {
    // 21 bits each reach a hundred thousand cells to either side.
    constexpr std::uint64_t mask = (1u << 21) - 1;
    return ((static_cast<std::uint64_t>(x) & mask) << 42) | ((static_cast<std::uint64_t>(y) & mask) << 21) |
           (static_cast<std::uint64_t>(z) & mask);
  }

  double width_;
  std::unordered_map<std::uint64_t, std::vector<std::uint32_t>> cells_;
};

}  // namespace quadrille::garland
