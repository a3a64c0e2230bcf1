// Finds balls near a place in time that does not grow with their number.
#pragma once

#include <bit>
#include <cmath>
#include <cstdint>
#include <vector>

#include "sdk/vec.hpp"

namespace quadrille::garland {

/// Cells of one width; what lies within a width of a place lies in its 27 cells. Visits come in a fixed order: cells by
/// x, y, z, within a cell the latest first. A visit returns true to end the search; `near` and `near_seen` then do too.
class Grid {
 public:
  explicit Grid(double width, std::size_t expected = 64)
      : per_width_(1 / width), heads_(std::bit_ceil(expected < 32 ? 64 : 2 * expected), none) {
    entries_.reserve(expected);
  }

  void insert(const Vec3& place, std::uint32_t index) {
    if (2 * entries_.size() >= heads_.size()) grow();
    entries_.push_back({key_of(cell(place.x()), cell(place.y()), cell(place.z())), index, none});
    link(static_cast<std::uint32_t>(entries_.size() - 1));
  }

  template <class Visit>
  bool near(const Vec3& place, Visit visit) const {
    const std::int64_t x = cell(place.x()), y = cell(place.y()), z = cell(place.z());
    for (std::int64_t i = x - 1; i <= x + 1; ++i)
      for (std::int64_t j = y - 1; j <= y + 1; ++j)
        for (std::int64_t k = z - 1; k <= z + 1; ++k)
          if (visit_cell(key_of(i, j, k), visit)) return true;
    return false;
  }

  /// The same for a grid of places that all have y = 0: the elevation.
  template <class Visit>
  bool near_seen(const Vec3& place, Visit visit) const {
    const std::int64_t x = cell(place.x()), z = cell(place.z());
    for (std::int64_t i = x - 1; i <= x + 1; ++i)
      for (std::int64_t k = z - 1; k <= z + 1; ++k)
        if (visit_cell(key_of(i, 0, k), visit)) return true;
    return false;
  }

 private:
  static constexpr std::uint32_t none = ~0u;
  struct Entry {
    std::uint64_t key;
    std::uint32_t index, next;
  };

  std::int64_t cell(double coordinate) const {
    // The whole number below; a cast rounds to zero.
    const double scaled = coordinate * per_width_;
    const auto whole = static_cast<std::int64_t>(scaled);
    return whole - (static_cast<double>(whole) > scaled ? 1 : 0);
  }
  static std::uint64_t key_of(std::int64_t x, std::int64_t y, std::int64_t z) {
    // 21 bits each reach a million cells to either side.
    constexpr std::uint64_t mask = (1u << 21) - 1;
    return ((static_cast<std::uint64_t>(x) & mask) << 42) | ((static_cast<std::uint64_t>(y) & mask) << 21) |
           (static_cast<std::uint64_t>(z) & mask);
  }
  std::size_t head_of(std::uint64_t key) const {
    // Fibonacci hashing: the high bits of a product with 2^64 over the golden ratio are spread evenly.
    return static_cast<std::size_t>((key * 0x9E3779B97F4A7C15u) >> (64 - std::countr_zero(heads_.size())));
  }
  void link(std::uint32_t entry) {
    std::uint32_t& head = heads_[head_of(entries_[entry].key)];
    entries_[entry].next = head;
    head = entry;
  }
  void grow() {
    heads_.assign(2 * heads_.size(), none);
    for (std::uint32_t i = 0; i < entries_.size(); ++i) link(i);
  }
  template <class Visit>
  bool visit_cell(std::uint64_t key, Visit& visit) const {
    for (std::uint32_t i = heads_[head_of(key)]; i != none; i = entries_[i].next)
      if (entries_[i].key == key && visit(entries_[i].index)) return true;
    return false;
  }

  double per_width_;
  std::vector<std::uint32_t> heads_;
  std::vector<Entry> entries_;
};

}  // namespace quadrille::garland
