#include "studio/arrange/picking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "sdk/hidden.hpp"

namespace quadrille {
namespace {

struct FlatPoint {
  double x = 0, z = 0;
};

double from_segment(FlatPoint p, FlatPoint a, FlatPoint b) {
  const double dx = b.x - a.x, dz = b.z - a.z, square = dx * dx + dz * dz;
  const double share = square > 0 ? std::clamp(((p.x - a.x) * dx + (p.z - a.z) * dz) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - share * dx, p.z - a.z - share * dz);
}

/// True where the balloon shows at a point; the taper to its neck belongs to it.
bool covers(const Balloon& balloon, FlatPoint p) {
  return hides(balloon, {p.x, std::numeric_limits<double>::max() / 4, p.z});
}

/// Calls visit(from, to, half width, depth) for each rod and each plate, in the piece's frame, until it returns true.
template <class Visit>
bool any_bar(const Piece& piece, Visit visit) {
  const auto& nodes = piece.frame.nodes;
  const auto flat = [](const Vec3& v) { return FlatPoint{v.x(), v.z()}; };
  for (const FrameMember& member : piece.frame.members) {
    if (member.from >= nodes.size() || member.to >= nodes.size()) continue;
    const Vec3 &from = nodes[member.from], &to = nodes[member.to];
    if (visit(flat(from), flat(to), member.outer_m / 2, (from.y() + to.y()) / 2)) return true;
  }
  for (const Support& support : piece.supports) {
    if (support.kind != SupportKind::plate || support.node >= nodes.size()) continue;
    const Vec3& node = nodes[support.node];
    const double half = support.width_m / 2;
    if (visit(FlatPoint{node.x() - half, node.z()}, FlatPoint{node.x() + half, node.z()}, 0.0, node.y())) return true;
  }
  return false;
}

/// Depth [m] in the piece's frame at which it shows at a point; nothing where it does not.
std::optional<double> depth_at(const Piece& piece, FlatPoint p, double reach_m) {
  std::optional<double> nearest;
  const auto take = [&](double depth) { nearest = nearest ? std::min(*nearest, depth) : depth; };
  for (const Balloon& balloon : piece.balloons)
    if (covers(balloon, p)) take(balloon.centre.y());
  any_bar(piece, [&](FlatPoint from, FlatPoint to, double half, double depth) {
    if (from_segment(p, from, to) <= half + reach_m) take(depth);
    return false;
  });
  return nearest;
}

bool is_inside(const PieceBox& box, double x, double height) {
  return x >= box.left && x <= box.right && height >= box.floor && height <= box.top;
}

/// True where the segment has a point in the rectangle. Source: the clipping of Liang and Barsky, 1984.
bool crosses(const PieceBox& band, FlatPoint a, FlatPoint b) {
  double enter = 0, leave = 1;
  const auto clip = [&](double from, double way, double least, double most) {
    if (way == 0) return from >= least && from <= most;
    const double one = (least - from) / way, other = (most - from) / way;
    enter = std::max(enter, std::min(one, other));
    leave = std::min(leave, std::max(one, other));
    return enter <= leave;
  };
  return clip(a.x, b.x - a.x, band.left, band.right) && clip(a.z, b.z - a.z, band.floor, band.top);
}

bool touches(const PieceBox& band, const Piece& piece) {
  const auto meets = [&](const Balloon& balloon) {
    const double x = balloon.centre.x(), z = balloon.centre.z();
    const double from_x = x - std::clamp(x, band.left, band.right), from_z = z - std::clamp(z, band.floor, band.top);
    return std::hypot(from_x, from_z) <= balloon.diameter_m / 2;
  };
  return std::ranges::any_of(piece.balloons, meets) ||
         any_bar(piece, [&](FlatPoint from, FlatPoint to, double, double) { return crosses(band, from, to); });
}

PieceBox moved_to_piece(PieceBox band, const PlacedPiece& piece) {
  band.left -= piece.x_m, band.right -= piece.x_m;
  return band;
}

}  // namespace

PieceIds pieces_under(const Area& area, const BuiltEvent& built, double x_m, double height_m, double reach_m) {
  struct Found {
    double depth = 0;
    std::size_t order = 0;
  };
  std::vector<Found> found;
  for (std::size_t i = 0; i < area.pieces.size(); ++i) {
    const PlacedPiece& piece = *area.pieces[i];
    if (piece.hidden) continue;
    if (const BuiltPiece* made = standing_build(piece, built)) {
      const auto depth = depth_at(made->piece, {x_m - piece.x_m, height_m}, reach_m);
      if (depth) found.push_back({piece.y_m + *depth, i});
    } else if (is_inside(box_of(piece, built), x_m, height_m)) {
      found.push_back({piece.y_m, i});
    }
  }
  // Of two at one depth the later one is drawn over the earlier.
  std::ranges::sort(found, [](const Found& a, const Found& b) {
    return std::abs(a.depth - b.depth) > 1e-6 ? a.depth < b.depth : a.order > b.order;
  });
  PieceIds ids;
  for (const Found& one : found) ids.push_back(area.pieces[one.order]->id);
  return ids;
}

std::string next_under(const PieceIds& under, std::string_view selected) {
  if (under.empty()) return {};
  const auto at = std::ranges::find(under, selected);
  if (at == under.end() || at + 1 == under.end()) return under.front();
  return *(at + 1);
}

PieceIds pieces_in(const Area& area, const BuiltEvent& built, const Band& band, BandTakes takes) {
  PieceBox room;
  room.left = std::min(band.x1_m, band.x2_m), room.right = std::max(band.x1_m, band.x2_m);
  room.floor = std::min(band.height1_m, band.height2_m), room.top = std::max(band.height1_m, band.height2_m);
  PieceIds ids;
  for (const auto& piece : area.pieces) {
    if (piece->hidden || piece->locked) continue;
    const PieceBox box = box_of(*piece, built);
    const bool inside = box.left >= room.left && box.right <= room.right && box.top <= room.top &&
                        std::max(box.floor, 0.0) >= room.floor;
    const bool meets =
        box.left <= room.right && box.right >= room.left && box.floor <= room.top && box.top >= room.floor;
    const BuiltPiece* made = standing_build(*piece, built);
    const bool touched = meets && (made == nullptr || touches(moved_to_piece(room, *piece), made->piece));
    if (takes == BandTakes::what_lies_inside ? inside : touched) ids.push_back(piece->id);
  }
  return ids;
}

}  // namespace quadrille
