#include "studio/standing/silhouette.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "studio/standing/power_cell.hpp"
#include "studio/standing/wind.hpp"

namespace quadrille {
namespace {

/// The discs by where their centres lie, about two to a cell.
class DiscGrid {
 public:
  explicit DiscGrid(const std::vector<WindDisc>& discs) : discs_(discs) {
    double most_x = -1e300, most_y = -1e300;
    for (const WindDisc& disc : discs) {
      least_x_ = std::min(least_x_, disc.x);
      least_y_ = std::min(least_y_, disc.y);
      most_x = std::max(most_x, disc.x);
      most_y = std::max(most_y, disc.y);
      largest_ = std::max(largest_, disc.radius);
    }
    const double wide = most_x - least_x_, high = most_y - least_y_;
    const double share = static_cast<double>(discs.size()) / 2;
    side_ = std::max({std::sqrt(wide * high / share), std::max(wide, high) / share, largest_ * 1e-3, 1e-9});
    columns_ = static_cast<int>(wide / side_) + 1;
    rows_ = static_cast<int>(high / side_) + 1;
    cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (std::size_t i = 0; i < discs.size(); ++i) cells_[index(column(discs[i].x), row(discs[i].y))].push_back(i);
  }

  double largest() const { return largest_; }
  double side() const { return side_; }
  int column(double x) const { return std::clamp(static_cast<int>((x - least_x_) / side_), 0, columns_ - 1); }
  int row(double y) const { return std::clamp(static_cast<int>((y - least_y_) / side_), 0, rows_ - 1); }
  int rings() const { return std::max(columns_, rows_); }

  /// Calls `see(number)` for every disc in the cells `ring` steps away from the cell (column, row).
  template <class See>
  void in_ring(int column, int row, int ring, See&& see) const {
    for (int r = std::max(0, row - ring); r <= std::min(rows_ - 1, row + ring); ++r) {
      const bool whole = r == row - ring || r == row + ring;
      for (int c = column - ring; c <= column + ring; c += whole || ring == 0 ? 1 : 2 * ring) {
        if (c < 0 || c >= columns_) continue;
        for (const std::size_t number : cells_[index(c, r)]) see(number);
      }
    }
  }

 private:
  std::size_t index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(column);
  }

  const std::vector<WindDisc>& discs_;
  double least_x_ = 1e300, least_y_ = 1e300, largest_ = 0, side_ = 1;
  int columns_ = 1, rows_ = 1;
  std::vector<std::vector<std::size_t>> cells_;
};

double share_of(std::size_t own, const std::vector<WindDisc>& discs, const DiscGrid& grid, double shelter_m) {
  const WindDisc& disc = discs[own];
  if (!(disc.radius > 0)) return 0;
  PowerCell cell(disc.radius);
  bool covered = false;
  const auto cut_by = [&](std::size_t other) {
    const WindDisc& cutting = discs[other];
    if (other == own || covered || !(cutting.radius > 0)) return;
    if (std::abs(cutting.depth - disc.depth) > shelter_m) return;
    const Eigen::Vector2d way(cutting.x - disc.x, cutting.y - disc.y);
    const double apart = way.norm();
    const double powers = disc.radius * disc.radius - cutting.radius * cutting.radius;
    if (apart <= 1e-12 * disc.radius)
      covered = powers < 0 || (powers == 0 && other < own);
    else
      cell.cut(way / apart, (apart * apart + powers) / (2 * apart));
  };
  const double least_powers = disc.radius * disc.radius - grid.largest() * grid.largest();
  const int column = grid.column(disc.x), row = grid.row(disc.y);
  for (int ring = 0; ring < grid.rings() && !covered && !cell.is_empty(); ++ring) {
    // What is still to come lies at least this far away, and the cut it makes lies no nearer than `least`.
    const double away = (ring - 1) * grid.side();
    if (away > 0 && (away * away + least_powers) / (2 * away) >= cell.reach()) break;
    grid.in_ring(column, row, ring, cut_by);
  }
  return covered || cell.is_empty() ? 0 : cell.area();
}

/// The part of [0, 1] of the segment from a to b that lies in no disc, as a share.
double bare_share(const Eigen::Vector2d& a, const Eigen::Vector2d& b, double depth, const std::vector<WindDisc>& discs,
                  double shelter_m) {
  const Eigen::Vector2d along = b - a;
  const double a2 = along.squaredNorm();
  std::vector<std::pair<double, double>> covered;
  for (const WindDisc& disc : discs) {
    if (std::abs(disc.depth - depth) > shelter_m) continue;
    const Eigen::Vector2d from = a - Eigen::Vector2d(disc.x, disc.y);
    const double outside = from.squaredNorm() - disc.radius * disc.radius;
    if (a2 <= 1e-18) {  // seen end on
      if (outside < 0) return 0;
      continue;
    }
    const double half = from.dot(along), under = half * half - a2 * outside;
    if (under <= 0) continue;
    const double enter = std::max(0.0, (-half - std::sqrt(under)) / a2);
    const double leave = std::min(1.0, (-half + std::sqrt(under)) / a2);
    if (enter < leave) covered.emplace_back(enter, leave);
  }
  std::ranges::sort(covered);
  double bare = 1, until = 0;
  for (const auto& [enter, leave] : covered) {
    bare -= std::max(0.0, leave - std::max(enter, until));
    until = std::max(until, leave);
  }
  return std::max(0.0, bare);
}

}  // namespace

std::vector<double> union_shares(const std::vector<WindDisc>& discs, double shelter_m) {
  std::vector<double> shares(discs.size(), 0.0);
  if (discs.empty()) return shares;
  const DiscGrid grid(discs);
  for (std::size_t i = 0; i < discs.size(); ++i) shares[i] = share_of(i, discs, grid, shelter_m);
  return shares;
}

Silhouette silhouette(const Piece& piece, double direction_deg, double shelter_m) {
  const Vec3 way = wind_way(direction_deg);
  const Vec3 across(-way.y(), way.x(), 0);
  const auto seen = [&](const Vec3& point) { return Eigen::Vector2d(point.dot(across), point.z()); };

  std::vector<WindDisc> discs;
  discs.reserve(piece.balloons.size());
  for (const Balloon& balloon : piece.balloons) {
    const Eigen::Vector2d centre = seen(balloon.centre);
    discs.push_back({centre.x(), centre.y(), balloon.diameter_m / 2, balloon.centre.dot(way)});
  }
  Silhouette result;
  result.balloons_m2 = union_shares(discs, shelter_m);
  for (const double share : result.balloons_m2) result.total_m2 += share;
  for (const FrameMember& member : piece.frame.members) {
    const Vec3 &from = piece.frame.nodes[member.from], &to = piece.frame.nodes[member.to];
    const double share = bare_share(seen(from), seen(to), (from + to).dot(way) / 2, discs, shelter_m);
    result.bare_m.push_back(share * (to - from).norm());
    result.total_m2 += share * (seen(to) - seen(from)).norm() * member.outer_m;
  }
  return result;
}

}  // namespace quadrille
